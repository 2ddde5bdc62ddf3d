package holdfast.engine.bonding;

import holdfast.engine.bonding.JointDemand.Demand;
import holdfast.engine.bonding.JointDemand.Offer;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.StateJudges;
import holdfast.engine.statics.StateJudges.Judged;
import holdfast.engine.statics.heap.BondUse;
import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Forces.LinkForce;
import holdfast.engine.statics.heap.Gravity;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.engine.work.Parallel;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * What every fixed joint is asked for: in place, under its weight in every state, the tier's push on every rock from every
 * side, its press, and the shaking asked for; and in the hands, its piece lifted drained by each of its rocks in turn.
 *
 * <p>The forces are those with which the heap comes to rest (links slightly elastic, no self-stress without a cause). A
 * load under which it does not come to rest tells no forces; it is tried at half and a quarter, for a rock that slides
 * first: more than that cannot come to the joint through that rock. A lifted piece hangs from the rock in the hands, which
 * is held fast as it stood; where its joints make no ring the forces follow from balance alone.
 */
public final class JointDemands {
  /** Tensile strength of rock as a share of its crushing strength (common practice; Griffith 1924 derives an eighth). */
  public static final double TENSILE_SHARE = 0.1;

  /** Bonds of a lifted piece are made this much stronger, so that what they are asked for is seen beyond their strength. */
  private static final double STRONGER = 1e4;

  private static final double[] SLIDES_FIRST = {1, 0.5, 0.25};

  private final SceneHeap scene;
  private final Settings settings;
  private final List<List<Integer>> pieces;
  private final int threads;
  private final int[] jointOf;

  private JointDemands(SceneHeap scene, List<List<Integer>> pieces, int threads) {
    this.scene = scene;
    this.pieces = pieces.stream().map(List::copyOf).toList();
    this.threads = threads;
    settings = scene.scene().settings();
    jointOf = scene.seats().stream().mapToInt(this::jointOf).toArray();
  }

  /** All that was worked out: one entry a fixed joint that has something to hold, and one a rock of a piece of several. */
  public record Result(List<JointDemand> joints, List<PieceLift> lifts) {
    public Result {
      joints = List.copyOf(joints);
      lifts = List.copyOf(lifts);
    }

    public Optional<JointDemand> joint(int index) {
      return joints.stream().filter(j -> j.index() == index).findFirst();
    }
  }

  /**
   * Works out the demands.
   *
   * @param pieces the rocks that are lifted as one, by their places in the scene's heap
   */
  public static Result of(SceneHeap scene, List<List<Integer>> pieces, int threads) {
    return new JointDemands(scene, pieces, threads).run();
  }

  /** The lifts alone, without what the joints are asked for in place, which takes far longer. */
  public static List<PieceLift> lifts(SceneHeap scene, List<List<Integer>> pieces) {
    return new JointDemands(scene, pieces, 1).lifts(new TreeMap<>());
  }

  private int jointOf(SceneHeap.Seat seat) {
    if (seat.kind() != SceneHeap.Kind.BOND && seat.kind() != SceneHeap.Kind.ROD) return -1;
    List<JointSpec> joints = scene.scene().joints();
    return IntStream.range(0, joints.size())
        .filter(j -> joints.get(j).bonded() && joints.get(j).joins(scene.name(seat.rock()), seat.other())).findFirst().orElse(-1);
  }

  private Result run() {
    Map<Integer, Found> place = inPlace();
    Map<Integer, Found> lift = new TreeMap<>();
    List<PieceLift> lifts = lifts(lift);
    List<JointDemand> out = new ArrayList<>();
    for (int j = 0; j < scene.scene().joints().size(); j++) {
      List<Integer> links = linksOf(j);
      if (links.isEmpty()) continue;
      Found worst = worse(place.get(j), lift.get(j));
      Link governing = scene.heap().links().get(worst == null ? links.get(0) : worst.link);
      double area = links.stream().mapToDouble(l -> scene.seats().get(l).areaM2()).sum();
      out.add(new JointDemand(j, scene.scene().joints().get(j), links.size(), area, offer(governing),
          Optional.ofNullable(place.get(j)).map(f -> f.demand), Optional.ofNullable(lift.get(j)).map(f -> f.demand)));
    }
    return new Result(out, lifts);
  }

  private List<Integer> linksOf(int joint) {
    return IntStream.range(0, jointOf.length).filter(l -> jointOf[l] == joint).boxed().toList();
  }

  /** A demand and the link of the whole heap that it was found in. */
  private record Found(Demand demand, int link) {}

  private static Found worse(Found a, Found b) {
    return a == null ? b : b == null || a.demand.use() >= b.demand.use() ? a : b;
  }

