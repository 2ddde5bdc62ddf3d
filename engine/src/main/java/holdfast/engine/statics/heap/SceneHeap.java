package holdfast.engine.statics.heap;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.Solid;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;

/**
 * A scene as a heap: placed rocks as bodies, what they bear on as links, what each link is.
 *
 * <p>Glass panes bear without friction: what leans on a pane must not need the pane's friction to stay. Devices bear
 * nothing. A rock with no foot on the floor that dips into the sand bears on it at the sand's surface.
 */
public final class SceneHeap {
  /** What a link is. */
  public enum Kind {
    JOINT, BOND, ROD, FLOOR, SAND, PANE
  }

  /**
   * What one link of the heap stands for.
   *
   * @param rock place of the rock that it acts on
   * @param other name of what it bears on
   * @param areaM2 area of the patch before it was drawn in, or bonded area
   * @param distanceM gap or overlap of the pair
   */
  public record Seat(Kind kind, int rock, String other, double areaM2, double distanceM) {}

  private final Scene scene;
  private final PlacedRocks placed;
  private final Heap heap;
  private final List<Seat> seats;
  private final List<List<Vec3>> patches = new ArrayList<>();
  private final List<JointSpec> idleBonds = new ArrayList<>();

  private SceneHeap(Scene scene, PlacedRocks placed) {
    this.scene = scene;
    this.placed = placed;
    List<JointSpec> joints = scene.joints();
    List<Link> links = new ArrayList<>();
    List<Seat> sat = new ArrayList<>();
    for (JointSpec j : joints) {
      if (j.bond() == JointSpec.Bond.NONE) continue;
      Integer a = placed.numbers().get(j.a());
      Integer b = placed.numbers().get(j.b());
      if (a == null || b == null) continue;
      List<BondLinks.Made> made = placed.bonds().make(j, Math.min(a, b), Math.max(a, b));
      if (made.isEmpty()) idleBonds.add(j);
      for (BondLinks.Made m : made) {
        links.add(m.link());
        patches.add(m.link().polygon());
        sat.add(new Seat(m.link() instanceof Link.Rod ? Kind.ROD : Kind.BOND, m.link().a(),
            name(m.link().b()), m.areaM2(), m.distanceM()));
      }
    }
    for (Contact c : contacts().contacts()) {
      BearingLinks.Made bearing = placed.bearings().of(c).orElse(null);
      if (bearing == null || bearing.seat().kind() == Kind.JOINT && replaced(joints, c)) continue;
      links.add(bearing.link());
      patches.add(c.polygon());
      sat.add(bearing.seat());
    }
    double inset = scene.settings().get(Setting.CONTACT_INSET_MM) * 1e-3;
    for (SandBearing.Foot f : SandBearing.feet(scene, rocks().size(), solids(), contacts(), inset)) {
      links.add(new Link.Bearing(f.rock(), Heap.GROUND, Vec3.Z, f.polygon(), scene.settings().get(Setting.FRICTION_ROCK_SAND)));
      patches.add(f.outline());
      sat.add(new Seat(Kind.SAND, f.rock(), SandBearing.NAME, f.areaM2(), 0));
    }
    List<Heap.Body> bodies = new ArrayList<>();
    for (int i = 0; i < rocks().size(); i++) {
      PlacedRock r = rocks().get(i);
      bodies.add(new Heap.Body(name(i), r.centre(), placed.search().sizeM(i), r.body().dryMassKg()));
    }
    heap = new Heap(bodies, links);
    seats = List.copyOf(sat);
  }

  /** The heap of a scene's placed rocks, in the order of the placements. */
  public static SceneHeap of(Scene scene, List<PlacedRock> rocks) {
    return new SceneHeap(scene, PlacedRocks.of(scene, rocks));
  }

  /**
   * The heap of a scene as {@link #of} makes it, where this one is that of the same scene before an edit: contacts, bonds and
   * weights of rocks that are what and where they were are taken from here. Any other scene will do too, and takes longer.
   */
  public SceneHeap next(Scene now, List<PlacedRock> rocks) {
    return new SceneHeap(now, placed.next(now, rocks));
  }

  /**
   * The same scene with some of its rocks elsewhere.
   *
   * @param moved all rocks, in the same order
   */
  public SceneHeap withRocks(List<PlacedRock> moved) {
    return next(scene, moved);
  }

  /** The same rocks in the same places, fixed by other joints. */
  public SceneHeap withJoints(List<JointSpec> joints) {
    return new SceneHeap(scene.withJoints(joints), placed);
  }

  /** A paste takes the place of the bare contact; a rod stands beside it. */
  private boolean replaced(List<JointSpec> joints, Contact c) {
    String a = name(c.a());
    String b = name(c.b());
    return joints.stream().anyMatch(j -> j.joins(a, b) && j.bond() != JointSpec.Bond.NONE && j.bond() != JointSpec.Bond.ROD
        && !idleBonds.contains(j));
  }

  /** The name of the rock at a place. */
  public String name(int rock) {
    return rocks().get(rock).rock().name();
  }

  public Scene scene() {
    return scene;
  }

  /** The placed rocks, in the order of the placements: body {@code i} of the heap is rock {@code i}. */
  public List<PlacedRock> rocks() {
    return placed.rocks();
  }

  /** Rocks in place, then the fixed parts of the tank. */
  public List<Solid> solids() {
    return placed.solids();
  }

  public ContactMap contacts() {
    return placed.search().found();
  }

  public Weights weights() {
    return placed.weights();
  }

  public Heap heap() {
    return heap;
  }

  /** The corners of a link's patch as it was found, before it was drawn in; metres. */
  public List<Vec3> contactPolygon(int link) {
    return patches.get(link);
  }

  /** What each link of the heap is, in the order of the links. */
  public List<Seat> seats() {
    return seats;
  }

  /** Bonds of the scene that found nothing within reach to hold. */
  public List<JointSpec> idleBonds() {
    return List.copyOf(idleBonds);
  }
}
