package holdfast.app.edit;

import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.PairFit;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.TankSolids;
import holdfast.engine.gap.Gaps;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;

/** Rocks in place and what can be measured on them without judging: what bears on what, what breaks into what, gaps. */
final class Arrangement {
  /** Metres: distances that differ by less are the same. */
  private static final double SAME_M = 1e-7;

  private final Scene scene;
  private final List<PlacedRock> placed;
  private final List<Solid> solids;
  private final ContactMap map;
  private final Gaps gaps;

  Arrangement(Scene scene, List<PlacedRock> placed) {
    this.scene = scene;
    this.placed = List.copyOf(placed);
    solids = SceneSolids.ofPlaced(scene, placed);
    map = ContactFinder.find(solids, ContactRules.DEFAULT);
    gaps = Gaps.of(scene, placed);
  }

  List<PlacedRock> placed() {
    return placed;
  }

  Gaps gaps() {
    return gaps;
  }

  /** The same with some rocks elsewhere, millimetres. */
  Arrangement moved(List<String> rocks, Vec3 byMm) {
    return moved(scene, rocks, byMm);
  }

  /** The same in a tank that was furnished otherwise. */
  Arrangement moved(Scene furnished, List<String> rocks, Vec3 byMm) {
    List<PlacedRock> next = placed.stream().map(p -> rocks.contains(p.rock().name())
        ? p.at(new Pose(p.pose().at().plus(byMm.times(1e-3)), p.pose().turn())) : p).toList();
    return new Arrangement(furnished, next);
  }

  /** None is locked, and no bond ties one of them to what stays. */
  boolean canMove(List<String> rocks) {
    return rocks.stream().allMatch(r -> scene.placement(r).filter(p -> !p.locked()).isPresent())
        && scene.joints().stream().allMatch(j -> !j.bonded() || rocks.contains(j.a()) == rocks.contains(j.b()));
  }

  // -- what bears on what -------------------------------------------------------------------------------------------

  /** The rock with all that it bears on, carries or is fixed to, and what these are, in the order of the placements. */
  List<String> heapOf(String rock) {
    Set<String> heap = new LinkedHashSet<>(List.of(rock));
    boolean more = true;
    while (more) {
      more = false;
      for (PairFit f : map.fits(PairFit.Kind.TOUCHES)) {
        if (f.b() < placed.size()) more |= joins(heap, solids.get(f.a()).name(), solids.get(f.b()).name());
      }
      for (JointSpec j : scene.joints()) if (j.bonded()) more |= joins(heap, j.a(), j.b());
    }
    return scene.placements().stream().map(Placement::rock).filter(heap::contains).toList();
  }

  private static boolean joins(Set<String> heap, String a, String b) {
    if (heap.contains(a) == heap.contains(b)) return false;
    heap.add(a);
    heap.add(b);
    return true;
  }

  /** Another rock lies on it. */
  boolean carries(String rock) {
    return withLoad(rock).size() > 1;
  }

  /** The rock and all that lies on it, and on that, in the order of the placements. */
  List<String> withLoad(String rock) {
    Set<String> load = new LinkedHashSet<>(List.of(rock));
    boolean more = true;
    while (more) {
      more = false;
      for (PairFit f : map.fits(PairFit.Kind.TOUCHES)) {
        if (f.b() >= placed.size() || Math.abs(f.normal().z()) <= Remedies.CARRIES) continue;
        boolean aIsAbove = f.normal().z() > 0;
        String above = solids.get(aIsAbove ? f.a() : f.b()).name();
        String below = solids.get(aIsAbove ? f.b() : f.a()).name();
        more |= load.contains(below) && load.add(above);
      }
    }
    return scene.placements().stream().map(Placement::rock).filter(load::contains).toList();
  }

  boolean onFloor(String rock) {
    return touches(rock, other -> TankSolids.part(scene, solids, other) == TankSolids.Part.FLOOR);
  }

  /** Anything touches it, or holds it by a bond. */
  boolean bears(String rock) {
    return touches(rock, other -> true)
        || scene.joints().stream().anyMatch(j -> j.bonded() && (j.a().equals(rock) || j.b().equals(rock)));
  }

