package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.Patch;

/**
 * The friction of every bearing in a {@link Superposition}: springs against shears and twist that slip at the limit. Three
 * figures a link throughout, those of its places: shears through the centroid of the patch, twist over its mean distance A.
 * The springs are those about the centre of pressure (u, v) with the arm a that the link last had when it slipped, or at
 * rest:
 *
 * <pre>
 *   T = ref - S y,   S = t B' B,   B = (1 0 -v/A; 0 1 u/A; 0 0 a/A)
 *   F = T min(1, mu N / |(T1, T2, M / a)|),   M the moment of T about (u, v)
 * </pre>
 *
 * A link that holds keeps its springs when its pressure moves: the force stays the same, and only has to be within the
 * limit about the new centre.
 */
final class ShearLaws {
  private final CompliantHeap soft;
  private final double[] reach;
  private final double lengthM;
  /** Whether a link carried friction at rest, and what and how then: the part that is known. */
  private final boolean[] carries;
  private final double[] force0;
  private final double[] centre0;

  /** Springs of their own, not those at rest. */
  private final boolean[] own;
  private final double[] reference;
  private final double[] springCentre;
  private final double[] limitCentre;

  /** The centre of pressure last worked out. */
  private double u;
  private double v;
  private double gathered;
  private final TwistArm[] twistArms;
  private final double[] gathering = new double[3];

  private final double[] trial;
  private final double[] force;
  private final double[] size;
  private final double[] limit;
  private final double[] scale;

