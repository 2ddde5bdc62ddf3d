package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.Forces.LinkForce;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Patch;
import holdfast.model.geom.Vec3;
import java.util.function.DoubleUnaryOperator;

/**
 * Whether friction at a bearing's corners, each limited by its own push, can give a shear and a twist together.
 *
 * <p>All shears V and twists T that the corners can give are a convex set, whose reach in the direction of a sliding a and a
 * turning of 1 is {@code mu * sum n_k |a + z x r_k|}, r_k the corner from the centre of pressure: what friction dissipates
 * in that movement. So (V, T) is one of them just when {@code a . V + |T|} is never more than that, for any a. The a of the
 * greatest excess is sought; the excess is concave in it.
 *
 * @see <a href="https://doi.org/10.1016/0043-1648(91)90104-3">Goyal, Ruina and Papadopoulos 1991, Planar sliding with dry
 *     friction</a>, for the limit surface and its dual
 */
public final class CornerLimit {
  /** Of the bearing's friction times its reach: excess that counts as none; what slides is found this near to its limit. */
  private static final double NONE = 2e-3;

  /** Thirds of the range that are cut away, each way; 2/3 to the power of it is below {@link #NONE}. */
  private static final int CUTS = 40;

  private final double[] x;
  private final double[] y;
  /** Friction that each corner can give. */
  private final double[] most;
  private final double u;
  private final double v;
  private final double twist;

  private CornerLimit(Link.Bearing b, LinkForce f) {
    Vec3 first = b.normal().anyPerpendicular();
    Vec3 second = b.normal().cross(first);
    int n = b.polygon().size();
    x = new double[n];
    y = new double[n];
    most = new double[n];
    double t = f.moment().dot(b.normal());
    double way = t < 0 ? -1 : 1;
    for (int k = 0; k < n; k++) {
      Vec3 r = b.polygon().get(k).minus(f.at());
      // Turning by 1 the way of the twist moves the corner by z x r.
      x[k] = -way * r.dot(second);
      y[k] = way * r.dot(first);
      most[k] = b.friction() * Math.max(0, f.cornersN().get(k));
    }
    u = f.shear().dot(first);
    v = f.shear().dot(second);
    twist = Math.abs(t);
  }

  /** Whether the corners of {@code b}, pushed as {@code f} says, can give its shear and twist. */
  public static boolean admits(Link.Bearing b, LinkForce f) {
    return new CornerLimit(b, f).admits();
  }

  private boolean admits() {
    double limit = 0;
    double round = 0;
    double reach = 0;
    for (int k = 0; k < most.length; k++) {
      double arm = Patch.length(x[k], y[k]);
      limit += most[k];
      round += most[k] * arm;
      reach = Math.max(reach, arm);
    }
    double shear = Patch.length(u, v);
    double none = NONE * limit * reach;
    if (twist <= none) return shear <= limit * (1 + NONE);
    if (seenToGive(limit, shear)) return true;
    double spare = Math.max(limit - shear, NONE * limit);
    // Farther out the shear alone leaves more than all twist could use up.
    double far = (twist + round) / spare;
    return greatest(far) <= none;
  }

  /** Whether some forces at the corners that give both are known: then no sliding need be tried. */
  private boolean seenToGive(double limit, double shear) {
    if (!(shear < limit)) return false;
    // x and y are the corners turned by a right angle: so is the shear.
    double arm = TwistArm.glance(x, y, most, 0, -v / limit, u / limit);
    return twist <= arm * limit * Math.sqrt(1 - shear * shear / (limit * limit));
  }

  private double excess(double a, double b) {
    double e = a * u + b * v + twist;
    for (int k = 0; k < most.length; k++) e -= most[k] * Patch.length(a + x[k], b + y[k]);
    return e;
  }

  private double greatest(double far) {
    return peak(far, a -> peak(far, b -> excess(a, b)));
  }

  /** The greatest value of a concave function up to {@code far} either way. */
  private static double peak(double far, DoubleUnaryOperator f) {
    double low = -far;
    double high = far;
    for (int i = 0; i < CUTS; i++) {
      double p = low + (high - low) / 3;
      double q = high - (high - low) / 3;
      if (f.applyAsDouble(p) < f.applyAsDouble(q)) low = p;
      else high = q;
    }
    return f.applyAsDouble((low + high) / 2);
  }
}
