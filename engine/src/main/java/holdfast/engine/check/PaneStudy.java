package holdfast.engine.check;

import holdfast.engine.check.CheckReport.FootLine;
import holdfast.engine.pane.BottomPane;
import holdfast.engine.pane.FoamPlate;
import holdfast.engine.pane.FootLoad;
import holdfast.engine.pane.LoadCase;
import holdfast.engine.pane.PaneFinding;
import holdfast.engine.pane.PaneLoad;
import holdfast.engine.pane.PaneReport;
import holdfast.engine.pane.Plate;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.balance.ForceBalance.Range;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.SceneHeap.Kind;
import holdfast.engine.statics.heap.State;
import holdfast.model.scene.Rock;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** From the ranges of the foot forces to the bottom pane's judgement. */
record PaneStudy(List<FootLine> feet, Optional<PaneReport> report, List<Finding> findings) {

  /** One foot in one state. */
  private record FootForce(int link, Range range, State state) {
    boolean bounded() {
      return range.bounded() && !Double.isNaN(range.leastN());
    }
  }

  /** A pane on foam; an edit of the rocks leaves it as it is. */
  private record FoamAsked(Plate plate, double foundationNm3) {}

  /** What one link of a heap that has not changed may carry. */
  private record RangeAsked(PartJudge judge, int link) {}

  static PaneStudy of(HeapStudy study) {
    SceneHeap scene = study.scene();
    List<Integer> feet = new ArrayList<>();
    for (int i = 0; i < scene.seats().size(); i++) {
      Kind k = scene.seats().get(i).kind();
      if (k == Kind.FLOOR || k == Kind.SAND) feet.add(i);
    }
    List<List<FootForce>> byFoot = feet.stream().<List<FootForce>>map(f -> new ArrayList<>()).toList();
    Map<LoadCase, PaneLoad.Case> cases = new EnumMap<>(LoadCase.class);
    boolean sound = true;
    for (LoadCase c : LoadCase.values()) {
      List<State> states = states(c, study);
      sound &= states.stream().filter(s -> !falling(s)).flatMap(s -> study.judges(s).stream()).allMatch(PartJudge::safe);
      List<FootLoad> loads = new ArrayList<>();
      for (int f = 0; f < feet.size(); f++) {
        List<FootForce> forces = forces(study, feet.get(f), states);
        byFoot.get(f).addAll(forces);
        loads.add(load(scene, feet.get(f), forces));
      }
      double weight = states.stream().mapToDouble(s -> weightN(study, s)).max().orElseThrow();
      boolean allOnFloor = scene.seats().stream().noneMatch(s -> s.kind() == Kind.PANE);
      cases.put(c, new PaneLoad.Case(loads, weight, allOnFloor));
    }
    // What falls has no forces that could be told.
    if (!sound) return new PaneStudy(lines(scene, byFoot), Optional.empty(), List.of());
    Optional<PaneLoad.HeldRock> heaviest = scene.rocks().stream()
        .map(r -> new PaneLoad.HeldRock(r.rock().name(), carriedKg(r)))
        .max(Comparator.comparingDouble(PaneLoad.HeldRock::massKg));
    PaneReport report = BottomPane.judge(scene.scene(), new PaneLoad(cases, heaviest),
        (plate, foam) -> study.recall().of(new FoamAsked(plate, foam), () -> new FoamPlate(plate, foam)));
    return new PaneStudy(lines(scene, byFoot), Optional.of(report),
        report.findings().stream().map(f -> finding(f, study)).toList());
  }

  /** A living rock comes with its pores full; what is dry is carried in dry. */
  private static double carriedKg(PlacedRock r) {
    return r.body().dryMassKg() + (r.rock().kind() == Rock.Kind.LIVE ? r.body().poreWaterKg() : 0);
  }

