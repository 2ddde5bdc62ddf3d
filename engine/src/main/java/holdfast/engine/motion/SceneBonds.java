package holdfast.engine.motion;

import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;

/** The fixed joints of a scene as bonds that break: the statics' own links, one bond a joint. */
final class SceneBonds {
  private SceneBonds() {}

  /** A bond for each fixed joint that holds anything: where the statics find nothing in reach, nothing holds here either. */
  static List<MotionBond> of(Scene scene, List<PlacedRock> placed) {
    List<MotionBond> bonds = new ArrayList<>();
    if (scene.joints().stream().allMatch(j -> j.bond() == JointSpec.Bond.NONE)) return bonds;
    SceneHeap heap = SceneHeap.of(scene, placed);
    for (JointSpec j : scene.joints()) {
      if (j.bond() == JointSpec.Bond.NONE) continue;
      List<Link> links = new ArrayList<>();
      List<List<Vec3>> bearing = new ArrayList<>();
      for (int k = 0; k < heap.seats().size(); k++) {
        SceneHeap.Kind kind = heap.seats().get(k).kind();
        Link link = heap.heap().links().get(k);
        if (link.b() < 0 || !j.joins(heap.name(link.a()), heap.name(link.b()))) continue;
        if (kind == SceneHeap.Kind.BOND || kind == SceneHeap.Kind.ROD) links.add(link);
        if (kind == SceneHeap.Kind.JOINT) bearing.add(heap.contactPolygon(k));
      }
      if (links.isEmpty()) continue;
      String a = heap.name(links.get(0).a());
      String b = heap.name(links.get(0).b());
      bonds.add(links.get(0) instanceof Link.Rod rod ? rod(a, b, rod, bearing) : paste(a, b, links));
    }
    return bonds;
  }

  private static MotionBond rod(String a, String b, Link.Rod rod, List<List<Vec3>> bearing) {
    double reach = bearing.stream().flatMap(List::stream).mapToDouble(p -> p.distanceTo(rod.at())).average().orElse(0);
    return new MotionBond(a, b, rod.at(), rod.normal(),
        new MotionBond.RodSection(rod.shearN(), rod.bendingNm(), rod.pullN(), reach));
  }

  /** One paste may lie in several patches: they act together. */
  private static MotionBond paste(String a, String b, List<Link> links) {
    double area = 0;
    Vec3 at = Vec3.ZERO;
    Vec3 normal = Vec3.ZERO;
    for (Link link : links) {
      double own = ((Link.Bond) link).areaM2();
      area += own;
      at = at.plusTimes(own, middle(link.polygon()));
      normal = normal.plusTimes(own, link.normal());
    }
    at = at.times(1 / area);
    normal = normal.norm() > 0 ? normal.unit() : links.get(0).normal();
    Link.Bond first = (Link.Bond) links.get(0);
    MotionBond.Strength strength = first.moment()
        ? new MotionBond.Paste(BondSection.of(links.stream().map(Link::polygon).toList(), at, normal),
            first.tensionN_m2(), first.shearN_m2())
        : new MotionBond.Gel(area, first.tensionN_m2(), first.shearN_m2());
    return new MotionBond(a, b, at, normal, strength);
  }

  /** Centroid of a plane polygon. */
  private static Vec3 middle(List<Vec3> polygon) {
    Vec3 o = polygon.get(0);
    double area = 0;
    Vec3 sum = Vec3.ZERO;
    for (int i = 1; i + 1 < polygon.size(); i++) {
      Vec3 u = polygon.get(i).minus(o);
      Vec3 v = polygon.get(i + 1).minus(o);
      double w = u.cross(v).norm();
      area += w;
      sum = sum.plusTimes(w / 3, u.plus(v));
    }
    return area > 0 ? o.plusTimes(1 / area, sum) : o;
  }
}
