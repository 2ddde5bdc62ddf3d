package holdfast.app.report;

import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckReport.FootLine;
import holdfast.engine.check.CheckReport.GapLine;
import holdfast.engine.check.CheckReport.JointLine;
import holdfast.engine.check.CheckReport.PushLine;
import holdfast.engine.check.CheckReport.RockLine;
import holdfast.engine.check.CheckReport.Standing;
import holdfast.engine.check.CheckReport.StateLine;
import holdfast.engine.check.CheckReport.Verdict;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.pane.GlassStrength;
import holdfast.engine.pane.LoadCase;
import holdfast.engine.pane.PaneLoad;
import holdfast.engine.pane.PaneReport;
import holdfast.engine.pane.PaneReport.CaseStress;
import holdfast.engine.pane.PaneReport.FootBearing;
import holdfast.engine.pane.PaneReport.Slip;
import holdfast.engine.pane.PaneReport.StressMap;
import holdfast.engine.pane.PaneReport.Strike;
import holdfast.engine.pane.Plate;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.State;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.JointSpec.Bond;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalDouble;

/** A report put together by hand, with one of everything that a report can say. Its figures mean nothing. */
final class Sample {
  private Sample() {}

  static CheckReport failing() {
    return new CheckReport(scene(), Verdict.FAILS,
        "the tall chunk topples toward the front pane under a push of 3.2 N",
        List.of(
            new Finding(Code.TOPPLES, Severity.FAIL, List.of("tall chunk", "front pane"), OptionalDouble.of(3.279),
                OptionalDouble.of(20), "N", Optional.of(State.FILLED),
                "Pushed from the back with 3.2 N at 126 mm above its foot, the tall chunk topples toward the front pane.",
                "Tie the tall chunk to the table slab with 40 ml of mortar, or swap it for one under 1.5 kg."),
            new Finding(Code.POINT_LOAD, Severity.FAIL, List.of("spike"), OptionalDouble.of(1.0004),
                OptionalDouble.of(1), "N/mm2", Optional.of(State.DRAINED),
                "The spike bears on 12 mm2 of the bottom pane.", "Set it on the floor grid."),
            new Finding(Code.GAP, Severity.WARN, List.of("ledge with quite a long name", "right pane"),
                OptionalDouble.of(41.26), OptionalDouble.of(50), "mm", Optional.empty(),
                "The cleaner does not pass between the ledge with quite a long name and the right pane: the gap is 41.2 mm.",
                "Move it 9 mm to the left."),
            new Finding(Code.SINGLE_BOND, Severity.WARN, List.of("ledge with quite a long name", "table slab"),
                OptionalDouble.empty(), OptionalDouble.empty(), "", Optional.empty(),
                "Without the bond between the ledge with quite a long name and the table slab the heap falls.",
                "Add a rod beside it."),
            new Finding(Code.ROCK_AMOUNT, Severity.NOTE, List.of(), OptionalDouble.of(0.094), OptionalDouble.empty(), "kg/L",
                Optional.empty(), "14.2 kg of rock in 158 litres is within the usual range.", "")),
        List.of(
            new StateLine(State.DRY, Standing.STAYS, 0.2139, 0.2201, 270, Optional.empty()),
            new StateLine(State.FILLED, Standing.STAYS, 0.1311, 0.1354, 247.5, Optional.empty()),
            new StateLine(State.HALF, Standing.SQUEEZED, 0, 0.09, 0, Optional.empty())),
        List.of(
            rock("table slab", "dry", 5.6, 34.49, 130, new PushLine(0, 60, OptionalDouble.empty(), true, Movement.NONE, State.FILLED), 100),
            rock("tall chunk", "dry", 2.93, 18.14, 270.04,
                new PushLine(270, 3.279, OptionalDouble.of(3.9), false, Movement.TOPPLES, State.FILLED), 12.38),
            rock("ledge with quite a long name", "live", 1.7, 10.48, 214.5,
                new PushLine(22.5, 22.96, OptionalDouble.of(24), false, Movement.SLIDES, State.THREE_QUARTERS), 8.02),
            new RockLine("spike", "cast", 0.42, 2.6, 90, List.of(), Optional.empty(), 0)),
        List.of(
            new JointLine("table slab", "tall chunk", 1, 5211.4, 0.013, Bond.NONE, 0),
            new JointLine("table slab", "ledge with quite a long name", 2, 873.2, -0.04, Bond.MORTAR, 0.6202),
            new JointLine("tall chunk", "ledge with quite a long name", 1, 0, 0, Bond.ROD, 0.11)),
        List.of(
            new FootLine("table slab", "grid", 42000.7, 48.31, 61.2, true, State.DRAINED),
            new FootLine("spike", "bare glass", 12.3, 4.12, Double.POSITIVE_INFINITY, false, State.DRAINED)),
        List.of(
            new GapLine("table slab", "front pane", 117.29, 50),
            new GapLine("tall chunk", "front pane", 141, 50),
            new GapLine("ledge with quite a long name", "right pane", 41.26, 50),
            new GapLine("table slab", "right pane", 48, 50),
            new GapLine("tall chunk", "overflow", 133.3, 75)),
        Optional.of(pane()),
        List.of(
            "Lift wet rock with two people from 16 kg; take 10 to 20 % off for turning.",
            "A screen, not a proof: the maker of the tank has the last word about its glass, and a structural engineer "
                + "about the floor beneath it."));
  }

