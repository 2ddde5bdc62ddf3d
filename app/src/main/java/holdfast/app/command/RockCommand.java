package holdfast.app.command;

import holdfast.app.report.Json;
import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.model.io.SceneNames;
import holdfast.model.io.SceneWriter;
import holdfast.model.scene.Rock;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.RockBody;
import holdfast.model.shape.RockShapes;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Shapes and weighs one rock, and writes it as a scene has it. */
@Command(description = {
  "",
  "Tells what a rock comes to, and writes it as it stands in a scene's list of rocks. Give its measured size and a look, "
      + "or a mesh file (OBJ or STL); and what it weighs, or a bulk density.",
  "",
  "  holdfast rock --size \"300x200x120 mm\" --look slab --mass \"5.6 kg\" --name \"table slab\"",
  "  holdfast rock --mesh scan.stl --mesh-unit cm --mass \"4.1 lb\" --weighed underwater --kind live",
  ""})
final class RockCommand extends Subcommand {
  private static final double GRAVITY_M_S2 = 9.81;
  /** Sea water of a tropical tank; a scene may say otherwise. */
  private static final double SALINITY = 35;
  private static final double TEMPERATURE_C = 25;

  @Option(names = "--name", paramLabel = "WORDS", description = "What you call it.")
  private String name = "a rock";

  @Option(names = "--kind", paramLabel = "dry|live|cast", description = "Where the stone comes from. Default: dry.")
  private String kind = "dry";

  @Option(names = "--size", paramLabel = "SIZE", description = "Length, width and height as it will lie, with their unit.")
  private String size;

  @Option(names = "--look", paramLabel = "WORD",
      description = "The stone to make from the size: block, slab, round, shelf, branch, arch, spike or box.")
  private String look;

  @Option(names = "--seed", paramLabel = "N", description = "Another seed makes another stone of that size. Default: 1.")
  private long seed = 1;

  @Option(names = "--mesh", paramLabel = "FILE", description = "A scan of the rock.")
  private Path mesh;

  @Option(names = "--mesh-unit", paramLabel = "mm|cm|m|in", description = "The unit of the scan's figures. Default: mm.")
  private String meshUnit = "mm";

  @Option(names = "--mass", paramLabel = "MASS", description = "What the scale showed: \"5.6 kg\", \"850 g\", \"12 lb 4 oz\".")
  private String mass;

  @Option(names = "--weighed", paramLabel = "dry|damp|underwater", description = "How it was weighed. Default: dry.")
  private String weighed = "dry";

  @Option(names = "--density", paramLabel = "KG_PER_L",
      description = "Not weighed: dry mass of a litre of its hull, such as 1.4.")
  private Double density;

  @Option(names = "--sealed", paramLabel = "ML", description = "Closed voids or foam that water does not enter, millilitres.")
  private double sealedMl;

  @Override
  protected ExitCode run() {
    Rock rock = rock();
    double water = SeaWater.densityKgM3(SALINITY, TEMPERATURE_C);
    RockBody body = RockShapes.body(rock, Settings.DEFAULT, water, file -> Inputs.mesh(Path.of(file)))
        .match(b -> b, why -> {
          throw new InputProblem("such a rock cannot be: " + why + ".", hints(why));
        });
    // Pores flood: only the mineral and what is sealed displace water.
    double submergedN = GRAVITY_M_S2
        * (body.dryMassKg() * (1 - water / Settings.DEFAULT.get(Setting.MINERAL_DENSITY)) - water * body.sealedVolumeM3());
    double drainedN = GRAVITY_M_S2 * (body.dryMassKg() + body.poreWaterKg());
    print(format == Format.JSON ? json(rock, body, submergedN, drainedN) : text(rock, body, submergedN, drainedN));
    return ExitCode.FINE;
  }

  // -- what was typed -----------------------------------------------------------------------------------------------

  /** A scan has no unit of its own, and one that is read in a wrong one comes out a hundred or ten thousand times too small. */
  private List<String> hints(String why) {
    boolean read = mesh != null && !why.startsWith("mesh '");
    return read ? List.of("The scan's figures were taken for " + meshUnit + "; if they are not, say --mesh-unit.") : List.of();
  }

  private Rock rock() {
    if (!SceneNames.isRockName(name)) throw Inputs.noName("--name", name, SceneNames.longestRockName());
    Rock.Kind is = Choice.of("--kind", kind, Rock.Kind.values(), Rock.Kind::word);
    Measures.within("--sealed", sealedMl, 0, 100_000, "ml");
    return new Rock(name, is, form(), mass(), sealedMl, is == Rock.Kind.LIVE, false, OptionalDouble.empty());
  }

