package holdfast.engine.statics.heap;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.Planar;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.SupportInset;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.DoubleStream;

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
    Set<Integer> stand = new HashSet<>();
    for (Contact c : contacts.contacts()) if (solids.get(c.b()).fixed() && c.normal().z() > 0.7) stand.add(c.a());
    for (int i = 0; i < rocks; i++) {
      if (stand.contains(i)) continue;
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

  /** Convex outline from above, at the height {@code z}. */
  private static List<Vec3> convexOutline(List<Vec3> points, double z) {
    double[] flat = points.stream().flatMapToDouble(p -> DoubleStream.of(p.x(), p.y())).toArray();
    double[] hull = Planar.hull(flat, Tolerances.SAND_WELD_M);
    List<Vec3> out = new ArrayList<>();
    for (int i = 0; i < hull.length; i += 2) out.add(new Vec3(hull[i], hull[i + 1], z));
    return out;
  }
}
