package holdfast.engine.check;

import holdfast.engine.check.CheckReport.FootLine;
import holdfast.engine.pane.BottomPane;
import holdfast.engine.pane.FootLoad;
import holdfast.engine.pane.LoadCase;
import holdfast.engine.pane.PaneFinding;
import holdfast.engine.pane.PaneLoad;
import holdfast.engine.pane.PaneReport;
import holdfast.engine.statics.ForceBalance.Range;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.SceneHeap;
import holdfast.engine.statics.SceneHeap.Kind;
import holdfast.engine.statics.State;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** From the ranges of the foot forces to the bottom pane's judgement. */
record PaneStudy(List<FootLine> feet, Optional<PaneReport> report, List<Finding> findings) {

  private static final Map<LoadCase, State> STATES = new EnumMap<>(Map.of(
      LoadCase.DRY, State.DRY, LoadCase.FILLED, State.FILLED, LoadCase.DRAINED, State.DRAINED));

  /** One foot in one state. */
  private record FootForce(int link, Range range, State state) {}

  static PaneStudy of(HeapStudy study) {
    SceneHeap scene = study.scene();
    List<Integer> feet = new ArrayList<>();
    for (int i = 0; i < scene.seats().size(); i++) {
      Kind k = scene.seats().get(i).kind();
      if (k == Kind.FLOOR || k == Kind.SAND) feet.add(i);
    }
    Map<LoadCase, PaneLoad.Case> cases = new EnumMap<>(LoadCase.class);
    List<List<FootForce>> byFoot = new ArrayList<>();
    for (int f = 0; f < feet.size(); f++) byFoot.add(new ArrayList<>());
    boolean sound = true;
    for (Map.Entry<LoadCase, State> e : STATES.entrySet()) {
      List<FootLoad> loads = new ArrayList<>();
      for (int f = 0; f < feet.size(); f++) {
        int link = feet.get(f);
        PartJudge own = study.judge(e.getValue(), scene.seats().get(link).rock()).forThread();
        if (!own.safe()) {
          sound = false;
          continue;
        }
        Range r = own.range(List.of(own.part().links().indexOf(link)));
        byFoot.get(f).add(new FootForce(link, r, e.getValue()));
        boolean bounded = r.bounded() && !Double.isNaN(r.leastN());
        loads.add(new FootLoad(scene.name(scene.seats().get(link).rock()), scene.contactPolygon(link),
            bounded ? Math.max(0, r.leastN()) : 0, bounded ? Math.max(r.leastN(), r.mostN()) : 0, bounded));
      }
      double weight = scene.weights().loads(e.getValue()).stream().mapToDouble(w -> Math.max(0, -w.force().z())).sum();
      boolean allOnFloor = scene.seats().stream().noneMatch(s -> s.kind() == Kind.PANE);
      cases.put(e.getKey(), new PaneLoad.Case(loads, weight, allOnFloor));
    }
    Optional<PaneLoad.HeldRock> heaviest = scene.rocks().stream()
        .map(r -> new PaneLoad.HeldRock(r.rock().name(), r.body().dryMassKg()))
        .max(Comparator.comparingDouble(PaneLoad.HeldRock::massKg));
    if (!sound) return new PaneStudy(lines(scene, byFoot), Optional.empty(), List.of());
    PaneReport report = BottomPane.judge(scene.scene(), new PaneLoad(cases, heaviest));
    return new PaneStudy(lines(scene, byFoot), Optional.of(report), report.findings().stream().map(PaneStudy::finding).toList());
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

  private static Finding finding(PaneFinding f) {
    Code code = java.util.Arrays.stream(Code.values()).filter(c -> c.word().equals(f.kind().word())).findFirst().orElseThrow();
    Severity severity = switch (f.weight()) {
      case FAIL -> Severity.FAIL;
      case WARN -> Severity.WARN;
      case NOTE -> Severity.NOTE;
    };
    return new Finding(code, severity, List.of(f.about()), some(f.figure()), some(f.limit()), f.unit(),
        f.load().map(STATES::get), f.sentence(), f.remedy());
  }

  private static OptionalDouble some(double v) {
    return Double.isNaN(v) ? OptionalDouble.empty() : OptionalDouble.of(v);
  }
}