  ShearLaws(CompliantHeap soft, KnownResponses known, RestState at) {
    this.soft = soft;
    reach = known.arm;
    lengthM = soft.lengthM;
    int n = soft.links;
    carries = new boolean[n];
    force0 = new double[3 * n];
    centre0 = at.centre.clone();
    own = new boolean[n];
    reference = new double[3 * n];
    springCentre = new double[3 * n];
    limitCentre = new double[3 * n];
    trial = new double[3 * n];
    force = new double[3 * n];
    size = new double[n];
    limit = new double[n];
    scale = new double[n];
    twistArms = new TwistArm[n];
    for (int i = 0; i < n; i++) {
      for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) carries[i] |= at.gap[c] < 0 && soft.friction[i] > 0;
      if (!carries[i]) continue;
      int k = 3 * i;
      if (centre0[k + 2] < Tolerances.NO_ARM * reach[i]) centre0[k + 2] = 0;
      force0[k] = at.held[k];
      force0[k + 1] = at.held[k + 1];
      double moment = centre0[k + 2] > 0 ? at.held[k + 2] : 0;
      if (reach[i] > 0) force0[k + 2] = (moment + centre0[k] * at.held[k + 1] - centre0[k + 1] * at.held[k]) / reach[i];
    }
  }

  /** Begins as the heap rests. */
  void reset() {
    for (int i = 0; i < own.length; i++) own[i] = !carries[i];
    System.arraycopy(force0, 0, reference, 0, force0.length);
    System.arraycopy(centre0, 0, springCentre, 0, centre0.length);
    System.arraycopy(centre0, 0, limitCentre, 0, centre0.length);
  }

  /** Whether a link with this push neither carries shear now nor did at rest. */
  boolean idle(int i, double total) {
    return !carries[i] && !(soft.friction[i] * total > 0);
  }

  /**
   * The friction of a link that went {@code y} and is pushed by {@code total}; what is wanted beyond the known part goes into
   * {@code wanted}, from {@code at} on.
   */
  void evaluate(int i, double total, double[] y, int at, double[] wanted) {
    int k = 3 * i;
    limit[i] = Tolerances.SUPERPOSED_FRICTION * soft.friction[i] * total;
    if (idle(i, total)) {
      size[i] = 0;
      scale[i] = 1;
      for (int r = 0; r < 3; r++) {
        force[k + r] = 0;
        wanted[at + r] = 0;
      }
      return;
    }
    double y1 = y[at];
    double y2 = y[at + 1];
    double y3 = y[at + 2];
    for (int r = 0; r < 3; r++) trial[k + r] = reference[k + r] - sprung(i, springCentre, r, y1, y2, y3);
    double third = third(i, trial, limitCentre);
    size[i] = Math.sqrt(trial[k] * trial[k] + trial[k + 1] * trial[k + 1] + third * third);
    scale[i] = size[i] > limit[i] ? limit[i] / size[i] : 1;
    boolean asKnown = carries[i] && !own[i] && scale[i] == 1;
    for (int r = 0; r < 3; r++) {
      force[k + r] = scale[i] * trial[k + r];
      wanted[at + r] = asKnown ? 0
          : carries[i] ? force[k + r] - force0[k + r] + sprung(i, centre0, r, y1, y2, y3) : force[k + r];
    }
  }

  /** Row {@code r} of S about a centre, times y. */
  private double sprung(int i, double[] centre, int r, double y1, double y2, double y3) {
    return stiffness(i, centre, r, 0) * y1 + stiffness(i, centre, r, 1) * y2 + stiffness(i, centre, r, 2) * y3;
  }

  private double stiffness(int i, double[] centre, int r, int c) {
    double t = soft.shearStiffness[i];
    if (r < 2 && c < 2) return r == c ? t : 0;
    if (!(reach[i] > 0)) return 0;
    double b1 = -centre[3 * i + 1] / reach[i];
    double b2 = centre[3 * i] / reach[i];
    if (r == 2 && c == 2) {
      double b3 = centre[3 * i + 2] / reach[i];
      return t * (b1 * b1 + b2 * b2 + b3 * b3);
    }
    return t * (r + c == 2 ? b1 : b2);
  }

  /** The twist of a force about a centre, over the arm there; infinite where there is a moment and no arm. */
  private double third(int i, double[] of, double[] centre) {
    double m = moment(i, of, centre[3 * i], centre[3 * i + 1]);
    double arm = centre[3 * i + 2];
    return arm > 0 ? m / arm : Math.abs(m) <= Tolerances.REST_CENTRE * lengthM ? 0 : Double.POSITIVE_INFINITY;
  }

  private double moment(int i, double[] of, double u, double v) {
    int k = 3 * i;
    return of[k + 2] * reach[i] - u * of[k + 1] + v * of[k];
  }

  /** The derivative of what is wanted of figure {@code r} of a link by its y. */
  void slope(int i, int r, double[] to) {
    int k = 3 * i;
    for (int c = 0; c < 3; c++) {
      double s = -stiffness(i, springCentre, r, c);
      if (scale[i] < 1) {
        double arm = limitCentre[k + 2];
        double third = third(i, trial, limitCentre);
        double lever = arm > 0 ? third / arm : 0;
        double v1 = trial[k] + lever * limitCentre[k + 1];
        double v2 = trial[k + 1] - lever * limitCentre[k];
        double v3 = lever * reach[i];
        double along = v1 * stiffness(i, springCentre, 0, c) + v2 * stiffness(i, springCentre, 1, c)
            + v3 * stiffness(i, springCentre, 2, c);
        s = scale[i] * (s + trial[k + r] * along / (size[i] * size[i]));
      }
      to[c] = carries[i] ? s + stiffness(i, centre0, r, c) : s;
    }
    if (scale[i] == 1 && (carries[i] && !own[i] || !carries[i] && !(limit[i] > 0))) to[0] = to[1] = to[2] = 0;
  }

  /** The derivative of figure {@code r} of a link by its push. */
  double perPush(int i, int r) {
    return scale[i] < 1 && limit[i] > 0 ? Tolerances.SUPERPOSED_FRICTION * soft.friction[i] * trial[3 * i + r] / size[i] : 0;
  }

  /** The limit of the friction of a link. */
  double limit(int i) {
    return limit[i];
  }

  double force(int i, int r) {
    return force[3 * i + r];
  }

  /**
   * Counts the friction of what would slip, or bore nothing at rest, about where its pressure now is: the pressure at rest is
   * not that under a load.
   */
  void aim(double[] push) {
    for (int i = 0; i < own.length; i++) {
      if (!(limit[i] > 0) || carries[i] && scale[i] == 1) continue;
      pressure(i, push);
      limitCentre[3 * i] = u;
      limitCentre[3 * i + 1] = v;
      limitCentre[3 * i + 2] = arm(i);
      if (!carries[i]) System.arraycopy(limitCentre, 3 * i, springCentre, 3 * i, 3);
    }
  }

  /**
   * Whether all friction is within its limit about the centre of pressure that came out. Where it is not, the centre is set
   * there, with springs of its own, and a further step is due.
   */
  boolean within(double[] y, double[] push, int corners) {
    boolean within = true;
    for (int i = 0; i < own.length; i++) {
      if (!(limit[i] > 0)) continue;
      pressure(i, push);
      double m = moment(i, force, u, v);
      double most = limit[i] / Tolerances.SUPERPOSED_FRICTION;
      double least = Math.min(Math.min(Tolerances.ELASTIC_ARM * reach[i], gathered), glance(i, push, most));
      if (size(i, m, least) <= most) continue;
      double arm = beside(i, m, most, arm(i));
      if (size(i, m, arm) <= most) continue;
      within = false;
      centre(i, u, v, arm, m, y, corners + 3 * i);
    }
    return within;
  }

  /** The centre of the pushes of a link, and the arm of the twist that they give. */
  private void pressure(int i, double[] push) {
    soft.patches[i].gather(push, soft.cornerStart[i], gathering);
    u = gathering[0];
    v = gathering[1];
    gathered = gathering[2];
  }

  /** The arm of the twist about that centre; none where the pushes are gathered in one corner. */
  private double arm(int i) {
    double arm = Math.min(soft.patches[i].meanDistance(u, v), gathered);
    return arm < Tolerances.NO_ARM * reach[i] ? 0 : arm;
  }

  private double glance(int i, double[] push, double most) {
    Patch patch = soft.patches[i];
    return TwistArm.glance(patch.u, patch.v, push, soft.cornerStart[i], force[3 * i] / most, force[3 * i + 1] / most);
  }

  /** The arm of the twist m together with the shear of a link, where it is shorter than {@code arm} and too short. */
  private double beside(int i, double m, double most, double arm) {
    if (!(arm > 0)) return arm;
    if (twistArms[i] == null) twistArms[i] = new TwistArm(soft.patches[i]);
    double s1 = force[3 * i] / most;
    double s2 = force[3 * i + 1] / most;
    // An arm that bears this twist will do, however much longer it may be.
    double enough = Math.abs(m) / most / Math.sqrt(Math.max(0, 1 - s1 * s1 - s2 * s2));
    return twistArms[i].beside(u, v, s1, s2, m, Math.min(arm, Tolerances.TWIST_SPARE * enough), Tolerances.TWIST_ROUGH);
  }

  /** Shears and twist of the force of a link with the moment m about its centre of pressure. */
  private double size(int i, double m, double arm) {
    double q = arm > Tolerances.NO_ARM * reach[i] ? m / arm
        : Math.abs(m) <= Tolerances.REST_CENTRE * lengthM ? 0 : Double.POSITIVE_INFINITY;
    double s1 = force[3 * i];
    double s2 = force[3 * i + 1];
    return Math.sqrt(s1 * s1 + s2 * s2 + q * q);
  }

  private void centre(int i, double u, double v, double arm, double moment, double[] y, int at) {
    int k = 3 * i;
    own[i] = true;
    limitCentre[k] = springCentre[k] = u;
    limitCentre[k + 1] = springCentre[k + 1] = v;
    limitCentre[k + 2] = springCentre[k + 2] = arm;
    if (!(arm > 0) && reach[i] > 0) force[k + 2] -= moment / reach[i];
    for (int r = 0; r < 3; r++) {
      reference[k + r] = force[k + r] + sprung(i, springCentre, r, y[at], y[at + 1], y[at + 2]);
    }
  }
}
