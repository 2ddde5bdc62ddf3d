package holdfast.engine.statics.heap;

import holdfast.engine.statics.heap.Forces.LinkForce;
import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * What a bond or a rod is asked for: from the unknowns of its cone element to a force, and from the force to the part of
 * its design strength that is used.
 *
 * <p>A bond's stress is taken as linear over the bonded area, {@code sigma = N/A + gradient . (u, v)}; its shear as even,
 * its torsion as elastic, {@code T r / I_p} at the farthest corner. Shear and torsion are added as the ellipse of the cone
 * program does.
 */
public final class BondUse {
  private BondUse() {}

  /** The force from the element's unknowns {@code x}, in newtons: N, two shears, two stress gradients, torsion. */
  public static LinkForce bondForce(Link.Bond link, Patch patch, double[] x, double lengthM) {
    Vec3 shear = patch.first.times(x[1]).plusTimes(x[2], patch.second);
    Vec3 moment = Vec3.ZERO;
    if (x.length == 6) {
      double ga = x[3] / lengthM;
      double gb = x[4] / lengthM;
      moment = patch.first.times(patch.uv * ga + patch.vv * gb)
          .plusTimes(-patch.uu * ga - patch.uv * gb, patch.second)
          .plusTimes(x[5] * Elements.bondTwistArm(patch), link.normal());
    }
    return new LinkForce(x[0], shear, patch.centroid, moment, List.of());
  }

  /** The force from the element's unknowns {@code x}, in newtons: two shears, two bending moments over length, pull. */
  public static LinkForce rodForce(Link.Rod link, double[] x, double lengthM) {
    Vec3 first = link.normal().anyPerpendicular();
    Vec3 second = link.normal().cross(first);
    double pull = x.length > 4 ? x[4] : 0;
    return new LinkForce(-pull, first.times(x[0]).plusTimes(x[1], second), link.at(),
        first.times(x[2] * lengthM).plusTimes(x[3] * lengthM, second), List.of());
  }

  /** The part of its strength that a bond or rod uses; above 1 it breaks. Zero for a bearing. */
  public static double of(Link link, LinkForce f) {
    return link instanceof Link.Bearing ? 0 : of(link, new Patch(link.normal(), link.polygon()), f);
  }

  /** The same of a bond or rod whose patch is at hand. */
  public static double of(Link link, Patch patch, LinkForce f) {
    if (link instanceof Link.Bond b) return bond(b, patch, f);
    if (link instanceof Link.Rod r) return rod(r, f);
    throw new IllegalArgumentException("a bearing has no strength to use");
  }

  private static double bond(Link.Bond link, Patch patch, LinkForce f) {
    double area = link.areaM2();
    if (!(area > 0)) return Double.POSITIVE_INFINITY;
    double mean = f.normalN() / area;
    double worst = Math.max(-mean / link.tensionN_m2(), mean / link.crushingN_m2());
    double torsion = 0;
    if (link.moment() && patch.areaM2 > 0) {
      double m1 = f.moment().dot(patch.first);
      double m2 = f.moment().dot(patch.second);
      // M1 = A (uv ga + vv gb), M2 = -A (uu ga + uv gb), ga and gb the gradients of the stress.
      double det = patch.uu * patch.vv - patch.uv * patch.uv;
      double ga = (-patch.uv * m1 - patch.vv * m2) / det / area;
      double gb = (patch.uu * m1 + patch.uv * m2) / det / area;
      for (int k = 0; k < patch.u.length; k++) {
        double stress = mean + ga * patch.u[k] + gb * patch.v[k];
        worst = Math.max(worst, Math.max(-stress / link.tensionN_m2(), stress / link.crushingN_m2()));
      }
      torsion = Math.abs(f.moment().dot(link.normal())) / Elements.bondTwistArm(patch);
    }
    return Math.max(worst, Math.hypot(f.shear().norm(), torsion) / (link.shearN_m2() * area));
  }

  private static double rod(Link.Rod link, LinkForce f) {
    double shear = f.shear().norm() / link.shearN();
    double bending = f.moment().norm() / link.bendingNm();
    double pull = link.pullN() > 0 ? -f.normalN() / link.pullN() : 0;
    return Math.max(shear, Math.max(bending, pull));
  }
}
