package holdfast.engine.statics.heap;

import holdfast.model.geom.Vec3;
import java.util.List;

/** How a heap begins to move: a twist for each body, scaled so that the fastest point moves at one metre a second. */
public record Mechanism(List<Twist> twists) {
  public Mechanism {
    twists = List.copyOf(twists);
  }

  /** Scales {@code six} velocities a body to a fastest point of 1 m/s, sizes of bodies taken as their radius doubled. */
  public static Mechanism of(Heap heap, double[] six, double lengthM) {
    double fastest = 0;
    for (int i = 0; i < heap.bodies().size(); i++) {
      double v = norm(six, 6 * i) + norm(six, 6 * i + 3) / lengthM * heap.bodies().get(i).sizeM() / 2;
      fastest = Math.max(fastest, v);
    }
    double s = fastest > 0 ? 1 / fastest : 0;
    Twist[] out = new Twist[heap.bodies().size()];
    for (int i = 0; i < out.length; i++) {
      out[i] = new Twist(vec(six, 6 * i, s), vec(six, 6 * i + 3, s / lengthM));
    }
    return new Mechanism(List.of(out));
  }

  private static double norm(double[] v, int at) {
    return Math.sqrt(v[at] * v[at] + v[at + 1] * v[at + 1] + v[at + 2] * v[at + 2]);
  }

  private static Vec3 vec(double[] v, int at, double s) {
    return new Vec3(v[at] * s, v[at + 1] * s, v[at + 2] * s);
  }

  /** Power of loads on this movement, watts. */
  public double power(List<Wrench> loads) {
    double sum = 0;
    for (int i = 0; i < twists.size(); i++) {
      sum += loads.get(i).force().dot(twists.get(i).velocity()) + loads.get(i).moment().dot(twists.get(i).spin());
    }
    return sum;
  }
}
