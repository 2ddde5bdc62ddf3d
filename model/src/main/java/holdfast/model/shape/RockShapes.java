package holdfast.model.shape;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.HullResult;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Settings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Shapes one rock. */
public final class RockShapes {
  /** Density of water where none is given: practical salinity 35, 25 degrees C. */
  private static final double USUAL_WATER_KG_M3 = SeaWater.densityKgM3(35, 25);

  /** Lobes, or why there are none. */
  private record Lobed(List<Hull> lobes, String reason) {}

  private RockShapes() {}

  /** As below, in water of salinity 35 at 25 degrees C. */
  public static ShapeResult body(Rock rock, Settings settings, MeshLoader loader) {
    return body(rock, settings, USUAL_WATER_KG_M3, loader);
  }

  /**
   * The rock's body in its own frame: that of its file for points, lobes and meshes; for measured stones the origin is
   * at the middle of the underside of the box.
   *
   * @param waterKgM3 density of the water that the rock was weighed in and that fills its pores
   */
  public static ShapeResult body(Rock rock, Settings settings, double waterKgM3, MeshLoader loader) {
    Lobed shape = lobes(rock.form(), loader);
    if (shape.lobes.isEmpty()) return new ShapeResult.Unusable(shape.reason);
    Optional<MassProperties> solid = Unions.massProperties(shape.lobes);
    if (solid.isEmpty()) {
      return new ShapeResult.Unusable(
          "too many of its " + shape.lobes.size() + " lobes overlap in one place; use fewer, larger lobes");
    }
    Weighing weighing = new Weighing(settings, waterKgM3);
    double volume = solid.get().volumeM3();
    double kg = weighing.dryKg(rock, volume);
    Optional<String> flaw = weighing.flaw(rock, kg, volume);
    if (flaw.isPresent()) return new ShapeResult.Unusable(flaw.get());
    return new ShapeResult.Shaped(new RockBody(
        rock.name(), shape.lobes, solid.get(), kg, weighing.poreWaterKg(rock, kg, volume), Weighing.sealedM3(rock)));
  }

  private static Lobed lobes(Rock.Form form, MeshLoader loader) {
    if (form instanceof Rock.Measured m) {
      if (!(m.lengthMm() > 0 && m.widthMm() > 0 && m.heightMm() > 0)) {
        return new Lobed(List.of(), "its length, width and height must be above 0");
      }
      return new Lobed(Stones.lobes(m), "its lengths of " + m.lengthMm() + " x " + m.widthMm() + " x " + m.heightMm()
          + " mm are too unlike to make a stone");
    }
    if (form instanceof Rock.Points p) return fromPoints(List.of(p.pointsMm()));
    if (form instanceof Rock.Lobes l) return fromPoints(l.lobesMm());
    Rock.Mesh mesh = (Rock.Mesh) form;
    return loader.load(mesh.file()).match(read -> fromMesh(read.welded().scaled(mesh.unitMm() * 1e-3), mesh.file()),
        why -> new Lobed(List.of(), "mesh '" + mesh.file() + "': " + why));
  }

  private static Lobed fromPoints(List<List<Vec3>> lobesMm) {
    List<Hull> hulls = new ArrayList<>();
    for (int i = 0; i < lobesMm.size(); i++) {
      HullResult r = HullBuilder.build(lobesMm.get(i).stream().map(p -> p.times(1e-3)).toList());
      if (r instanceof HullResult.Degenerate d) {
        String which = lobesMm.size() == 1 ? "its shape" : "lobe " + (i + 1);
        return new Lobed(List.of(), which + " is no solid: " + d.reason());
      }
      hulls.add(((HullResult.Solid) r).hull());
    }
    return new Lobed(hulls, "it has no lobes");
  }

  private static Lobed fromMesh(TriangleMesh mesh, String file) {
    Optional<String> flaw = mesh.flaw();
    if (flaw.isPresent()) return new Lobed(List.of(), "mesh '" + file + "': " + flaw.get());
    return new Lobed(MeshSplitter.lobes(mesh), "mesh '" + file + "' bounds no solid");
  }
}
