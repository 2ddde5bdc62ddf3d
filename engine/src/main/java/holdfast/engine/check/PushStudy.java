package holdfast.engine.check;

import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.State;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How hard a push each rock of a scene takes from its sides. A margin is the least over the push lines and the states; it is
 * never above what was seen to stay, and is looked for up to {@link #cap}.
 *
 * <p>Asked is no more than a reader needs: of every rock its weakest side ({@link #weakest}), of one that bears less than the
 * tier the sides on which it does ({@link #below}), and what goes over there ({@link #topple}). The margins from every side
 * ({@link #rose}) are built on these: the weakest decides what the least is, and no other side is searched below it.
 */
final class PushStudy {
  /** Margins are looked for up to this many tiers: more than that nobody asks. */
  private static final double CAP_TIERS = 3;

  /** Width of the search, as a share, where margins are asked for exactly. */
  private static final double EXACT_SHARE = 1e-4;

  /** The same for the weakest side of a rock: fine enough to ask for the bound, which is often the answer. */
  private static final double WEAKEST_SHARE = 4e-3;

  private final HeapStudy study;
  private final double share;
  private final double weakestShare;

  PushStudy(HeapStudy study, boolean exact) {
    this.study = study;
    share = exact ? EXACT_SHARE : LoadCase.SEARCH_SHARE;
    weakestShare = exact ? EXACT_SHARE : WEAKEST_SHARE;
  }

  /**
   * One direction's margin of one rock.
   *
   * @param atMostN what the force balance alone allows: nothing above it stays; infinite where that stayed open; worked out
   *     for the weakest direction of a rock
   * @param unlimited no limit was found below the cap
   * @param mechanism the movement of all rocks of the scene, when it was seen
   * @param settled no answer is missing
   */
  record PushFound(
      double degrees, double marginN, OptionalDouble atMostN, boolean unlimited, Movement movement, State state,
      Optional<Mechanism> mechanism, boolean settled) {}

  /** Newtons up to which margins are looked for. */
  double cap() {
    return CAP_TIERS * study.tier();
  }

  /** What was found on one side, by its place in the round, and the place of the case that governs among its cases. */
  private record Side(int place, int governing, PushFound push) {}

  private enum What { WEAKEST, BELOW, TOPPLE, ROSE }

  /** A question about the heap of one rock: all that the answer depends on. Equal states share a judge and not their name. */
  private record Asked(
      What what, List<State> states, List<PartJudge> judges, List<List<Push>> pushes, int rocks, List<Double> figures) {}

  /** One rock's pushes from all sides, made ready to be asked about. */
  private final class Round {
    final int rock;
    final List<List<Push>> lines;

    Round(int rock) {
      this.rock = rock;
      PlacedRock r = study.scene().rocks().get(rock);
      lines = Push.round(rock, r.lobes(), r.centre(), study.scene().scene().settings());
    }

    Asked asked(What what) {
      return new Asked(what, study.states(), study.of(rock), lines, study.scene().rocks().size(), List.of(study.tier(), share));
    }

    /** The cases of every side. */
    List<List<LoadCase>> cases() {
      return lines.stream().map(side -> study.cases(rock, side)).toList();
    }

    double degrees(int place) {
      return 360.0 * place / lines.size();
    }

    Side side(int place, List<LoadCase> cases, LoadCase.Least least, OptionalDouble atMost) {
      return new Side(place, cases.indexOf(least.governing()), found(degrees(place), least, atMost));
    }
  }

  private PushFound found(double degrees, LoadCase.Least least, OptionalDouble atMost) {
    boolean unlimited = least.factor() >= cap();
    return new PushFound(degrees, least.factor(), atMost, unlimited, unlimited ? Movement.NONE : least.kind(),
        least.governing().state(), least.movement().map(m -> study.whole(least.governing().judge().part(), m)), least.settled());
  }

  // -- the weakest side ---------------------------------------------------------------------------------------------

  /** The side from which a rock bears the least, searched finely. Every other side was seen to bear as much. */
  PushFound weakest(int rock) {
    return weakest(new Round(rock)).push;
  }

  private Side weakest(Round round) {
    return study.recall().of(round.asked(What.WEAKEST), () -> {
      List<List<LoadCase>> sides = round.cases();
      LoadCase.Least least = LoadCase.weakest(sides, cap(), weakestShare, study.tier());
      int place = 0;
      while (!sides.get(place).contains(least.governing())) place++;
      OptionalDouble atMost = OptionalDouble.empty();
      if (least.factor() > 0 && least.factor() < cap()) {
        double bound = least.atMost(cap());
        atMost = OptionalDouble.of(Double.isNaN(bound) ? Double.POSITIVE_INFINITY : bound);
      }
      return round.side(place, sides.get(place), least, atMost);
    });
  }

  // -- what is below the tier ---------------------------------------------------------------------------------------

  /** The sides from which a rock bears less than the tier, the weakest first. */
  List<PushFound> below(int rock) {
    return below(new Round(rock)).stream().map(Side::push).toList();
  }

  private List<Side> below(Round round) {
    Side weakest = weakest(round);
    if (weakest.push.marginN >= study.tier()) return List.of();
    return study.recall().of(round.asked(What.BELOW), () -> {
      List<Side> out = new ArrayList<>();
      out.add(weakest);
      List<Side> others = searched(round, List.of(weakest), weakest.push.marginN, study.tier());
      others.stream().filter(s -> s.push.marginN < study.tier())
          .sorted(Comparator.comparingDouble(s -> s.push.marginN)).forEach(out::add);
      return out;
    });
  }

  /** The margins between {@code floor}, which all were seen to bear, and {@code cap}, of all sides but the known ones. */
  private List<Side> searched(Round round, List<Side> known, double floor, double cap) {
    List<List<LoadCase>> sides = round.cases();
    List<Side> out = new ArrayList<>();
    // What governed one side is asked first on the next: the others then only confirm.
    int first = known.isEmpty() ? 0 : known.get(0).governing;
    for (int d = 0; d < sides.size(); d++) {
      int place = d;
      if (known.stream().anyMatch(s -> s.place == place)) continue;
      List<LoadCase> asked = new ArrayList<>(sides.get(d));
      asked.add(0, asked.remove(first));
      Side side = round.side(d, sides.get(d), LoadCase.least(asked, floor, cap, share, study.tier()), OptionalDouble.empty());
      first = side.governing;
      out.add(side);
    }
    return out;
  }

  /**
   * The least push below the tier under which a rock goes over. A side that slides first says nothing of the other lines and
   * states from there: each of these is asked for its own first movement.
   */
  Optional<PushFound> topple(int rock) {
    Round round = new Round(rock);
    List<Side> below = below(round);
    if (below.isEmpty()) return Optional.empty();
    return study.recall().of(round.asked(What.TOPPLE), () -> {
      List<List<LoadCase>> sides = round.cases();
      Optional<PushFound> least = below.stream().map(Side::push).filter(p -> p.movement == Movement.TOPPLES).findFirst();
      double[] guess = new double[sides.get(0).size()];
      for (Side s : below.stream().sorted(Comparator.comparingInt(Side::place)).toList()) {
        double cap = least.map(PushFound::marginN).orElse(study.tier());
        if (s.push.movement != Movement.SLIDES || s.push.marginN >= cap) continue;
        Optional<PushFound> own = LoadCase.toppling(
            sides.get(s.place), guess, s.governing, s.push.marginN, cap, share, study.tier())
            .map(t -> found(s.push.degrees, t, OptionalDouble.empty()));
        if (own.isPresent()) least = own;
      }
      return least;
    });
  }

  // -- every side ---------------------------------------------------------------------------------------------------

  /** The margins from every side, round the compass. */
  List<PushFound> rose(int rock) {
    Round round = new Round(rock);
    return study.recall().of(round.asked(What.ROSE), () -> {
      Side weakest = weakest(round);
      List<Side> all = new ArrayList<>(below(round));
      if (all.isEmpty()) all.add(weakest);
      all.addAll(searched(round, List.copyOf(all), Math.min(cap(), Math.max(study.tier(), weakest.push.marginN)), cap()));
      return all.stream().sorted(Comparator.comparingInt(Side::place)).map(Side::push).toList();
    });
  }
}
