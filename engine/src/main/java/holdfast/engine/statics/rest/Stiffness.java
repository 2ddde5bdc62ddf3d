package holdfast.engine.statics.rest;

import java.util.Random;

/**
 * How stiff the contacts of a heap are against one another, as factors on what {@link CompliantHeap} gives them: all alike,
 * or drawn at random. Nobody knows them: stones touch at a few high points.
 */
record Stiffness(long draw) {
  /** All alike. */
  static final Stiffness EVEN = new Stiffness(0);

  /** Contacts whose stiffnesses differ; the same number gives the same ones. */
  static Stiffness drawn(int number) {
    if (number < 1) throw new IllegalArgumentException("draws are numbered from 1, was " + number);
    return new Stiffness(number);
  }

  /** Factor on the stiffness against pushing of one link. */
  double push(int link) {
    return factor(2L * link);
  }

  /** Factor on its stiffness against shear and twist. */
  double shear(int link) {
    return factor(2L * link + 1);
  }

  private double factor(long which) {
    if (draw == 0) return 1;
    double share = 2 * new Random(draw * 1_000_003L + which * 7919L).nextDouble() - 1;
    return Math.pow(Tolerances.STIFFNESS_SPREAD, share);
  }
}
