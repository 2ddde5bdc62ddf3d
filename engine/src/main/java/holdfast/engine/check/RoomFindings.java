package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.check.CheckReport.GapLine;
import holdfast.engine.gap.DeadWater;
import holdfast.engine.gap.Gaps;
import holdfast.engine.gap.GrowingRoom;
import holdfast.engine.light.LightReport;
import holdfast.model.scene.GridCells;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.geom.Vec3;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.RockBody;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;

/** Room to panes and devices, height, growing room, dead water, light and place of living rock, reach of an arm. */
record RoomFindings(List<Finding> findings, List<GapLine> lines) {

  static RoomFindings of(Scene scene, Shapes shapes) {
    List<Finding> out = new ArrayList<>();
    List<GapLine> lines = new ArrayList<>();
    Gaps gaps = Gaps.of(scene, shapes.placed());
    for (Gaps.PaneGap g : gaps.panes()) pane(scene, gaps, g, out, lines);
    for (Gaps.DeviceGap g : gaps.devices()) device(scene, g, out, lines);
    for (Gaps.RockHeight h : gaps.heights()) height(scene, h, out);
    for (Gaps.ArmReach r : gaps.reaches()) {
      if (r.kept()) continue;
      out.add(Draft.note(Code.REACH).about(r.name()).figure(r.farthestM() * 1e3, r.limitM() * 1e3, "mm").say(
          text("An arm must reach at least %.0f mm to hold %s all round.", Draft.wholeUp(r.farthestM() * 1e3), r.name()),
          "Expect to need tongs or a step there."));
    }
    for (GrowingRoom g : gaps.rooms()) room(g, out);
    deadWater(scene, shapes, out);
    light(scene, shapes, out);
    for (PlacedRock p : shapes.placed()) bottom(scene, p, out);
    return new RoomFindings(out, lines);
  }

  private static void pane(Scene scene, Gaps gaps, Gaps.PaneGap g, List<Finding> out, List<GapLine> lines) {
    double mm = g.distanceM() * 1e3;
    double limit = g.requiredM() * 1e3;
    String pane = g.side().word() + " pane";
    lines.add(new GapLine(g.name(), pane, mm, limit));
    if (g.kept() || mm < -1) return;
    String remedy = hasRoom(gaps, g)
        ? text("Move %s at least %.0f mm %s.", piece(scene, g.name()), Draft.wholeUp(limit - mm), away(g))
        : text("Turn %s, or choose a smaller rock: it leaves too little room on both sides.", g.name());
    if (mm < 0.5) {
      out.add(Draft.fail(Code.TOUCHES_PANE).about(g.name(), pane).figure(mm, limit, "mm").say(
          text("%s touches the %s.", g.name(), pane), remedy));
      return;
    }
    out.add(Draft.fail(Code.GAP).about(g.name(), pane).figure(mm, limit, "mm").say(
        text("%s stands %.0f mm from the %s.", g.name(), Draft.wholeDown(mm), pane), remedy));
  }

  /** Whether what lacks at a pane can be had at the one across: else moving it only moves the fault. */
  private static boolean hasRoom(Gaps gaps, Gaps.PaneGap g) {
    return gaps.panes().stream().filter(o -> o.name().equals(g.name()) && o.side() != g.side()
        && o.side().outward().dot(g.side().outward()) < 0)
        .allMatch(o -> g.distanceM() + o.distanceM() >= g.requiredM() + o.requiredM());
  }

  /** What is fixed together goes together: moved alone, a rock would tear its joints. */
  private static String piece(Scene scene, String rock) {
    return FixedPiece.of(scene, rock).size() > 1 ? rock + " and what is fixed to it" : rock;
  }

  private static String away(Gaps.PaneGap g) {
    return switch (g.side()) {
      case FRONT -> "back";
      case BACK -> "forward";
      case LEFT -> "to the right";
      case RIGHT -> "to the left";
    };
  }

  private static void device(Scene scene, Gaps.DeviceGap g, List<Finding> out, List<GapLine> lines) {
    double mm = g.distanceM() * 1e3;
    lines.add(new GapLine(g.name(), g.device(), mm, g.requiredM() * 1e3));
    if (g.kept()) return;
    out.add(Draft.fail(Code.BLOCKS_DEVICE).about(g.name(), g.device()).figure(mm, g.requiredM() * 1e3, "mm").say(
        mm < -1 ? text("%s reaches %.0f mm into %s.", g.name(), Draft.wholeUp(-mm), g.device())
            : text("%s stands %.0f mm from %s.", g.name(), Draft.wholeDown(Math.max(0, mm)), g.device()),
        text("Move %s at least %.0f mm away from it.", piece(scene, g.name()), Draft.wholeUp(g.requiredM() * 1e3 - mm))));
  }

