package holdfast.model.io;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** Reads one rock: its form, its mass and whether the two can belong to one stone. */
final class RockParts {
  private final Optional<Path> folder;

  /** {@code folder}: where mesh files are looked for; absent: their being there is not checked. */
  RockParts(Optional<Path> folder) {
    this.folder = folder;
  }

  /** The rock, or nothing when any of it was refused; problems are in the walk. */
  Optional<Rock> read(ObjectWalk walk, double mineralKgPerL, double dampShare) {
    String name = walk.text(SceneKeys.ROCK_NAME);
    Optional<Rock.Kind> kind = walk.word(SceneKeys.ROCK_KIND, Rock.Kind.values());
    Optional<Rock.Form> form = walk.part(SceneKeys.ROCK_FORM).flatMap(this::form);
    Optional<ObjectWalk> massWalk = walk.part(SceneKeys.ROCK_MASS);
    Optional<Rock.Mass> mass = massWalk.flatMap(this::mass);
    double sealed = walk.number(SceneKeys.SEALED);
    boolean slimy = walk.flag(SceneKeys.SLIMY, kind.map(k -> k == Rock.Kind.LIVE).orElse(false));
    boolean removable = walk.flag(SceneKeys.REMOVABLE, false);
    OptionalDouble price = walk.maybe(SceneKeys.PRICE);
    if (form.isPresent()) {
      checkSealed(walk, form.get(), sealed);
      if (mass.isPresent()) checkDensity(massWalk.get(), form.get(), mass.get(), mineralKgPerL, dampShare);
    }
    if (name.isEmpty() || kind.isEmpty() || form.isEmpty() || mass.isEmpty() || Double.isNaN(sealed)) return Optional.empty();
    return Optional.of(new Rock(name, kind.get(), form.get(), mass.get(), sealed, slimy, removable, price));
  }

  private Optional<Rock.Form> form(ObjectWalk walk) {
    List<Key> sorts = List.of(SceneKeys.LOOK, SceneKeys.POINTS, SceneKeys.LOBES, SceneKeys.MESH_FILE);
    List<Key> given = sorts.stream().filter(walk::has).toList();
    if (given.size() != 1) {
      String found = given.isEmpty() ? "no form" : String.join(" and ", given.stream().map(Key::name).toList());
      walk.refuseWhole(found,
          "must have exactly one of look (with length_mm, width_mm, height_mm), points_mm, lobes_mm, mesh_file");
      return Optional.empty();
    }
    Key sort = given.get(0);
    if (sort != SceneKeys.LOOK) {
      Stream.of(SceneKeys.ROCK_LENGTH, SceneKeys.ROCK_WIDTH, SceneKeys.ROCK_HEIGHT, SceneKeys.SEED)
          .forEach(k -> walk.notBeside(k, "must be left out beside " + sort.name()));
    }
    if (sort != SceneKeys.MESH_FILE) walk.notBeside(SceneKeys.MESH_UNIT, "must be left out beside " + sort.name());
    if (sort == SceneKeys.LOOK) return measured(walk);
    if (sort == SceneKeys.POINTS) return walk.cloud(SceneKeys.POINTS).map(l -> new Rock.Points(l.get(0)));
    if (sort == SceneKeys.LOBES) return walk.cloud(SceneKeys.LOBES).map(Rock.Lobes::new);
    return mesh(walk);
  }

  private static Optional<Rock.Form> measured(ObjectWalk walk) {
    Optional<Rock.Look> look = walk.word(SceneKeys.LOOK, Rock.Look.values());
    double length = walk.number(SceneKeys.ROCK_LENGTH);
    double width = walk.number(SceneKeys.ROCK_WIDTH);
    double height = walk.number(SceneKeys.ROCK_HEIGHT);
    double seed = walk.number(SceneKeys.SEED);
    if (look.isEmpty() || Double.isNaN(length + width + height + seed)) return Optional.empty();
    return Optional.of(new Rock.Measured(look.get(), length, width, height, (long) seed));
  }