  private boolean touches(String rock, IntPredicate other) {
    return map.fits().stream().filter(f -> f.kind() != PairFit.Kind.HOVERS).anyMatch(f ->
        solids.get(f.a()).name().equals(rock) && other.test(f.b())
            || f.b() < placed.size() && solids.get(f.b()).name().equals(rock) && other.test(f.a()));
  }

  /** Millimetres that these rocks together can go straight down before they meet the floor or another rock. */
  double fallMm(List<String> rocks) {
    List<Hull> moving = new ArrayList<>();
    List<Hull> others = new ArrayList<>();
    for (PlacedRock p : placed) (rocks.contains(p.rock().name()) ? moving : others).addAll(p.lobes());
    return 1e3 * Lowering.heightAbove(moving, others, scene.floor().topMm() * 1e-3);
  }

  double lowMm(String rock) {
    return placed.stream().filter(p -> p.rock().name().equals(rock))
        .mapToDouble(p -> -1e3 * p.reach(Vec3.Z.negated())).findFirst().orElse(0);
  }

  /** By how much a rock is nearer to a pane than it is to be; not above zero where it is not. */
  double missingMm(String rock, Side side) {
    return gaps.panes().stream().filter(g -> g.name().equals(rock) && g.side() == side)
        .filter(g -> !g.kept() || g.distanceM() < 0)
        .mapToDouble(g -> 1e3 * (g.requiredM() - g.distanceM())).findFirst().orElse(0);
  }

  // -- better or worse ----------------------------------------------------------------------------------------------

  /**
   * After some rocks were moved: {@code mended} keep their gaps, nothing else has less room than it must have and had, and
   * what carried a moved rock, or was carried by one, still does.
   */
  boolean noWorseThan(Arrangement before, List<String> moved, List<String> mended) {
    return roomAsIn(before, moved, mended) && restsAsIn(before, moved);
  }

  /** Gaps, height, and nothing breaks into anything that it did not break into, or deeper. */
  boolean roomAsIn(Arrangement before, List<String> moved, List<String> mended) {
    for (int i = 0; i < gaps.panes().size(); i++) {
      Gaps.PaneGap g = gaps.panes().get(i);
      if (!g.kept() && worse(before.gaps.panes().get(i).distanceM(), g.distanceM(), mended.contains(g.name()))) return false;
    }
    for (int i = 0; i < gaps.devices().size(); i++) {
      Gaps.DeviceGap g = gaps.devices().get(i);
      if (!g.kept() && worse(before.gaps.devices().get(i).distanceM(), g.distanceM(), mended.contains(g.name()))) return false;
    }
    for (int i = 0; i < gaps.heights().size(); i++) {
      Gaps.RockHeight h = gaps.heights().get(i);
      if (!h.kept() && h.topM() > before.gaps.heights().get(i).topM() + SAME_M) return false;
    }
    Map<List<String>, PairFit> was = before.byPair();
    for (PairFit f : map.fits(PairFit.Kind.OVERLAPS)) {
      PairFit old = was.get(pair(f));
      if (old == null || old.kind() != PairFit.Kind.OVERLAPS || f.distanceM() < old.distanceM() - SAME_M) return false;
    }
    return true;
  }

  private boolean restsAsIn(Arrangement before, List<String> moved) {
    Map<List<String>, PairFit> now = byPair();
    return before.map.fits(PairFit.Kind.TOUCHES).stream().filter(f -> Math.abs(f.normal().z()) > Remedies.CARRIES)
        .map(before::pair).filter(p -> moved.contains(p.get(0)) != moved.contains(p.get(1)))
        .allMatch(p -> now.containsKey(p) && now.get(p).kind() == PairFit.Kind.TOUCHES);
  }

  /** A gap that is still too narrow: it became narrower, or it was to be mended and was only widened. */
  private static boolean worse(double beforeM, double nowM, boolean mended) {
    return nowM < beforeM - SAME_M || mended && nowM > beforeM + SAME_M;
  }

  private List<String> pair(PairFit f) {
    return List.of(solids.get(f.a()).name(), solids.get(f.b()).name());
  }

  private Map<List<String>, PairFit> byPair() {
    Map<List<String>, PairFit> out = new LinkedHashMap<>();
    for (PairFit f : map.fits()) out.put(pair(f), f);
    return out;
  }
}