  private static void height(Scene scene, Gaps.RockHeight h, List<Finding> out) {
    if (h.kept()) return;
    double water = scene.water().levelMm();
    out.add(Draft.fail(Code.TOO_TALL).about(h.name()).figure(h.topM() * 1e3, h.limitM() * 1e3, "mm").say(
        text("%s reaches %.0f mm, %.0f %% of the water's depth.", h.name(), Draft.wholeUp(h.topM() * 1e3),
            Draft.wholeUp(100 * h.topM() * 1e3 / water)),
        text("Lower the stack by at least %.0f mm.", Draft.wholeUp((h.topM() - h.limitM()) * 1e3))));
  }

  private static void room(GrowingRoom g, List<Finding> out) {
    if (g.kept()) return;
    String under = g.under().equals(GrowingRoom.SURFACE) ? "the water's surface" : g.under();
    out.add(Draft.warn(Code.GROWING_ROOM).about(g.name()).figure(g.leastM() * 1e3, g.requiredM() * 1e3, "mm").say(
        text("%s has %.0f mm of free water under %s, with the room asked for over %.0f %% of it.", g.name(),
            Draft.wholeDown(g.leastM() * 1e3), under, Draft.wholeDown(100 * g.openShare())),
        text("Move %s out from under, or set what grows there low.", g.name())));
  }

  private static void deadWater(Scene scene, Shapes shapes, List<Finding> out) {
    List<String> names = shapes.placed().stream().map(p -> p.rock().name()).toList();
    GridCells cells = GridCells.of(scene);
    for (DeadWater.Pocket p : DeadWater.of(scene, names, shapes.placed().stream().map(PlacedRock::lobes).toList())) {
      Vec3 at = p.centre().times(1e3);
      String between = p.rocks().isEmpty() ? "" : (p.rocks().size() > 1 ? " between " : " in ") + Draft.names(p.rocks());
      out.add(Draft.warn(Code.DEAD_WATER).about(p.rocks()).figure(p.volumeM3() * 1e6, Double.NaN, "ml").say(
          text("About %.0f ml of water%s, round cell %s, is joined to the rest only by openings under about %.0f mm: waste"
              + " gathers there.", p.volumeM3() * 1e6, between, cells.name(at.x(), at.y()),
              scene.settings().get(Setting.DEAD_WATER_MM)),
          p.rocks().isEmpty() ? "Open a way for water there."
              : text("Open a way of more than that for water: move or turn %s, or set it on a third stone.",
                  p.rocks().get(p.rocks().size() - 1))));
    }
  }

  private static void light(Scene scene, Shapes shapes, List<Finding> out) {
    List<RockBody> bodies = shapes.placed().stream().map(PlacedRock::body).toList();
    for (LightReport.RockLight l : LightReport.of(scene, bodies).rocks()) {
      if (!l.shaded()) continue;
      out.add(Draft.warn(Code.SHADED).about(l.rock()).figure(100 * l.unshaded(), 100 * l.least(), "%").say(
          text("%s gets %.0f %% of the light it would have with no rock in the way.", l.rock(),
              Draft.wholeDown(100 * l.unshaded())),
          text("Move %s out into the light.", l.rock())));
    }
  }

  /** Living rock belongs up in the light: its lowest point within a twentieth of the water's depth of the floor is told. */
  private static void bottom(Scene scene, PlacedRock p, List<Finding> out) {
    if (p.rock().kind() != Rock.Kind.LIVE) return;
    double low = -p.reach(Vec3.Z.negated()) * 1e3;
    double limit = Math.max(scene.floor().topMm(), scene.sand().depthMm()) + 0.05 * scene.water().levelMm();
    if (low >= limit) return;
    out.add(Draft.note(Code.LIVE_AT_BOTTOM).about(p.rock().name()).figure(low, limit, "mm").say(
        text("%s, a living rock, lies at the bottom.", p.rock().name()),
        text("Keep %s for a place in the light; dry rock does as well down there.", p.rock().name())));
  }

}
