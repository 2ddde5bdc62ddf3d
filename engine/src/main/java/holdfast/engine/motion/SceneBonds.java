package holdfast.engine.motion;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import java.util.ArrayList;
import java.util.List;

/** The fixed joints of a scene as bonds that break. */
final class SceneBonds {
  private SceneBonds() {}

  /**
   * A bond for each fixed joint whose rocks come within the paste's reach of each other, at the middle of where they do.
   * The area of a paste is its volume over its thickness (the reach); a rod counts for its own section alone.
   */
  static List<MotionBond> of(Scene scene, List<MotionBody> bodies) {
    double reach = scene.settings().get(Setting.BOND_REACH_MM) * 1e-3;
    int[] apart = new int[bodies.size()];
    for (int i = 0; i < apart.length; i++) apart[i] = i;
    List<Cluster.Facing> facings = new Cluster(bodies, apart, List.of()).facings(reach);
    List<MotionBond> bonds = new ArrayList<>();
    for (JointSpec j : scene.joints()) {
      if (j.bond() == JointSpec.Bond.NONE) continue;
      Cluster.Facing best = null;
      for (Cluster.Facing f : facings) {
        boolean same = j.joins(bodies.get(f.a()).name(), bodies.get(f.b()).name());
        if (same && (best == null || f.gap().gapM() < best.gap().gapM())) best = f;
      }
      if (best == null) continue;
      Vec3 sum = Vec3.ZERO;
      for (LobeGap.Feature p : best.gap().features()) sum = sum.plus(p.at());
      Vec3 at = sum.times(1.0 / best.gap().features().size());
      double bearing = best.gap().features().stream().mapToDouble(p -> p.at().distanceTo(at)).average().orElse(0);
      bonds.add(new MotionBond(bodies.get(best.a()).name(), bodies.get(best.b()).name(), at, best.gap().normal(),
          strength(j, scene.settings(), reach, bearing)));
    }
    return bonds;
  }

  private static MotionBond.Strength strength(JointSpec j, Settings settings, double thicknessM, double bearingM) {
    Setting design = switch (j.bond()) {
      case MORTAR -> Setting.BOND_MORTAR_N_MM2;
      case PUTTY -> Setting.BOND_PUTTY_N_MM2;
      case GEL, NONE -> Setting.BOND_GEL_N_MM2;
      case ROD -> Setting.ROD_STRENGTH_N_MM2;
    };
    double pascal = settings.get(design) * 1e6;
    if (j.bond() != JointSpec.Bond.ROD) {
      return new MotionBond.Paste(j.amountMl() * 1e-6 / thicknessM, pascal, pascal);
    }
    double r = j.rodDiameterMm() * 1e-3 / 2;
    double area = Math.PI * r * r;
    // Round section: shear half the bending stress (maximum shear stress), bending pi r^3 / 4.
    return new MotionBond.RodSection(0.5 * pascal * area, pascal * Math.PI * r * r * r / 4, j.rodGlued() ? pascal * area : 0,
        bearingM);
  }
}
