package holdfast.app.view.draw;

import holdfast.app.view.gl.Floats;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * Triangles of a stone: position, soft normal, flat normal. The shape is exactly the hull; only the light is softened,
 * by letting normals turn over a strip along each edge as they would on worn stone.
 */
final class StoneMesh {
  private static final double MOST_STRIP = 0.5;

  private StoneMesh() {}

  /** All lobes; {@code wearM} is the width of the worn strip along an edge. */
  static Floats of(List<Hull> lobes, double wearM) {
    Floats out = new Floats();
    for (Hull h : lobes) lobe(h, wearM, out);
    return out;
  }

  private static void lobe(Hull hull, double wearM, Floats out) {
    List<Vec3> soft = cornerNormals(hull);
    for (Hull.Face f : hull.faces()) {
      List<Vec3> loop = hull.loop(f);
      Vec3 middle = Vec3.ZERO;
      for (Vec3 p : loop) middle = middle.plus(p);
      middle = middle.times(1.0 / loop.size());
      Vec3 n = f.normal();
      List<Vec3> inner = drawnIn(loop, middle, n, wearM);
      for (int i = 0; i < loop.size(); i++) {
        int j = (i + 1) % loop.size();
        Vec3 ni = soft.get(f.loop().get(i));
        Vec3 nj = soft.get(f.loop().get(j));
        triangle(out, loop.get(i), ni, loop.get(j), nj, inner.get(j), n, n);
        triangle(out, loop.get(i), ni, inner.get(j), n, inner.get(i), n, n);
        triangle(out, middle, n, inner.get(i), n, inner.get(j), n, n);
      }
    }
  }

  /** The loop drawn in by the same width along every edge, or towards its middle where short edges would turn over. */
  private static List<Vec3> drawnIn(List<Vec3> loop, Vec3 middle, Vec3 n, double wearM) {
    int k = loop.size();
    double radius = inradius(loop, middle);
    double width = Math.min(wearM, MOST_STRIP * radius);
    List<Vec3> inner = new ArrayList<>();
    for (int i = 0; i < k; i++) {
      Vec3 before = n.cross(loop.get(i).minus(loop.get((i + k - 1) % k)).unit());
      Vec3 after = n.cross(loop.get((i + 1) % k).minus(loop.get(i)).unit());
      Vec3 both = before.plus(after);
      inner.add(loop.get(i).plusTimes(2 * width / Math.max(0.1, both.dot(both)), both));
    }
    for (int i = 0; i < k; i++) {
      Vec3 outer = loop.get((i + 1) % k).minus(loop.get(i));
      if (inner.get((i + 1) % k).minus(inner.get(i)).dot(outer) <= 0) {
        return loop.stream().map(p -> p.plusTimes(width / radius, middle.minus(p))).toList();
      }
    }
    return inner;
  }

  private static double inradius(List<Vec3> loop, Vec3 middle) {
    double r = Double.POSITIVE_INFINITY;
    for (int i = 0; i < loop.size(); i++) {
      Vec3 a = loop.get(i);
      Vec3 d = loop.get((i + 1) % loop.size()).minus(a);
      r = Math.min(r, middle.minus(a).cross(d).norm() / Math.max(d.norm(), 1e-12));
    }
    return Math.max(r, 1e-9);
  }

  /** Normals at corners: those of the faces about each, weighted by the angle the face takes there. */
  private static List<Vec3> cornerNormals(Hull hull) {
    Vec3[] sum = new Vec3[hull.corners().size()];
    java.util.Arrays.fill(sum, Vec3.ZERO);
    for (Hull.Face f : hull.faces()) {
      int k = f.loop().size();
      for (int i = 0; i < k; i++) {
        int at = f.loop().get(i);
        Vec3 p = hull.corners().get(at);
        Vec3 a = hull.corners().get(f.loop().get((i + 1) % k)).minus(p).unit();
        Vec3 b = hull.corners().get(f.loop().get((i + k - 1) % k)).minus(p).unit();
        double angle = Math.acos(Math.max(-1, Math.min(1, a.dot(b))));
        sum[at] = sum[at].plusTimes(angle, f.normal());
      }
    }
    List<Vec3> out = new ArrayList<>();
    for (Vec3 s : sum) out.add(s.unit());
    return out;
  }

  private static void triangle(Floats out, Vec3 a, Vec3 na, Vec3 b, Vec3 nb, Vec3 c, Vec3 nc, Vec3 flat) {
    corner(out, a, na, flat);
    corner(out, b, nb, flat);
    corner(out, c, nc, flat);
  }

  private static void corner(Floats out, Vec3 p, Vec3 n, Vec3 flat) {
    out.add((float) p.x(), (float) p.y(), (float) p.z(), (float) n.x(), (float) n.y(), (float) n.z(),
        (float) flat.x(), (float) flat.y(), (float) flat.z());
  }
}