  // -- in place -----------------------------------------------------------------------------------------------------

  private Map<Integer, Found> inPlace() {
    List<Supplier<Map<Integer, Found>>> questions = new ArrayList<>();
    List<Heap.Part> jointed = scene.heap().separate().stream()
        .filter(p -> p.links().stream().anyMatch(l -> jointOf[l] >= 0)).toList();
    for (List<Judged> ofPart : StateJudges.all(jointed, scene.weights().loads(), threads, new Recall())) {
      // Where all of a heap is under water in two states, both ask the same: once is enough.
      for (Judged j : StateJudges.governing(ofPart)) {
        questions.add(() -> inState(j.judge().part(), j.state(), j.judge().forThread()));
      }
    }
    Map<Integer, Found> out = new TreeMap<>();
    for (Map<Integer, Found> m : Parallel.map(questions, threads, Supplier::get)) {
      m.forEach((j, f) -> out.merge(j, f, JointDemands::worse));
    }
    return out;
  }

  private Map<Integer, Found> inState(Heap.Part part, State state, PartJudge judge) {
    Map<Integer, Found> out = new TreeMap<>();
    if (!(judge.rest() instanceof Rest.Stays s)) return out;
    collect(out, part, s.forces(), "its weight, " + state.words());
    double tier = settings.get(Setting.PUSH_TIER_N);
    int directions = Push.sides(settings);
    List<Double> kg = scene.weights().shakingKg(state);
    for (int d = 0; d < directions; d++) {
      double degrees = 360.0 * d / directions;
      Vec3 along = Vec3.heading(degrees);
      for (int rock : part.bodies()) {
        PlacedRock r = scene.rocks().get(rock);
        for (Push p : Push.lines(rock, r.lobes(), r.centre(), degrees, settings)) {
          under(out, part, judge, part.of(p.unit(scene.heap())), tier, "a push on " + scene.name(rock) + ", " + state.words());
        }
      }
      List<Wrench> shake = part.bodies().stream().map(b -> new Wrench(along.times(kg.get(b) * Gravity.G), Vec3.ZERO)).toList();
      under(out, part, judge, shake, settings.get(Setting.SHAKE_G), "shaking, " + state.words());
    }
    for (int rock : part.bodies()) {
      for (Push p : Push.presses(rock, scene.rocks().get(rock).lobes())) {
        under(out, part, judge, part.of(p.unit(scene.heap())), tier, "a press on " + scene.name(rock) + ", " + state.words());
      }
    }
    return out;
  }

  private void under(Map<Integer, Found> out, Heap.Part part, PartJudge judge, List<Wrench> live, double factor, String words) {
    if (factor == 0) return;
    for (double share : SLIDES_FIRST) {
      if (judge.under(live, share * factor) instanceof Rest.Stays s) {
        collect(out, part, s.forces(), words);
        return;
      }
    }
  }

  private void collect(Map<Integer, Found> out, Heap.Part part, Forces forces, String words) {
    for (int k = 0; k < part.links().size(); k++) {
      int link = part.links().get(k);
      if (jointOf[link] < 0) continue;
      Demand d = demand(scene.heap().links().get(link), forces.links().get(k), words);
      out.merge(jointOf[link], new Found(d, link), JointDemands::worse);
    }
  }

  private static Demand demand(Link link, LinkForce f, String words) {
    Vec3 n = link.normal();
    double twist = f.moment().dot(n);
    return new Demand(words, Math.max(0, -f.normalN()), Math.max(0, f.normalN()), f.shear().norm(),
        f.moment().plusTimes(-twist, n).norm(), Math.abs(twist), BondUse.of(link, f));
  }

  // -- in the hands -------------------------------------------------------------------------------------------------

  private List<PieceLift> lifts(Map<Integer, Found> worst) {
    List<PieceLift> out = new ArrayList<>();
    List<Wrench> drained = scene.weights().loads(State.DRAINED);
    for (int p = 0; p < pieces.size(); p++) {
      if (pieces.get(p).size() < 2) continue;
      for (int rock : pieces.get(p)) out.add(lift(p, rock, drained, worst));
    }
    return out;
  }

