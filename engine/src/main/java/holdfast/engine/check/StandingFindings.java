package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.contact.PairFit;
import holdfast.engine.contact.Solid;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.rest.Rest;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Does the heap stand and stay; do the rocks lie as drawn: overlaps, hovering, outside the tank, bonds that hold nothing. */
final class StandingFindings {
  /** Cosine to the upright above which one rock lies on the other rather than beside it. */
  private static final double UPRIGHT = 0.5;

  private StandingFindings() {}

  static List<Finding> of(HeapStudy study) {
    List<Finding> out = new ArrayList<>();
    out.addAll(standing(study));
    out.addAll(fits(study.scene()));
    out.addAll(outside(study.scene()));
    for (JointSpec j : study.scene().idleBonds()) {
      out.add(Draft.fail(Code.BOND_WITHOUT_CONTACT).about(j.a(), j.b()).say(
          text("%s and %s are to be fixed with %s, but nowhere come within reach of each other.", j.a(), j.b(), j.bond().word()),
          "Bring them together (settle the scene) or take the bond out."));
    }
    return out;
  }

  private record Key(Code code, String first, String sentence) {}

  /** One finding a heap and ending; the first state in which it happens is named. */
  private static List<Finding> standing(HeapStudy study) {
    Map<Key, Finding> found = new LinkedHashMap<>();
    for (State s : study.states()) {
      for (PartJudge j : study.judges(s)) {
        Finding f = standing(study, s, j);
        if (f != null) found.putIfAbsent(new Key(f.code(), f.about().get(0), f.remedy()), f);
      }
    }
    return List.copyOf(found.values());
  }

  private static Finding standing(HeapStudy study, State state, PartJudge j) {
    return switch (HeapStudy.standing(j)) {
      case STAYS -> null;
      case FALLS -> falls(study, state, j);
      case SQUEEZED -> {
        Mechanism m = ((Rest.Moves) j.rest()).mechanism();
        String rock = fastest(j.heap(), m);
        yield Draft.fail(Code.SQUEEZED).about(movers(j.heap(), m)).in(state).moving(whole(study, j, m)).say(
            text("%s is held only by a squeeze that nothing creates; put down gently, it slips.", rock),
            text("Give %s a rest from below, or fix it.", rock));
      }
      case UNDECIDED -> Draft.fail(Code.UNDECIDED).about(j.heap().bodies().stream().map(Heap.Body::name).toList()).in(state).say(
          text("Whether this heap stays could not be settled: %s.", why(j)),
          "Treat it as falling: settle the scene, widen its feet, or fix the rocks to each other.");
    };
  }

  private static Finding falls(HeapStudy study, State state, PartJudge j) {
    if (j.rest() instanceof Rest.Breaks b) {
      SceneHeap.Seat seat = study.scene().seats().get(j.part().links().get(b.link()));
      String rock = study.scene().name(seat.rock());
      return Draft.fail(Code.BOND_OVERLOADED).about(rock, seat.other()).figure(100 * b.use(), 100, "% of strength").in(state).say(
          text("The bond between %s and %s is asked for %.0f %% of its design strength by the weight alone.", rock, seat.other(),
              Draft.wholeUp(100 * b.use())),
          text("Give it more paste, a rod, or a rest for %s from below.", rock));
    }
    Mechanism m = j.rest() instanceof Rest.Moves moves ? moves.mechanism() : ((Balance.Falls) j.balance()).mechanism();
    String rock = fastest(j.heap(), m);
    int i = index(j.heap(), rock);
    Vec3 v = m.twists().get(i).velocity();
    if (j.dead().get(i).force().z() > 0) {
      return Draft.fail(Code.FALLS).about(movers(j.heap(), m)).in(state).moving(whole(study, j, m)).say(
          text("%s floats up: the water lifts it by more than it weighs.", rock),
          text("Fix %s down, or take out foam.", rock));
    }
    boolean nothing = j.heap().links().stream().noneMatch(l -> l.a() == i || l.b() == i);
    String how = nothing ? "rests on nothing" : Math.hypot(v.x(), v.y()) < 0.2 * v.norm() ? "drops"
        : "goes over toward the " + Headings.word(v);
    return Draft.fail(Code.FALLS).about(movers(j.heap(), m)).in(state).moving(whole(study, j, m)).say(
        text("%s %s under its own weight.", rock, how),
        nothing ? text("Settle the scene so that %s rests on something.", rock)
            : text("Move %s so that its weight comes over what carries it, or fix it.", rock));
  }

  private static Optional<Mechanism> whole(HeapStudy study, PartJudge j, Mechanism m) {
    return Optional.of(study.whole(j.part(), m));
  }

  private static String why(PartJudge j) {
    return j.balance().match(
        s -> j.rest().match(x -> "", x -> "", x -> "", Rest.Undecided::reason), f -> "", Balance.Undecided::reason);
  }

  /** The rocks that move with the mechanism, the fastest first. */
  static List<String> movers(Heap heap, Mechanism m) {
    record Mover(String name, double speed) {}

    List<Mover> out = new ArrayList<>();
    for (int i = 0; i < heap.bodies().size(); i++) out.add(new Mover(heap.bodies().get(i).name(), speed(heap, m, i)));
    double most = out.stream().mapToDouble(Mover::speed).max().orElse(0);
    return out.stream().filter(o -> o.speed >= 0.1 * most)
        .sorted((p, q) -> Double.compare(q.speed, p.speed)).map(Mover::name).toList();
  }

