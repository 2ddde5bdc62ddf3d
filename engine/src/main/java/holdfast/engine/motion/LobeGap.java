package holdfast.engine.motion;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * How far two convex pieces are apart along the direction that parts them best, and the features that face each other
 * there.
 *
 * <p>Problem solved: the largest separation over the face normals of both and the cross products of their edges (the
 * separating axis theorem for convex polyhedra; edge pairs that form no face of the Minkowski difference are skipped by
 * the Gauss-map arc test, Gregorius 2013, "The separating axis test between convex polyhedra"). Below zero it is the
 * exact depth of the overlap; above zero it is a lower bound on the distance, exact unless corner faces corner or edge.
 * For a linear program over small motions that is what counts: as long as every feature stays on its side of that
 * plane, the pieces do not overlap.
 *
 * @param gapM separation, metres, below zero when they overlap
 * @param normal unit vector out of {@code b} into {@code a}
 * @param features points where the two face each other
 */
record LobeGap(double gapM, Vec3 normal, List<Feature> features) {
  LobeGap {
    features = List.copyOf(features);
  }

  /** One point, and the separation there along the normal that goes with it (out of b into a). */
  record Feature(Vec3 at, Vec3 normal, double gapM) {}

  /** Metres: a pair of edges must part the pieces by this much better than a face to be taken instead. */
  private static final double PREFER_FACES_M = 1e-9;

  /** Sine of the angle within which an edge axis and a face axis count as the same contact, and faces as parallel. */
  private static final double SAME_AXIS = 5e-3;

  /** Metres: how far outside a face's rim a facing corner may lie and still be held by the face. */
  private static final double RIM_M = 1e-6;

  /** The gap with its features out to {@code bandM} beyond the least. */
  static LobeGap between(PlacedLobe a, PlacedLobe b, double bandM) {
    Axis faceA = bestFace(a, b);
    Axis faceB = bestFace(b, a);
    // A tie goes to b so that flush faces always choose alike.
    boolean onB = faceB.gap >= faceA.gap - PREFER_FACES_M;
    Axis face = onB ? faceB : faceA;
    List<Feature> features = new ArrayList<>();
    EdgeAxis edge = bestEdges(a, b);
    if (edge == null || edge.gap <= face.gap + PREFER_FACES_M) {
      faceFeatures(onB ? b : a, face.face, onB ? a : b, onB, bandM, features);
      return new LobeGap(face.gap, onB ? b.normals[face.face] : a.normals[face.face].negated(), features);
    }
    features.add(new Feature(edge.at, edge.normal, edge.gap));
    Vec3 faceNormal = onB ? b.normals[face.face] : a.normals[face.face].negated();
    if (faceNormal.cross(edge.normal).norm() < SAME_AXIS && faceNormal.dot(edge.normal) > 0) {
      faceFeatures(onB ? b : a, face.face, onB ? a : b, onB, bandM, features);
    }
    return new LobeGap(edge.gap, edge.normal, features);
  }

  private record Axis(int face, double gap) {}

  private record EdgeAxis(Vec3 at, Vec3 normal, double gap) {}

  private static Axis bestFace(PlacedLobe of, PlacedLobe other) {
    int best = 0;
    double gap = Double.NEGATIVE_INFINITY;
    for (int f = 0; f < of.normals.length; f++) {
      double g = other.leastAlong(of.normals[f]) - of.offsets[f];
      if (g > gap) {
        gap = g;
        best = f;
      }
    }
    return new Axis(best, gap);
  }

  private static EdgeAxis bestEdges(PlacedLobe a, PlacedLobe b) {
    EdgeAxis best = null;
    for (int[] ea : a.topology.edges) {
      Vec3 pa = a.corners[ea[0]];
      Vec3 da = a.corners[ea[1]].minus(pa);
      Vec3 a0 = a.normals[ea[2]];
      Vec3 a1 = a.normals[ea[3]];
      for (int[] eb : b.topology.edges) {
        Vec3 pb = b.corners[eb[0]];
        Vec3 db = b.corners[eb[1]].minus(pb);
        if (!arcsCross(a0, a1, b.normals[eb[2]].negated(), b.normals[eb[3]].negated(), da, db)) continue;
        Vec3 n = da.cross(db);
        double length = n.norm();
        if (length < 1e-6 * Math.sqrt(da.dot(da) * db.dot(db))) continue;
        n = n.times(1 / length);
        if (n.dot(pa.minus(a.middle)) < 0) n = n.negated();
        double gap = n.dot(pb.minus(pa));
        if (best == null || gap > best.gap) best = new EdgeAxis(between(pa, da, pb, db), n.negated(), gap);
      }
    }
    return best;
  }

