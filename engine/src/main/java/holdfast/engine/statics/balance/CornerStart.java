package holdfast.engine.statics.balance;

/**
 * Where a {@link CornerPath} was on its way, kept so that pushes in directions between two others can begin there.
 *
 * <p>Forces that balance two loads balance a third between them when they are blended as it is, and a movement stays one that
 * no corner gains from when others are added to it. So a blend of two such places is inside all cones and in balance, and where
 * both were near the centre of what was left to them, so is the blend: of all products none is much smaller than theirs.
 */
final class CornerStart {
  double[][] s = {{}, {}, {}};
  double[][] z = {{}, {}, {}};
  double[] tau = {};
  double[] y = {};
  /** Of bonds and rods; empty without any. */
  double[] fastenedX = {};
  double[] fastenedZ = {};
  /** The factor carried, and that capped. */
  double l;
  double bound;
  /** Whose place it is: another path has other limits. Null while nothing is kept. */
  private CornerPath of;

  void clear() {
    of = null;
  }

  boolean kept() {
    return of != null;
  }

  boolean keptOf(CornerPath p) {
    return of == p;
  }

  /** Takes up where {@code p} is, with what its movement caps. */
  void keep(CornerPath p, double capped) {
    CornerPoint c = p.corners().point();
    for (int i = 0; i < 3; i++) {
      s[i] = copy(c.s[i], s[i]);
      z[i] = copy(c.z[i], z[i]);
    }
    tau = copy(c.tau, tau);
    y = copy(p.y, y);
    if (p.fastened() != null) {
      fastenedX = copy(p.fastened().x, fastenedX);
      fastenedZ = copy(p.fastened().z, fastenedZ);
    }
    l = p.l;
    bound = capped;
    of = p;
  }

  private static double[] copy(double[] from, double[] to) {
    if (to.length != from.length) return from.clone();
    System.arraycopy(from, 0, to, 0, to.length);
    return to;
  }

  /** out := a times what {@code one} has + b times what {@code two} has. */
  static void blend(double a, double[] one, double b, double[] two, double[] out) {
    for (int i = 0; i < out.length; i++) out[i] = a * one[i] + b * two[i];
  }
}