  /**
   * The states that a case of the pane stands for, the heaviest last: for good, what lives grows. While the water falls, a rock
   * that relieves a foot may still be carried by it and one that loads the foot no longer: the foot then bears more than
   * drained. How far water presses meanwhile is left out: by then it is less than full, and for a short time.
   */
  private static List<State> states(LoadCase c, HeapStudy study) {
    return switch (c) {
      case DRY -> List.of(State.DRY);
      case DRAINED -> List.of(State.THREE_QUARTERS, State.HALF, State.QUARTER, State.DRAINED);
      case FILLED -> study.states().contains(State.GROWN) ? List.of(State.FILLED, State.GROWN) : List.of(State.FILLED);
    };
  }

  /** The water stands between full and none. */
  private static boolean falling(State s) {
    return s.waterShare() > 0 && s.waterShare() < 1;
  }

  /** All of the heap still lies under water. */
  private static boolean known(HeapStudy study, int rock, PartJudge judge) {
    return judge.dead().equals(study.judge(State.FILLED, rock).dead());
  }

  /** What a foot may carry in each of some states; nothing where its heap does not stay. */
  private static List<FootForce> forces(HeapStudy study, int link, List<State> states) {
    List<FootForce> out = new ArrayList<>();
    int rock = study.scene().seats().get(link).rock();
    PartJudge last = null;
    for (State s : states) {
      PartJudge judge = study.judge(s, rock);
      if (judge == last || !judge.safe() || falling(s) && known(study, rock, judge)) continue;
      last = judge;
      int foot = judge.part().links().indexOf(link);
      Range range = study.recall().of(new RangeAsked(judge, foot), () -> judge.forThread().range(List.of(foot)));
      out.add(new FootForce(link, range, s));
    }
    return out;
  }

  /** A foot with all that it may carry in any of its states. */
  private static FootLoad load(SceneHeap scene, int link, List<FootForce> forces) {
    boolean bounded = forces.stream().allMatch(FootForce::bounded);
    double least = bounded ? forces.stream().mapToDouble(f -> Math.max(0, f.range.leastN())).min().orElse(0) : 0;
    double most = bounded ? forces.stream().mapToDouble(f -> f.range.mostN()).max().orElse(0) : 0;
    return new FootLoad(
        scene.name(scene.seats().get(link).rock()), scene.contactPolygon(link), least, Math.max(least, most), bounded);
  }

  /** What all rocks together press on what carries them: less where one that is fixed to others floats. */
  private static double weightN(HeapStudy study, State state) {
    return Math.max(0, -study.loads(state).stream().mapToDouble(w -> w.force().z()).sum());
  }

  private static List<FootLine> lines(SceneHeap scene, List<List<FootForce>> byFoot) {
    List<FootLine> out = new ArrayList<>();
    for (List<FootForce> forces : byFoot) {
      forces.stream().max(Comparator.comparingDouble(f -> f.range.mostN())).ifPresent(f -> {
        SceneHeap.Seat seat = scene.seats().get(f.link);
        out.add(new FootLine(scene.name(seat.rock()), seat.other(), seat.areaM2() * 1e6, f.range.leastN(),
            f.range.bounded() ? f.range.mostN() : Double.POSITIVE_INFINITY, f.range.bounded(), f.state));
      });
    }
    return out;
  }

  private static Finding finding(PaneFinding f, HeapStudy study) {
    Code code = java.util.Arrays.stream(Code.values()).filter(c -> c.word().equals(f.kind().word())).findFirst().orElseThrow();
    Severity severity = switch (f.weight()) {
      case FAIL -> Severity.FAIL;
      case WARN -> Severity.WARN;
      case NOTE -> Severity.NOTE;
    };
    return new Finding(code, severity, List.of(f.about()), some(f.figure()), some(f.limit()), f.unit(),
        f.load().map(c -> states(c, study)).map(s -> s.get(s.size() - 1)), f.sentence(), f.remedy());
  }

  private static OptionalDouble some(double v) {
    return Double.isNaN(v) ? OptionalDouble.empty() : OptionalDouble.of(v);
  }
}