  /** Whether the arcs a0-a1 and c-d of the unit sphere cross, told by the edge directions that are normal to the arcs. */
  private static boolean arcsCross(Vec3 a0, Vec3 a1, Vec3 c, Vec3 d, Vec3 da, Vec3 db) {
    double ca = c.dot(da);
    double dA = d.dot(da);
    if (ca * dA >= 0) return false;
    double ad = a0.dot(db);
    double bd = a1.dot(db);
    if (ad * bd >= 0) return false;
    // Same hemisphere, so that it is the arcs that cross and not one with the other's antipode.
    Vec3 middleA = a0.plus(a1);
    Vec3 middleC = c.plus(d);
    Vec3 cross = da.cross(db);
    double s = cross.dot(middleA);
    double t = cross.dot(middleC);
    return s * t > 0;
  }

  /** The point half way between the nearest points of two lines. */
  private static Vec3 between(Vec3 p, Vec3 d, Vec3 q, Vec3 e) {
    Vec3 r = p.minus(q);
    double dd = d.dot(d);
    double ee = e.dot(e);
    double de = d.dot(e);
    double det = dd * ee - de * de;
    double s = (de * e.dot(r) - ee * d.dot(r)) / det;
    double t = (dd * e.dot(r) - de * d.dot(r)) / det;
    return p.plusTimes(s, d).plus(q.plusTimes(t, e)).times(0.5);
  }

  /** Features of {@code other} over one face of {@code of}: its facing polygon clipped to the face, and every corner over it. */
  private static void faceFeatures(
      PlacedLobe of, int face, PlacedLobe other, boolean ofIsB, double bandM, List<Feature> features) {
    Vec3 n = of.normals[face];
    Vec3 out = ofIsB ? n : n.negated();
    int facing = 0;
    for (int f = 1; f < other.normals.length; f++) {
      if (other.normals[f].dot(n) < other.normals[facing].dot(n)) facing = f;
    }
    int[] rim = of.topology.loops[face];
    List<Vec3> points = new ArrayList<>();
    for (int c : other.topology.loops[facing]) points.add(other.corners[c]);
    for (int i = 0; i < rim.length && !points.isEmpty(); i++) {
      Vec3 p = of.corners[rim[i]];
      Vec3 inward = n.cross(of.corners[rim[(i + 1) % rim.length]].minus(p)).unit();
      points = clip(points, inward, inward.dot(p));
    }
    double least = other.leastAlong(n) - of.offsets[face];
    int first = features.size();
    for (Vec3 p : points) add(features, first, p, out, n.dot(p) - of.offsets[face], least + bandM);
    for (Vec3 p : other.corners) {
      double gap = n.dot(p) - of.offsets[face];
      if (gap <= least + bandM && within(of, rim, n, p)) add(features, first, p, out, gap, least + bandM);
    }
    if (features.size() == first) {
      Vec3 p = other.leastCorner(n);
      features.add(new Feature(p, out, n.dot(p) - of.offsets[face]));
    }
  }

  private static void add(List<Feature> features, int first, Vec3 p, Vec3 normal, double gap, double most) {
    if (gap > most) return;
    for (int i = first; i < features.size(); i++) {
      if (features.get(i).at.distanceTo(p) < RIM_M) return;
    }
    features.add(new Feature(p, normal, gap));
  }

  private static boolean within(PlacedLobe of, int[] rim, Vec3 n, Vec3 p) {
    for (int i = 0; i < rim.length; i++) {
      Vec3 q = of.corners[rim[i]];
      Vec3 inward = n.cross(of.corners[rim[(i + 1) % rim.length]].minus(q)).unit();
      if (inward.dot(p.minus(q)) < -RIM_M) return false;
    }
    return true;
  }

  /** The part of a convex polygon where {@code inward . p >= offset} (Sutherland and Hodgman 1974). */
  private static List<Vec3> clip(List<Vec3> polygon, Vec3 inward, double offset) {
    List<Vec3> kept = new ArrayList<>(polygon.size() + 1);
    for (int i = 0; i < polygon.size(); i++) {
      Vec3 p = polygon.get(i);
      Vec3 q = polygon.get((i + 1) % polygon.size());
      double dp = inward.dot(p) - offset;
      double dq = inward.dot(q) - offset;
      if (dp >= 0) kept.add(p);
      if (dp >= 0 != dq >= 0) kept.add(p.plusTimes(dp / (dp - dq), q.minus(p)));
    }
    return kept;
  }
}
