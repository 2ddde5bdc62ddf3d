package holdfast.engine.statics;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.SupportInset;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.List;

/**
 * Feet on sand: a rock that stands on no floor and dips into the sand, or just reaches it, bears at the sand's surface on
 * the outline of what lies at or below it.
 */
final class SandBearing {
  static final String NAME = "sand";

  private SandBearing() {}

  /**
   * @param outline the patch, counter-clockwise from above
   * @param polygon the same drawn in
   * @param areaM2 area before drawing in
   */
  record Foot(int rock, List<Vec3> outline, List<Vec3> polygon, double areaM2) {}

  static List<Foot> feet(Scene scene, int rocks, List<Solid> solids, ContactMap contacts, double insetM) {
    double surface = scene.sand().depthMm() * 1e-3;
    List<Foot> out = new ArrayList<>();
    if (!(surface > scene.floor().topMm() * 1e-3)) return out;
    for (int i = 0; i < rocks; i++) {
      int rock = i;
      boolean stands = contacts.contacts().stream()
          .anyMatch(c -> c.a() == rock && solids.get(c.b()).fixed() && c.normal().z() > 0.7);
      if (stands) continue;
      for (Hull h : solids.get(i).lobes()) {
        List<Vec3> low = below(h, surface + Tolerances.SAND_REACH_M);
        if (low.isEmpty()) continue;
        List<Vec3> outline = convexOutline(low, surface);
        if (outline.isEmpty()) continue;
        double area = new Contact(0, 1, 0, 0, Vec3.Z, outline, 0).areaM2();
        out.add(new Foot(i, outline, SupportInset.drawnIn(outline, Vec3.Z, insetM), area));
      }
    }
    return out;
  }

  /** Corners below the level, and where edges cross it. */
  private static List<Vec3> below(Hull h, double level) {
    List<Vec3> out = new ArrayList<>();
    for (Hull.Face f : h.faces()) {
      List<Vec3> loop = h.loop(f);
      for (int i = 0; i < loop.size(); i++) {
        Vec3 p = loop.get(i);
        Vec3 q = loop.get((i + 1) % loop.size());
        if (p.z() <= level) out.add(p);
        if ((p.z() - level) * (q.z() - level) < 0) out.add(p.plusTimes((level - p.z()) / (q.z() - p.z()), q.minus(p)));
      }
    }
    return out;
  }

  /** Convex outline from above by Andrew's monotone chain, at the height {@code z}. */
  private static List<Vec3> convexOutline(List<Vec3> points, double z) {
    List<Vec3> sorted = points.stream().map(p -> new Vec3(p.x(), p.y(), z)).distinct()
        .sorted((p, q) -> p.x() != q.x() ? Double.compare(p.x(), q.x()) : Double.compare(p.y(), q.y())).toList();
    if (sorted.size() < 3) return sorted;
    List<Vec3> hull = new ArrayList<>();
    for (int pass = 0; pass < 2; pass++) {
      int floor = hull.size() + 1;
      for (int k = 0; k < sorted.size(); k++) {
        Vec3 p = pass == 0 ? sorted.get(k) : sorted.get(sorted.size() - 1 - k);
        while (hull.size() > floor && turn(hull.get(hull.size() - 2), hull.get(hull.size() - 1), p) <= 1e-12) {
          hull.remove(hull.size() - 1);
        }
        hull.add(p);
      }
      hull.remove(hull.size() - 1);
    }
    return hull;
  }

  private static double turn(Vec3 a, Vec3 b, Vec3 c) {
    return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
  }
}