  private PieceLift lift(int piece, int held, List<Wrench> drained, Map<Integer, Found> out) {
    List<Integer> hanging = pieces.get(piece).stream().filter(r -> r != held).toList();
    List<Link> links = new ArrayList<>();
    List<Integer> which = new ArrayList<>();
    for (int l = 0; l < scene.heap().links().size(); l++) {
      Link link = scene.heap().links().get(l);
      if (link.b() == Heap.GROUND || !pieces.get(piece).contains(link.a()) || !pieces.get(piece).contains(link.b())) continue;
      int a = hanging.indexOf(link.a());
      int b = hanging.indexOf(link.b());
      Link strong = stronger(link);
      links.add(a < 0 ? turned(strong, b) : strong.between(a, b < 0 ? Heap.GROUND : b));
      which.add(l);
    }
    Heap heap = new Heap(hanging.stream().map(scene.heap().bodies()::get).toList(), links);
    List<Wrench> loads = hanging.stream().map(drained::get).toList();
    String words = "lifted by " + scene.name(held);
    double most = 0;
    int joint = -1;
    for (Heap.Part part : heap.separate()) {
      Rest rest = new PartJudge(part, loads).rest();
      if (!(rest instanceof Rest.Stays s)) {
        return new PieceLift(piece, held, rest instanceof Rest.Undecided ? Double.NaN : Double.POSITIVE_INFINITY, -1);
      }
      for (int k = 0; k < part.links().size(); k++) {
        int link = which.get(part.links().get(k));
        if (jointOf[link] < 0) continue;
        LinkForce f = s.forces().links().get(k);
        // The force acts on the link's own body a: on a turned link that was b, which gets the opposite.
        boolean isTurned = !hanging.contains(scene.heap().links().get(link).a());
        Demand d = demand(scene.heap().links().get(link), isTurned ? opposite(f) : f, words);
        out.merge(jointOf[link], new Found(d, link), JointDemands::worse);
        if (d.use() > most) {
          most = d.use();
          joint = jointOf[link];
        }
      }
    }
    return new PieceLift(piece, held, most, joint);
  }

  /** The pull across the patch is the same from both sides; along it all is turned round. */
  private static LinkForce opposite(LinkForce f) {
    return new LinkForce(f.normalN(), f.shear().negated(), f.at(), f.moment().negated(), f.cornersN());
  }

  private static Link stronger(Link link) {
    if (link instanceof Link.Bond b) {
      return new Link.Bond(b.a(), b.b(), b.normal(), b.polygon(), b.areaM2(), STRONGER * b.tensionN_m2(),
          STRONGER * b.shearN_m2(), STRONGER * b.crushingN_m2(), b.moment());
    }
    if (link instanceof Link.Rod r) {
      return new Link.Rod(r.a(), r.b(), r.normal(), r.at(), r.diameterM(), STRONGER * r.shearN(), STRONGER * r.bendingNm(),
          STRONGER * r.pullN());
    }
    return link;
  }

  /** The link seen from its other body, the first now being the ground. */
  private static Link turned(Link link, int b) {
    List<Vec3> back = new ArrayList<>(link.polygon());
    Collections.reverse(back);
    Vec3 n = link.normal().negated();
    if (link instanceof Link.Bond o) {
      return new Link.Bond(b, Heap.GROUND, n, back, o.areaM2(), o.tensionN_m2(), o.shearN_m2(), o.crushingN_m2(), o.moment());
    }
    if (link instanceof Link.Rod r) {
      return new Link.Rod(b, Heap.GROUND, n, r.at(), r.diameterM(), r.shearN(), r.bendingNm(), r.pullN());
    }
    return new Link.Bearing(b, Heap.GROUND, n, back, ((Link.Bearing) link).friction());
  }

  // -- what it offers -----------------------------------------------------------------------------------------------

  private Offer offer(Link link) {
    Vec3 at = link.polygon().get(0);
    Vec3 across = link.normal().anyPerpendicular();
    Vec3 other = link.normal().cross(across);
    double moment = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 24; k++) {
      Vec3 axis = across.times(Math.cos(Math.PI * k / 12)).plusTimes(Math.sin(Math.PI * k / 12), other);
      moment = Math.min(moment, capacity(link, new LinkForce(0, Vec3.ZERO, at, axis, List.of())));
    }
    boolean gel = link instanceof Link.Bond b && !b.moment();
    double pull = link instanceof Link.Rod r ? r.pullN() : capacity(link, new LinkForce(-1, Vec3.ZERO, at, Vec3.ZERO, List.of()));
    double twist = gel || link instanceof Link.Rod ? 0
        : capacity(link, new LinkForce(0, Vec3.ZERO, at, link.normal(), List.of()));
    return new Offer(pull, capacity(link, new LinkForce(0, across, at, Vec3.ZERO, List.of())), gel ? 0 : moment, twist,
        link instanceof Link.Bond b ? b.tensionN_m2() : 0, TENSILE_SHARE * settings.get(Setting.ROCK_STRENGTH_N_MM2) * 1e6);
  }

  /** The use grows in proportion to a load of one kind. */
  private static double capacity(Link link, LinkForce unit) {
    double use = BondUse.of(link, unit);
    return use > 0 ? 1 / use : 0;
  }
}
