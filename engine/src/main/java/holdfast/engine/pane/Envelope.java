package holdfast.engine.pane;

import java.util.List;

/**
 * The greatest bending at one place over all foot forces that a load case admits.
 *
 * <p>Problem: maximise |n M n| over directions n and forces F, M = M_water + sum F_i m_i, least_i <= F_i <= most_i,
 * sum F_i <= weight. For a fixed n this is a knapsack that filling in order of n m_i n solves exactly; n and F are taken in
 * turn until neither changes. Each turn can only raise the value; the end is a local maximum, which two starts guard.
 */
final class Envelope {
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

  Peak at(Bending[] perNewton, Bending water) {
    Bending start = water;
    for (int i = 0; i < most.length; i++) start = start.plusTimes(0.5 * (least[i] + most[i]), perNewton[i]);
    double major = 0.5 * Math.atan2(2 * start.xy(), start.xx() - start.yy());
    Peak sag = climb(perNewton, water, 1, major);
    Peak hog = climb(perNewton, water, -1, major + 0.5 * Math.PI);
    return Math.abs(hog.momentNm) > Math.abs(sag.momentNm) ? hog : sag;
  }

  private Peak climb(Bending[] perNewton, Bending water, int sign, double angle) {
    Peak best = null;
    for (int turn = 0; turn < 6; turn++) {
      double[] forces = fill(perNewton, sign, angle);
      Bending sum = water;
      for (int i = 0; i < forces.length; i++) sum = sum.plusTimes(forces[i], perNewton[i]);
      double mean = 0.5 * (sum.xx() + sum.yy());
      double radius = Math.hypot(0.5 * (sum.xx() - sum.yy()), sum.xy());
      double moment = mean + sign * radius;
      if (best != null && sign * moment <= sign * best.momentNm + 1e-12 * Math.abs(moment)) break;
      best = new Peak(forces, sum, moment);
      double major = 0.5 * Math.atan2(2 * sum.xy(), sum.xx() - sum.yy());
      angle = sign > 0 ? major : major + 0.5 * Math.PI;
    }
    return best;
  }

  private double[] fill(Bending[] perNewton, int sign, double angle) {
    int n = most.length;
    double[] gain = new double[n];
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    for (int i = 0; i < n; i++) {
      Bending m = perNewton[i];
      gain[i] = sign * (m.xx() * c * c + m.yy() * s * s + 2 * m.xy() * s * c);
    }
    double[] forces = least.clone();
    if (atMost) {
      for (int i = 0; i < n; i++) if (gain[i] > 0) forces[i] = most[i];
      return forces;
    }
    double spare = spareN;
    boolean[] done = new boolean[n];
    while (spare > 0) {
      int next = -1;
      for (int i = 0; i < n; i++) if (!done[i] && gain[i] > 0 && (next < 0 || gain[i] > gain[next])) next = i;
      if (next < 0) break;
      done[next] = true;
      double add = Math.min(spare, most[next] - least[next]);
      forces[next] += add;
      spare -= add;
    }
    return forces;
  }
}
