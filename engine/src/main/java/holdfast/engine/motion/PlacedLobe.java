package holdfast.engine.motion;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A convex piece in place, with what a gap search asks for again and again: corners, faces, edges with the two faces
 * that meet in each, a box round it.
 */
final class PlacedLobe {
  final Topology topology;
  final Vec3[] corners;
  final Vec3[] normals;
  final double[] offsets;
  final Vec3 middle;
  final Vec3 least;
  final Vec3 most;

  /** Corner numbers of the faces, and for each edge its two corners and its two faces. Moves with nothing. */
  static final class Topology {
    final int[][] loops;
    final int[][] edges;

    private Topology(int[][] loops, int[][] edges) {
      this.loops = loops;
      this.edges = edges;
    }

    static Topology of(Hull hull) {
      List<Hull.Face> faces = hull.faces();
      int[][] loops = new int[faces.size()][];
      Map<Long, Integer> leftFace = new LinkedHashMap<>();
      for (int f = 0; f < loops.length; f++) {
        loops[f] = faces.get(f).loop().stream().mapToInt(Integer::intValue).toArray();
        for (int i = 0; i < loops[f].length; i++) leftFace.put(key(loops[f][i], loops[f][(i + 1) % loops[f].length]), f);
      }
      List<int[]> edges = new ArrayList<>();
      leftFace.forEach((k, f) -> {
        int u = (int) (k >> 32);
        int v = (int) (long) k;
        Integer other = leftFace.get(key(v, u));
        if (u < v && other != null) edges.add(new int[] {u, v, f, other});
      });
      return new Topology(loops, edges.toArray(int[][]::new));
    }

    private static long key(int u, int v) {
      return (long) u << 32 | v;
    }
  }

  private PlacedLobe(Topology topology, Vec3[] corners, Vec3[] normals, double[] offsets) {
    this.topology = topology;
    this.corners = corners;
    this.normals = normals;
    this.offsets = offsets;
    Vec3 sum = Vec3.ZERO;
    double x0 = Double.POSITIVE_INFINITY;
    double y0 = x0;
    double z0 = x0;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = x1;
    double z1 = x1;
    for (Vec3 p : corners) {
      sum = sum.plus(p);
      x0 = Math.min(x0, p.x());
      y0 = Math.min(y0, p.y());
      z0 = Math.min(z0, p.z());
      x1 = Math.max(x1, p.x());
      y1 = Math.max(y1, p.y());
      z1 = Math.max(z1, p.z());
    }
    middle = sum.times(1.0 / corners.length);
    least = new Vec3(x0, y0, z0);
    most = new Vec3(x1, y1, z1);
  }

  static PlacedLobe of(Hull hull, Topology topology, Pose pose) {
    Vec3[] corners = new Vec3[hull.corners().size()];
    for (int i = 0; i < corners.length; i++) corners[i] = pose.apply(hull.corners().get(i));
    int n = hull.faces().size();
    Vec3[] normals = new Vec3[n];
    double[] offsets = new double[n];
    for (int f = 0; f < n; f++) {
      normals[f] = pose.turn().rotate(hull.faces().get(f).normal());
      // The plane through the face's middle: corners of a face agree with it only to rounding.
      double sum = 0;
      for (int c : topology.loops[f]) sum += normals[f].dot(corners[c]);
      offsets[f] = sum / topology.loops[f].length;
    }
    return new PlacedLobe(topology, corners, normals, offsets);
  }

  /** Whether the boxes round the two come within {@code within} metres. */
  boolean boxNear(PlacedLobe o, double within) {
    return least.x() - o.most.x() <= within && o.least.x() - most.x() <= within
        && least.y() - o.most.y() <= within && o.least.y() - most.y() <= within
        && least.z() - o.most.z() <= within && o.least.z() - most.z() <= within;
  }

  /** The least {@code direction . p} over the corners. */
  double leastAlong(Vec3 direction) {
    double best = Double.POSITIVE_INFINITY;
    for (Vec3 p : corners) best = Math.min(best, direction.dot(p));
    return best;
  }

  /** The corner that lies least far along a direction. */
  Vec3 leastCorner(Vec3 direction) {
    Vec3 at = corners[0];
    for (Vec3 p : corners) {
      if (direction.dot(p) < direction.dot(at)) at = p;
    }
    return at;
  }
}
