package holdfast.app.view;

import holdfast.app.report.JointNumbers;
import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.engine.gap.Gaps;
import holdfast.engine.gap.ReachMap;
import holdfast.engine.light.LightReport;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;

/**
 * What is measured on a scene to be drawn on it, apart from the judgement: where rocks touch, gaps, the cleaner's reach,
 * light.
 */
record Survey(List<Touch> joints, List<Touch> feet, Gaps gaps, List<ReachMap> reach, LightReport light) {
  /** Contacts whose normal points up more than this, as a cosine, are on the floor. */
  private static final double FLAT = 0.5;

  /** Where two things bear on each other: the middle of their largest patch, all patches, and their area. */
  record Touch(String a, String b, Vec3 middle, List<List<Vec3>> patches, double areaMm2) {}

  /** The pairs of rocks that touch. */
  List<JointNumbers.Pair> pairs() {
    return joints.stream().map(t -> new JointNumbers.Pair(t.a, t.b)).toList();
  }

  static Survey of(Scene scene, Shapes shapes) {
    List<PlacedRock> placed = shapes.placed();
    List<Solid> solids = SceneSolids.ofPlaced(scene, placed);
    ContactMap map = ContactFinder.find(solids, ContactRules.DEFAULT);
    List<Touch> joints = new ArrayList<>();
    List<Touch> feet = new ArrayList<>();
    int rocks = placed.size();
    for (int a = 0; a < rocks; a++) {
      for (int b = a + 1; b < solids.size(); b++) {
        List<Contact> between = map.between(a, b);
        if (between.isEmpty()) continue;
        String one = solids.get(a).name();
        String other = solids.get(b).name();
        if (b < rocks) {
          joints.add(touch(one, other, between));
        } else {
          // Each patch on the floor is a foot of its own; what leans on a pane is none.
          for (Contact c : between) if (c.normal().z() > FLAT) feet.add(touch(one, other, List.of(c)));
        }
      }
    }
    feet.addAll(onSand(scene, placed, feet));
    return new Survey(joints, feet, Gaps.of(scene, placed), ReachMap.all(scene, placed),
        LightReport.of(scene, List.copyOf(shapes.bodies().values())));
  }

  /** Sand is no solid that contacts are found with: where a rock that has no foot on the floor bears on it, the heap knows. */
  private static List<Touch> onSand(Scene scene, List<PlacedRock> placed, List<Touch> feet) {
    boolean all = placed.stream().allMatch(p -> feet.stream().anyMatch(f -> f.a().equals(p.rock().name())));
    if (all || !(scene.sand().depthMm() > scene.floor().topMm())) return List.of();
    List<Touch> out = new ArrayList<>();
    SceneHeap heap = SceneHeap.of(scene, placed);
    for (int i = 0; i < heap.seats().size(); i++) {
      SceneHeap.Seat seat = heap.seats().get(i);
      if (seat.kind() != SceneHeap.Kind.SAND) continue;
      List<Vec3> patch = heap.contactPolygon(i);
      out.add(new Touch(heap.name(seat.rock()), seat.other(), middle(patch), List.of(patch), seat.areaM2() * 1e6));
    }
    return out;
  }

  private static Touch touch(String a, String b, List<Contact> contacts) {
    Contact largest = contacts.get(0);
    for (Contact c : contacts) if (c.areaM2() > largest.areaM2()) largest = c;
    return new Touch(a, b, middle(largest.polygon()), contacts.stream().map(Contact::polygon).toList(),
        contacts.stream().mapToDouble(Contact::areaM2).sum() * 1e6);
  }

  private static Vec3 middle(List<Vec3> polygon) {
    Vec3 sum = Vec3.ZERO;
    for (Vec3 p : polygon) sum = sum.plus(p);
    return sum.times(1.0 / polygon.size());
  }
}