  private Optional<Rock.Form> mesh(ObjectWalk walk) {
    String file = walk.text(SceneKeys.MESH_FILE);
    double unit = walk.number(SceneKeys.MESH_UNIT);
    if (file.isEmpty() || Double.isNaN(unit)) return Optional.empty();
    try {
      Path named = Path.of(file);
      if (named.isAbsolute() || file.contains("\\") || file.contains(":")) {
        walk.refuse(SceneKeys.MESH_FILE,
            "must be named from the scene file's folder, with forward slashes, so that both can be moved");
        return Optional.empty();
      }
      if (folder.isPresent() && !Files.isRegularFile(folder.get().resolve(named))) {
        walk.refuse(SceneKeys.MESH_FILE, "must be a file, and there is none at " + folder.get().resolve(named));
        return Optional.empty();
      }
    } catch (InvalidPathException e) {
      walk.refuse(SceneKeys.MESH_FILE, "must be the name of a file");
      return Optional.empty();
    }
    return Optional.of(new Rock.Mesh(file, unit));
  }

  private Optional<Rock.Mass> mass(ObjectWalk walk) {
    boolean weighed = walk.has(SceneKeys.WEIGHED);
    boolean bulk = walk.has(SceneKeys.BULK);
    if (weighed == bulk) {
      walk.refuseWhole(weighed ? "weighed_kg and bulk_kg_per_l" : "no mass",
          "must have exactly one of weighed_kg, bulk_kg_per_l");
      return Optional.empty();
    }
    if (bulk) {
      Stream.of(SceneKeys.WEIGHING, SceneKeys.HELD_WATER)
          .forEach(k -> walk.notBeside(k, "must be left out beside bulk_kg_per_l"));
      double kgPerL = walk.number(SceneKeys.BULK);
      return Double.isNaN(kgPerL) ? Optional.empty() : Optional.of(new Rock.BulkDensity(kgPerL));
    }
    double kg = walk.number(SceneKeys.WEIGHED);
    Optional<Rock.Weighing> state = walk.word(SceneKeys.WEIGHING, Rock.Weighing.values());
    OptionalDouble held = walk.maybe(SceneKeys.HELD_WATER);
    if (held.isPresent() && state.isPresent() && state.get() != Rock.Weighing.DAMP) {
      walk.refuse(SceneKeys.HELD_WATER, "must be left out unless state is \"damp\"");
      return Optional.empty();
    }
    if (held.isPresent() && held.getAsDouble() >= kg) {
      walk.refuse(SceneKeys.HELD_WATER, "must be less than weighed_kg, " + JsonLayout.number(kg));
      return Optional.empty();
    }
    if (Double.isNaN(kg) || state.isEmpty() || Double.isNaN(held.orElse(0))) return Optional.empty();
    return Optional.of(new Rock.Weighed(kg, state.get(), held));
  }

  private static void checkSealed(ObjectWalk walk, Rock.Form form, double sealedMl) {
    Optional<Vec3> size = FormBox.of(form).map(FormBox::sizeMm);
    if (size.isEmpty() || !(sealedMl > 0)) return;
    double boxMl = volumeL(size.get()) * 1000;
    if (sealedMl >= boxMl) {
      walk.refuse(SceneKeys.SEALED, "must be less than the box round the rock, " + shortNumber(boxMl) + " ml");
    }
  }

  /** A stone can't be denser than its mineral; the box round it holds at least its hull, so this never errs. */
  private static void checkDensity(ObjectWalk walk, Rock.Form form, Rock.Mass mass, double mineralKgPerL, double dampShare) {
    if (mass instanceof Rock.BulkDensity b) {
      if (b.kgPerL() > mineralKgPerL) {
        walk.refuse(SceneKeys.BULK, "must be at most the mineral's density, " + shortNumber(mineralKgPerL) + " kg/L");
      }
      return;
    }
    Rock.Weighed w = (Rock.Weighed) mass;
    // Under water a rock weighs less than dry, so the reading is a lower bound of the dry mass there.
    double dryKg = w.state() == Rock.Weighing.DAMP ? w.kg() - w.heldWaterKg().orElse(dampShare * w.kg()) : w.kg();
    FormBox.of(form).map(FormBox::sizeMm).ifPresent(size -> {
      double density = dryKg / volumeL(size);
      if (density > mineralKgPerL) {
        walk.refuse(SceneKeys.WEIGHED, "must be less: in a box of " + shortNumber(volumeL(size)) + " L that is "
            + shortNumber(density) + " kg/L, more than the mineral's " + shortNumber(mineralKgPerL)
            + " kg/L; check mass and lengths");
      }
    });
  }

  private static double volumeL(Vec3 sizeMm) {
    return sizeMm.x() * sizeMm.y() * sizeMm.z() * 1e-6;
  }

  /** Three figures are enough in a sentence. */
  static String shortNumber(double v) {
    return JsonLayout.number(new java.math.BigDecimal(v).round(new java.math.MathContext(3)).doubleValue());
  }
}