  private Rock.Form form() {
    if (mesh != null) {
      if (size != null || look != null) throw new InputProblem("a rock has a --size with a --look, or a --mesh, not both.");
      Inputs.meshMustBeThere(mesh);
      return new Rock.Mesh(mesh.toString(), Measures.lengthMm("--mesh-unit", "1 " + meshUnit));
    }
    if (size == null) {
      throw new InputProblem("the rock's shape is missing.", "Say --size \"300x200x120 mm\" --look slab, or --mesh FILE.");
    }
    if (look == null) {
      throw new InputProblem("--size also needs a --look, the kind of stone to make.",
          "block, slab, round, shelf, branch, arch, spike or box");
    }
    List<Double> mm = Measures.sizeMm("--size", size);
    mm.forEach(side -> Measures.within("--size: each side", side, 5, 3000, "mm"));
    return new Rock.Measured(
        Choice.of("--look", look, Rock.Look.values(), Rock.Look::word), mm.get(0), mm.get(1), mm.get(2), seed);
  }

  private Rock.Mass mass() {
    if (mass != null && density != null) throw new InputProblem("a rock has a --mass or a --density, not both.");
    if (density != null) {
      if (density >= 100 && density <= 4000) {
        throw new InputProblem("--density must be from 0.1 to 4 kg/L, was " + Units.plain(density) + " kg/L.",
            "If that was in kilograms a cubic metre, it is " + Units.plain(density / 1e3) + " kg/L.");
      }
      Measures.within("--density", density, 0.1, 4, "kg/L");
      return new Rock.BulkDensity(density);
    }
    if (mass == null) {
      throw new InputProblem("the rock's mass is missing.", "Weigh it and say --mass \"5.6 kg\", or guess with --density 1.4.");
    }
    double kg = Measures.massKg("--mass", mass);
    Measures.within("--mass", kg, 0.001, 500, "kg");
    return new Rock.Weighed(
        kg, Choice.of("--weighed", weighed, Rock.Weighing.values(), Rock.Weighing::word), OptionalDouble.empty());
  }

  // -- what it comes to ---------------------------------------------------------------------------------------------

  private String text(Rock rock, RockBody body, double submergedN, double drainedN) {
    double litres = body.solid().volumeM3() * 1e3;
    StringBuilder b = new StringBuilder();
    b.append(rock.name()).append(", ").append(rock.kind().word()).append('\n');
    line(b, "dry stone", units.text(Quantity.MASS, body.dryMassKg(), RoundingMode.HALF_EVEN));
    line(b, "volume of its hull", Units.fixed(Quantity.VOLUME.in(units, litres), 2, RoundingMode.HALF_EVEN) + " "
        + units.sign(Quantity.VOLUME));
    line(b, "bulk density", units.text(Quantity.DENSITY, body.dryMassKg() / litres, RoundingMode.HALF_EVEN));
    line(b, "weight under water", units.text(Quantity.FORCE, submergedN, RoundingMode.HALF_EVEN)
        + (submergedN <= 0 ? "   it floats" : ""));
    line(b, "weight just drained", units.text(Quantity.FORCE, drainedN, RoundingMode.HALF_EVEN) + "   its pores hold "
        + units.text(Quantity.MASS, body.poreWaterKg(), RoundingMode.HALF_EVEN) + " of water");
    line(b, "shape", count(body.lobes().size(), "convex piece") + ", " + count(faces(body), "face"));
    b.append("\nIn the list of rocks of a scene:\n\n").append(SceneWriter.writeRock(rock));
    return b.toString();
  }

  private static void line(StringBuilder b, String what, String figure) {
    b.append(String.format("  %-20s %s%n", what, figure).replace("\r", ""));
  }

  private static String count(int n, String one) {
    return n + " " + one + (n == 1 ? "" : "s");
  }

  private static int faces(RockBody body) {
    return body.lobes().stream().mapToInt(h -> h.faces().size()).sum();
  }

  private static String json(Rock rock, RockBody body, double submergedN, double drainedN) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("format", "holdfast-rock/1");
    m.put("name", rock.name());
    m.put("dry_kg", body.dryMassKg());
    m.put("hull_volume_l", body.solid().volumeM3() * 1e3);
    m.put("bulk_kg_per_l", body.dryMassKg() / (body.solid().volumeM3() * 1e3));
    m.put("pore_water_kg", body.poreWaterKg());
    m.put("submerged_n", submergedN);
    m.put("drained_n", drainedN);
    m.put("lobes", body.lobes().size());
    m.put("faces", faces(body));
    m.put("centre_mm", List.of(body.centre().x() * 1e3, body.centre().y() * 1e3, body.centre().z() * 1e3));
    m.put("rock", Json.raw(SceneWriter.writeRock(rock)));
    return Json.text(m);
  }
}
