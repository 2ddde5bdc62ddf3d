package holdfast.model.geom;

import java.util.ArrayList;
import java.util.List;

/**
 * A convex polyhedron: its corners, and its faces as loops of corner numbers, counter-clockwise seen from outside,
 * coplanar triangles merged. Immutable; made by {@link HullBuilder}, moved by {@link #moved}.
 */
public final class Hull {
  private final List<Vec3> corners;
  private final List<Face> faces;

  /**
   * One face.
   *
   * @param loop corner numbers, counter-clockwise seen from outside
   * @param normal outward unit normal
   * @param offset {@code normal . p} for the points p of the face, metres
   */
  public record Face(List<Integer> loop, Vec3 normal, double offset) {
    public Face {
      loop = List.copyOf(loop);
    }
  }

  Hull(List<Vec3> corners, List<Face> faces) {
    this.corners = List.copyOf(corners);
    this.faces = List.copyOf(faces);
  }

  public List<Vec3> corners() {
    return corners;
  }

  public List<Face> faces() {
    return faces;
  }

  /** The corners of one face in order. */
  public List<Vec3> loop(Face face) {
    return face.loop().stream().map(corners::get).toList();
  }

  /** The farthest reach along a direction: the largest {@code direction . p}, metres when the direction is a unit vector. */
  public double reach(Vec3 direction) {
    double best = Double.NEGATIVE_INFINITY;
    for (Vec3 p : corners) {
      double d = p.dot(direction);
      if (d > best) best = d;
    }
    return best;
  }

  /** Whether the other has the same corners and faces, number by number and in the same order. */
  public boolean sameAs(Hull other) {
    return this == other || corners.equals(other.corners) && faces.equals(other.faces);
  }

  /** The same polyhedron at another pose. */
  public Hull moved(Pose pose) {
    List<Vec3> c = new ArrayList<>(corners.size());
    for (Vec3 p : corners) c.add(pose.apply(p));
    List<Face> f = new ArrayList<>(faces.size());
    for (Face face : faces) {
      Vec3 n = pose.turn().rotate(face.normal());
      f.add(new Face(face.loop(), n, n.dot(c.get(face.loop().get(0)))));
    }
    return new Hull(c, f);
  }
}
