package holdfast.engine.build;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * What is to pass: convex lobes, upright as built, about the middle of the box round them. Lengths in metres. Built from
 * positions rounded to a nanometre from the first corner, so that a body that was only shifted is equal to itself.
 */
public record GateBody(List<Lobe> lobes, Vec3 centre, double radiusM) {
  private static final double GRID_M = 1e-9;

  /** One lobe: corners, pairs of corner numbers that are its edges, and the volume of the box round it as its weight. */
  public record Lobe(List<Vec3> corners, List<Edge> edges, double weight) {}

  /** Two corner numbers. */
  public record Edge(int from, int to) {}

  public GateBody {
    lobes = List.copyOf(lobes);
  }

  static GateBody of(List<Hull> hulls) {
    Vec3 origin = hulls.get(0).corners().get(0);
    Box all = new Box();
    List<Lobe> lobes = new ArrayList<>();
    for (Hull h : hulls) {
      List<Vec3> corners = new ArrayList<>();
      Box own = new Box();
      for (Vec3 p : h.corners()) {
        Vec3 q = rounded(p.minus(origin));
        corners.add(q);
        own.add(q);
        all.add(q);
      }
      TreeSet<Integer> pairs = new TreeSet<>();
      for (Hull.Face f : h.faces()) {
        for (int i = 0; i < f.loop().size(); i++) {
          int a = f.loop().get(i);
          int b = f.loop().get((i + 1) % f.loop().size());
          pairs.add(Math.min(a, b) * corners.size() + Math.max(a, b));
        }
      }
      int n = corners.size();
      Vec3 size = own.high().minus(own.low());
      lobes.add(new Lobe(List.copyOf(corners), pairs.stream().map(k -> new Edge(k / n, k % n)).toList(),
          size.x() * size.y() * size.z()));
    }
    Vec3 centre = all.low().plus(all.high()).times(0.5);
    double radius = lobes.stream().flatMap(l -> l.corners.stream()).mapToDouble(centre::distanceTo).max().orElse(0);
    return new GateBody(lobes, centre, radius);
  }

  private static Vec3 rounded(Vec3 p) {
    return new Vec3(Math.rint(p.x() / GRID_M) * GRID_M, Math.rint(p.y() / GRID_M) * GRID_M, Math.rint(p.z() / GRID_M) * GRID_M);
  }

  private static final class Box {
    private final double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    private final double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};

    void add(Vec3 p) {
      double[] v = {p.x(), p.y(), p.z()};
      for (int i = 0; i < 3; i++) {
        low[i] = Math.min(low[i], v[i]);
        high[i] = Math.max(high[i], v[i]);
      }
    }

    Vec3 low() {
      return new Vec3(low[0], low[1], low[2]);
    }

    Vec3 high() {
      return new Vec3(high[0], high[1], high[2]);
    }
  }
}
