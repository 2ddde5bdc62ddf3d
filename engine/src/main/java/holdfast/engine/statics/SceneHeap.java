package holdfast.engine.statics;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.TankSolids;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

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
  private final List<PlacedRock> rocks;
  private final List<Solid> solids;
  private final ContactMap contacts;
  private final Weights weights;
  private final BondLinks bonds;
  private final Heap heap;
  private final List<Seat> seats;
  private final List<List<Vec3>> patches = new ArrayList<>();
  private final List<JointSpec> idleBonds;

  private SceneHeap(
      Scene scene, List<PlacedRock> rocks, List<Solid> solids, ContactMap contacts, Weights weights,
      BondLinks bonds, List<JointSpec> joints) {
    this.scene = scene;
    this.rocks = rocks;
    this.solids = solids;
    this.contacts = contacts;
    this.weights = weights;
    this.bonds = bonds;
    List<Link> links = new ArrayList<>();
    List<Seat> sat = new ArrayList<>();
    idleBonds = new ArrayList<>();
    for (JointSpec j : joints) {
      if (j.bond() == JointSpec.Bond.NONE) continue;
      int a = indexOf(j.a());
      int b = indexOf(j.b());
      if (a < 0 || b < 0) continue;
      List<BondLinks.Made> made = bonds.make(j, Math.min(a, b), Math.max(a, b));
      if (made.isEmpty()) idleBonds.add(j);
      for (BondLinks.Made m : made) {
        links.add(m.link());
        patches.add(m.link().polygon());
        sat.add(new Seat(m.link() instanceof Link.Rod ? Kind.ROD : Kind.BOND, m.link().a(),
            name(m.link().b()), m.areaM2(), m.distanceM()));
      }
    }
    int[] number = HeapAssembly.numbers(solids);
    double inset = scene.settings().get(Setting.CONTACT_INSET_MM) * 1e-3;
    for (Contact c : contacts.contacts()) {
      Kind kind = kind(c);
      if (kind == null || kind == Kind.JOINT && replaced(joints, c)) continue;
      Solid p = solids.get(c.a());
      Solid q = solids.get(c.b());
      double friction = kind == Kind.PANE ? 0 : Frictions.between(p.surface(), q.surface(), scene.settings());
      links.add(HeapAssembly.bearing(c, number, friction, inset));
      patches.add(c.polygon());
      sat.add(new Seat(kind, c.a(), q.name(), c.areaM2(), c.distanceM()));
    }
    for (SandBearing.Foot f : SandBearing.feet(scene, rocks.size(), solids, contacts, inset)) {
      links.add(new Link.Bearing(f.rock(), Heap.GROUND, Vec3.Z, f.polygon(), scene.settings().get(Setting.FRICTION_ROCK_SAND)));
      patches.add(f.outline());
      sat.add(new Seat(Kind.SAND, f.rock(), SandBearing.NAME, f.areaM2(), 0));
    }
    List<Heap.Body> bodies = new ArrayList<>();
    for (int i = 0; i < rocks.size(); i++) {
      PlacedRock r = rocks.get(i);
      bodies.add(new Heap.Body(name(i), r.centre(), solids.get(i).sizeM(), r.body().dryMassKg()));
    }
    heap = new Heap(bodies, links);
    seats = List.copyOf(sat);
  }

  /** The heap of a scene's placed rocks, in the order of the placements. */
  public static SceneHeap of(Scene scene, List<PlacedRock> rocks) {
    List<Solid> solids = SceneSolids.ofPlaced(scene, rocks);
    ContactMap contacts = ContactFinder.find(solids, ContactRules.DEFAULT);
    return new SceneHeap(scene, List.copyOf(rocks), solids, contacts, new Weights(scene, rocks),
        new BondLinks(scene.settings(), solids, contacts), scene.joints());
  }

  /**
   * The same scene with some of its rocks elsewhere; contacts are sought anew only where a rock is not the one of before.
   *
   * @param moved all rocks, in the same order, those that stay being the same objects
   */
  public SceneHeap withRocks(List<PlacedRock> moved) {
    List<Solid> now = SceneSolids.ofPlaced(scene, moved);
    IntPredicate other = i -> i < rocks.size() && moved.get(i) != rocks.get(i);
    ContactMap found = ContactFinder.find(now, ContactRules.DEFAULT, contacts, other);
    BondLinks made = bonds.moved(now, found, j -> !other.test(indexOf(j.a())) && !other.test(indexOf(j.b())));
    return new SceneHeap(scene, List.copyOf(moved), now, found, new Weights(scene, moved), made, scene.joints());
  }

  /** The same rocks in the same places, fixed by other joints. */
  public SceneHeap withJoints(List<JointSpec> joints) {
    return new SceneHeap(scene.withJoints(joints), rocks, solids, contacts, weights, bonds, joints);
  }

  private Kind kind(Contact c) {
    Solid other = solids.get(c.b());
    if (!other.fixed()) return Kind.JOINT;
    // Devices come last; they bear nothing, whatever they are called.
    if (c.b() >= solids.size() - scene.devices().size()) return null;
    String name = other.name();
    if (name.equals(TankSolids.BOTTOM) || name.equals(TankSolids.GRID) || name.equals(TankSolids.SHEET)) return Kind.FLOOR;
    return other.surface() == Solid.Surface.GLASS ? Kind.PANE : null;
  }

  /** A paste takes the place of the bare contact; a rod stands beside it. */
  private boolean replaced(List<JointSpec> joints, Contact c) {
    String a = name(c.a());
    String b = name(c.b());
    return joints.stream().anyMatch(j -> j.joins(a, b) && j.bond() != JointSpec.Bond.NONE && j.bond() != JointSpec.Bond.ROD
        && !idleBonds.contains(j));
  }

  private int indexOf(String rock) {
    for (int i = 0; i < rocks.size(); i++) {
      if (name(i).equals(rock)) return i;
    }
    return -1;
  }

  /** The name of the rock at a place. */
  public String name(int rock) {
    return rocks.get(rock).rock().name();
  }

  public Scene scene() {
    return scene;
  }

  /** The placed rocks, in the order of the placements: body {@code i} of the heap is rock {@code i}. */
  public List<PlacedRock> rocks() {
    return rocks;
  }

  /** Rocks in place, then the fixed parts of the tank. */
  public List<Solid> solids() {
    return solids;
  }

  public ContactMap contacts() {
    return contacts;
  }

  public Weights weights() {
    return weights;
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
