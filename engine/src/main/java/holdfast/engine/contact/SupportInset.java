package holdfast.engine.contact;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Draws a patch in. Real stone bears on about three high spots of a face, not out to its rim.
 *
 * <p>Each side of the patch moves inward by the inset, or up to the centroid of the area where that is nearer; an edge
 * is shortened at both ends, at most to its middle; a point stays. What is left always holds the centroid, and is
 * never larger than the patch.
 */
public final class SupportInset {
  private SupportInset() {}

  /**
   * The drawn-in patch.
   *
   * @param polygon corners in order round a flat convex patch, metres
   * @param normal its unit normal, from whose tip the corners run counter-clockwise
   * @param insetM how far, metres, 0 or more
   */
  public static List<Vec3> drawnIn(List<Vec3> polygon, Vec3 normal, double insetM) {
    if (!(insetM >= 0)) throw new IllegalArgumentException("insetM must be 0 or more, was " + insetM);
    if (insetM == 0 || polygon.size() < 2) return List.copyOf(polygon);
    if (polygon.size() == 2) return shortened(polygon.get(0), polygon.get(1), insetM);
    Vec3 u = normal.anyPerpendicular();
    Vec3 v = normal.cross(u);
    Vec3 origin = polygon.get(0);
    double[] p = new double[2 * polygon.size()];
    for (int i = 0; i < polygon.size(); i++) {
      Vec3 c = polygon.get(i).minus(origin);
      p[2 * i] = c.dot(u);
      p[2 * i + 1] = c.dot(v);
    }
    double size = Planar.diameter(p);
    double[] rest = drawnIn(p, insetM, Tolerances.ON_LINE_SHARE * size);
    rest = Planar.simplified(rest, 1e-9 * size, Integer.MAX_VALUE);
    List<Vec3> corners = new ArrayList<>();
    for (int i = 0; i < Planar.corners(rest); i++) {
      corners.add(origin.plusTimes(rest[2 * i], u).plusTimes(rest[2 * i + 1], v));
    }
    return Collections.unmodifiableList(corners);
  }

  private static List<Vec3> shortened(Vec3 p, Vec3 q, double insetM) {
    double length = p.distanceTo(q);
    Vec3 middle = p.plus(q).times(0.5);
    if (length <= 2 * insetM) return List.of(middle);
    Vec3 along = q.minus(p).times(1 / length);
    return List.of(p.plusTimes(insetM, along), q.plusTimes(-insetM, along));
  }

  private static double[] drawnIn(double[] p, double insetM, double onLine) {
    double[] centre = Planar.centroid(p);
    double[] rest = p;
    int n = Planar.corners(p);
    for (int i = 0; i < n; i++) {
      double[] side = Planar.side(p, i);
      if (side.length == 0) continue;
      double room = side[2] - (side[0] * centre[0] + side[1] * centre[1]);
      double[] part = Planar.clip(rest, side[0], side[1], side[2] - Math.min(insetM, Math.max(0, room)), onLine);
      // Rounding may lose a patch that has shrunk to nothing; its centroid is what is left then.
      if (part.length == 0) return centre;
      rest = part;
    }
    return rest;
  }
}
