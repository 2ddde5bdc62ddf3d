package holdfast.engine.pane;

import java.util.List;

/**
 * The greatest bending at one place over all foot forces that a load case admits.
 *
 * <p>Problem: maximise |n M n| over directions n and forces F, M = M_water + sum F_i m_i, least_i <= F_i <= most_i,
 * sum F_i <= weight. For a fixed n this is a knapsack that filling in order of n m_i n solves exactly; n and F are taken in
 * turn until neither changes, from directions all round. Each turn can only raise the value.
 */
final class Envelope {
  private static final int TURNS = 6;

  /** Starting directions over half a turn. The best lies within 11 degrees of one, whose value is then 96 % of it or more. */
  private static final int DIRECTIONS = 8;

  private final double[] least;
  private final double[] most;
  private final double spareN;
  private final boolean atMost;

  Envelope(PaneLoad.Case load) {
    List<FootLoad> feet = load.feet();
    least = new double[feet.size()];
    most = new double[feet.size()];
    double sumLeast = 0;
    double sumMost = 0;
    for (int i = 0; i < least.length; i++) {
      FootLoad f = feet.get(i);
      least[i] = f.leastN();
      // What nothing bounds is taken as all the weight there is; the report says Undecided.
      double cap = Math.max(load.weightN(), f.leastN());
      most[i] = f.bounded() ? Math.min(f.mostN(), cap) : cap;
      sumLeast += least[i];
      sumMost += most[i];
    }
    spareN = Math.max(0, load.weightN() - sumLeast);
    atMost = sumMost - sumLeast <= spareN;
  }

  /** The forces, the bending they make, and its principal moment with its sign. */
  record Peak(double[] forcesN, Bending bending, double momentNm) {}

  double mostN(int foot) {
    return most[foot];
  }

  /**
   * Greatest over both faces of the pane.
   *
   * @param perNewton xx, yy, xy of each foot
   */
  Peak at(double[] perNewton, Bending water) {
    Peak sag = greatest(perNewton, water, 1);
    if (mostHog(perNewton, water) <= sag.momentNm) return sag;
    Peak hog = greatest(perNewton, water, -1);
    return Math.abs(hog.momentNm) > Math.abs(sag.momentNm) ? hog : sag;
  }

  /** The best of all starting directions, climbed to the top. */
  private Peak greatest(double[] perNewton, Bending water, int sign) {
    Peak best = null;
    for (int i = 0; i < DIRECTIONS; i++) {
      Peak peak = climb(perNewton, water, sign, Math.PI * i / DIRECTIONS, 1);
      if (best == null || sign * peak.momentNm > sign * best.momentNm) best = peak;
    }
    double angle = 0.5 * Math.atan2(2 * best.bending.xy(), best.bending.xx() - best.bending.yy());
    Peak climbed = climb(perNewton, water, sign, angle + (sign > 0 ? 0 : 0.5 * Math.PI), TURNS);
    return sign * climbed.momentNm > sign * best.momentNm ? climbed : best;
  }

  /** A bound on the stretch of the upper face: every foot and the water at its worst, each in its own direction. */
  private double mostHog(double[] perNewton, Bending water) {
    double sum = Math.max(0, -least(water.xx(), water.yy(), water.xy()));
    for (int i = 0; i < most.length; i++) {
      sum += most[i] * Math.max(0, -least(perNewton[3 * i], perNewton[3 * i + 1], perNewton[3 * i + 2]));
    }
    return sum;
  }

  /** The lesser principal value. */
  private static double least(double xx, double yy, double xy) {
    double half = 0.5 * (xx - yy);
    return 0.5 * (xx + yy) - Math.sqrt(half * half + xy * xy);
  }

  /** About the size of {@link #at}, for choosing places: two directions on the face that all forces halfway stretch more. */
  double sizeAt(double[] perNewton, Bending water) {
    double[] halfway = new double[most.length];
    for (int i = 0; i < halfway.length; i++) halfway[i] = 0.5 * (least[i] + most[i]);
    double[] m = sum(perNewton, water, halfway);
    double major = 0.5 * Math.atan2(2 * m[2], m[0] - m[1]);
    int sign = m[0] + m[1] >= 0 ? 1 : -1;
    return Math.max(Math.abs(climb(perNewton, water, sign, major, 1).momentNm),
        Math.abs(climb(perNewton, water, sign, major + 0.5 * Math.PI, 1).momentNm));
  }

  private static double[] sum(double[] perNewton, Bending water, double[] forces) {
    double xx = water.xx();
    double yy = water.yy();
    double xy = water.xy();
    for (int i = 0; i < forces.length; i++) {
      xx += forces[i] * perNewton[3 * i];
      yy += forces[i] * perNewton[3 * i + 1];
      xy += forces[i] * perNewton[3 * i + 2];
    }
    return new double[] {xx, yy, xy};
  }

  private Peak climb(double[] perNewton, Bending water, int sign, double startAngle, int turns) {
    Peak best = null;
    double angle = startAngle;
    for (int turn = 0; turn < turns; turn++) {
      double[] forces = fill(perNewton, sign, angle);
      double[] m = sum(perNewton, water, forces);
      double half = 0.5 * (m[0] - m[1]);
      double moment = 0.5 * (m[0] + m[1]) + sign * Math.sqrt(half * half + m[2] * m[2]);
      if (best != null && sign * moment <= sign * best.momentNm + 1e-9 * Math.abs(moment)) break;
      best = new Peak(forces, new Bending(m[0], m[1], m[2]), moment);
      angle = 0.5 * Math.atan2(2 * m[2], m[0] - m[1]) + (sign > 0 ? 0 : 0.5 * Math.PI);
    }
    return best;
  }

  /** Forces that make the most of one direction: least everywhere, then what is spare where it does most. */
  private double[] fill(double[] perNewton, int sign, double angle) {
    int n = most.length;
    double[] gain = new double[n];
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    for (int i = 0; i < n; i++) {
      gain[i] = sign * (perNewton[3 * i] * c * c + perNewton[3 * i + 1] * s * s + 2 * perNewton[3 * i + 2] * s * c);
    }
    double[] forces = least.clone();
    if (atMost) {
      for (int i = 0; i < n; i++) if (gain[i] > 0) forces[i] = most[i];
      return forces;
    }
    double spare = spareN;
    while (spare > 0) {
      int next = -1;
      for (int i = 0; i < n; i++) if (gain[i] > 0 && (next < 0 || gain[i] > gain[next])) next = i;
      if (next < 0) break;
      gain[next] = 0;
      double add = Math.min(spare, most[next] - least[next]);
      forces[next] += add;
      spare -= add;
    }
    return forces;
  }
}