  static CheckReport passing() {
    CheckReport f = failing();
    return new CheckReport(f.scene(), Verdict.PASSES, "every rock stays and bears its push", List.of(), f.states().subList(0, 1),
        f.rocks().subList(0, 1), List.of(), f.feet().subList(0, 1), List.of(), Optional.empty(), f.cautions().subList(1, 2));
  }

  private static RockLine rock(String name, String kind, double kg, double n, double topMm, PushLine weakest, double pressN) {
    return new RockLine(name, kind, kg, n, topMm, List.of(weakest), Optional.of(weakest), pressN);
  }

  private static PaneReport pane() {
    CaseStress filled = new CaseStress(LoadCase.FILLED, "four edges", OptionalDouble.empty(), 2.114, 0.4012, 2.5152, 442, 217,
        "table slab", 0.159, 34.49, 2.9, 7.25, 0.4684, 0.3937, 0.0747, 0.498, 0.614);
    CaseStress drained = new CaseStress(LoadCase.DRAINED, "foam over a full deck", OptionalDouble.of(5e6), 0, 0.9, 0.9, 442,
        217, "table slab", 1, 61.2, 1.1, 9.9, 0.123, 0, 0.123, 0.178, 0.05);
    return new PaneReport(
        new Plate(0.892, 0.442, 0.010, 70e9, 0.20), GlassStrength.of(Settings.DEFAULT, false), 8,
        List.of(new FootBearing("spike", 120, 90, List.of(), 9.2, LoadCase.DRAINED, 12.3, 0.747, 0.747, 0.2, true, false,
            OptionalDouble.of(31))),
        List.of(filled, drained), filled, new StressMap(LoadCase.FILLED, "four edges", 1, 1, 0, 1, 0, 1, List.of(2.5), List.of(0.6)),
        Optional.of(new Slip("table slab", 5.6, 50, new Strike(9000, 4742.7, 20, 81), new Strike(3000, 1210.2, 8, 0), "grid", true)),
        List.of(), List.of(), List.of("The pane rests freely on its four edges."),
        List.of("Glass can fail suddenly, and no figure here takes the place of its maker's word."),
        new PaneLoad(Map.of(LoadCase.FILLED, new PaneLoad.Case(List.of(), 34.49, true)), Optional.empty()));
  }

  private static Scene scene() {
    Tank tank = new Tank(884, 434, 440, 8, 10, Tank.BottomSupport.FULL, false, false, List.of(),
        List.of(Side.FRONT), List.of());
    return new Scene("a sample", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(410, 35, 25),
        List.of(), List.of(), List.of(), List.of(),
        List.of(
            JointSpec.paste("ledge with quite a long name", "table slab", Bond.MORTAR, 37.5),
            new JointSpec("tall chunk", "ledge with quite a long name", Bond.ROD, 0, 8, 30, true)),
        Settings.DEFAULT);
  }
}