  static String fastest(Heap heap, Mechanism m) {
    return movers(heap, m).get(0);
  }

  private static double speed(Heap heap, Mechanism m, int i) {
    return m.twists().get(i).velocity().norm() + m.twists().get(i).spin().norm() * heap.bodies().get(i).sizeM() / 2;
  }

  private static int index(Heap heap, String name) {
    for (int i = 0; i < heap.bodies().size(); i++) {
      if (heap.bodies().get(i).name().equals(name)) return i;
    }
    return -1;
  }

  private static List<Finding> fits(SceneHeap scene) {
    List<Finding> out = new ArrayList<>();
    for (PairFit f : scene.contacts().fits()) {
      Solid a = scene.solids().get(f.a());
      Solid b = scene.solids().get(f.b());
      double mm = f.distanceM() * 1e3;
      if (f.kind() == PairFit.Kind.OVERLAPS) {
        out.add(overlap(scene, f));
      } else if (f.kind() == PairFit.Kind.HOVERS && f.normal().z() * (b.fixed() ? 1 : Math.signum(f.normal().z())) > 0.5
          && !(b.fixed() && b.surface() == Solid.Surface.GLASS && f.normal().z() < 0.5)) {
        out.add(Draft.note(Code.HOVERS).about(a.name(), b.name()).figure(mm, Double.NaN, "mm").say(
            text("%s and %s come within %.1f mm without touching; nothing is carried there.", a.name(), b.name(), mm),
            "Shim it if it is meant to bear."));
      }
    }
    return out;
  }

  /** The one to move is named first: what lies above, else what is not locked in its place, else the smaller. */
  private static Finding overlap(SceneHeap scene, PairFit f) {
    boolean first = scene.solids().get(f.b()).fixed() || movesFirst(scene, f);
    int moved = first ? f.a() : f.b();
    String name = scene.solids().get(moved).name();
    String other = scene.solids().get(first ? f.b() : f.a()).name();
    Vec3 way = first ? f.normal() : f.normal().negated();
    String where = way.z() > UPRIGHT ? "up" : "toward the " + Headings.word(way);
    double mm = -f.distanceM() * 1e3;
    return Draft.fail(Code.OVERLAPS).about(name, other).figure(mm, 1, "mm").say(
        text("%s lies %.1f mm inside %s; what is computed from that is not to be trusted.", name, Draft.up(mm), other),
        text("Settle the scene, or move %s %.1f mm %s.", name, Draft.up(mm), where));
  }

  private static boolean movesFirst(SceneHeap scene, PairFit f) {
    PlacedRock a = scene.rocks().get(f.a());
    PlacedRock b = scene.rocks().get(f.b());
    if (Math.abs(f.normal().z()) > UPRIGHT) return f.normal().z() > 0;
    boolean aLocked = locked(scene, f.a());
    if (aLocked != locked(scene, f.b())) return !aLocked;
    return a.body().dryMassKg() < b.body().dryMassKg();
  }

  private static boolean locked(SceneHeap scene, int rock) {
    return scene.scene().placement(scene.name(rock)).map(Placement::locked).orElse(false);
  }

  private static List<Finding> outside(SceneHeap scene) {
    double length = scene.scene().tank().lengthMm();
    double width = scene.scene().tank().widthMm();
    List<Finding> out = new ArrayList<>();
    for (int i = 0; i < scene.rocks().size(); i++) {
      var r = scene.rocks().get(i);
      double left = r.reach(Vec3.X.negated()) * 1e3;
      double right = r.reach(Vec3.X) * 1e3 - length;
      double front = r.reach(Vec3.Y.negated()) * 1e3;
      double back = r.reach(Vec3.Y) * 1e3 - width;
      double down = r.reach(Vec3.Z.negated()) * 1e3;
      double over = Math.max(Math.max(Math.max(left, right), Math.max(front, back)), down);
      if (over > 1) {
        List<String> way = new ArrayList<>();
        into(way, left, right, "to the right", "to the left");
        into(way, front, back, "back", "forward");
        into(way, down, Double.NEGATIVE_INFINITY, "up", "");
        boolean fits = !(left + right > 0 || front + back > 0);
        out.add(Draft.fail(Code.OUTSIDE).about(scene.name(i)).figure(over, 0, "mm").say(
            text("%s reaches %.0f mm through the glass.", scene.name(i), Draft.wholeUp(over)),
            fits ? text("Move %s at least %s.", scene.name(i), Draft.names(way))
                : text("Turn %s, or choose a smaller rock: it is longer than the tank that way.", scene.name(i))));
      }
    }
    return out;
  }

  /** How far in along one line of the tank, from the end that is passed. */
  private static void into(List<String> way, double low, double high, String up, String down) {
    if (low > 0) way.add(text("%.0f mm %s", Draft.wholeUp(low), up));
    else if (high > 0) way.add(text("%.0f mm %s", Draft.wholeUp(high), down));
  }
}
