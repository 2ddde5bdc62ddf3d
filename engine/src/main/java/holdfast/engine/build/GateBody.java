package holdfast.engine.build;

import holdfast.model.geom.Box;
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
    List<Lobe> lobes = new ArrayList<>();
    for (Hull h : hulls) {
      List<Vec3> corners = new ArrayList<>();
      for (Vec3 p : h.corners()) corners.add(rounded(p.minus(origin)));
      TreeSet<Integer> pairs = new TreeSet<>();
      for (Hull.Face f : h.faces()) {
        for (int i = 0; i < f.loop().size(); i++) {
          int a = f.loop().get(i);
          int b = f.loop().get((i + 1) % f.loop().size());
          pairs.add(Math.min(a, b) * corners.size() + Math.max(a, b));
        }
      }
      int n = corners.size();
      Vec3 size = Box.round(corners).size();
      lobes.add(new Lobe(List.copyOf(corners), pairs.stream().map(k -> new Edge(k / n, k % n)).toList(),
          size.x() * size.y() * size.z()));
    }
    List<Vec3> all = lobes.stream().flatMap(l -> l.corners.stream()).toList();
    Vec3 centre = Box.round(all).middle();
    double radius = all.stream().mapToDouble(centre::distanceTo).max().orElse(0);
    return new GateBody(lobes, centre, radius);
  }

  private static Vec3 rounded(Vec3 p) {
    return new Vec3(Math.rint(p.x() / GRID_M) * GRID_M, Math.rint(p.y() / GRID_M) * GRID_M, Math.rint(p.z() / GRID_M) * GRID_M);
  }
}
