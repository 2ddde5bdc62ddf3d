package holdfast.app.view;

import holdfast.app.edit.Edit;
import holdfast.app.report.Quantity;
import holdfast.app.report.TypedNumber;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Scale;
import holdfast.engine.check.CheckReport;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.UsMeasure;
import imgui.ImGui;
import java.util.Optional;

/** The chosen rock at the foot of the left panel: what it is, where it lies in typed numbers, what can be done with it. */
final class RockSheet {
  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;

  RockSheet(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
  }

  /** The height it needs, in units. */
  double height() {
    return bench.chosenPlacement().isPresent() ? 356 : 150;
  }

  void draw() {
    Rock r = bench.chosenRock().orElseThrow();
    Optional<Placement> p = bench.chosenPlacement();
    ui.rule();
    String name = ui.shortened(r.name(), 0.84f * ImGui.getContentRegionAvailX());
    ui.title(name);
    if (!name.equals(r.name()) && ImGui.isItemHovered()) Panels.tip(ui, r.name());
    ui.small(about(r), Palette.INK_SOFT);
    if (p.isEmpty()) {
      ui.gap(4);
      if (ui.mainButton("Set down", 84)) commands.setDown(r.name());
      ImGui.sameLine();
      if (ui.button("Describe…", 76, true)) commands.openSheet(Sheets.Kind.DESCRIBE);
      ImGui.sameLine();
      if (ui.button("Remove", 66, true)) commands.remove();
      return;
    }
    margin(r.name());
    place(p.get());
    buttons(p.get());
  }

  private String about(Rock r) {
    String size = r.form() instanceof Rock.Measured m
        ? m.look().word() + ", " + Scale.lengths(bench.units(), m.lengthMm(), m.widthMm(), m.heightMm())
        : r.form() instanceof Rock.Mesh ? "scanned" : "given by points";
    String mass = bench.stones().body(r.name()).map(b -> ", " + Scale.mass(b.dryMassKg(), bench.units()) + " dry").orElse("");
    return r.kind().word() + " " + size + mass;
  }

  private void margin(String rock) {
    Optional<CheckReport.RockLine> line =
        bench.report().flatMap(rep -> rep.rocks().stream().filter(l -> l.name().equals(rock)).findFirst());
    String text = line.flatMap(CheckReport.RockLine::weakest)
        .map(w -> "Holds " + (w.unlimited() ? "more than " : "") + Scale.force(w.marginN(), bench.units())
            + " from its weakest side")
        .orElse(bench.judgementSettled() ? "" : bench.judgement().holding() ? "judged when you let go" : "judging…");
    ui.small(text, Palette.INK_SOFT);
  }

  private void place(Placement p) {
    ui.gap(2);
    double[] at = {p.atMm().x(), p.atMm().y(), p.atMm().z()};
    String[] names = {"right", "back", "up"};
    double[] turn = degreesZyx(p.turn());
    String[] turns = {"about up", "about back", "about right"};
    ui.small("Place, " + bench.units().sign(Quantity.LENGTH), Palette.INK_SOFT);
    ImGui.sameLine(ui.px(128));
    ui.small("Turn, degrees", Palette.INK_SOFT);
    for (int i = 0; i < 3; i++) {
      int axis = i;
      number(names[i], bench.units().typed(Quantity.LENGTH, at[i])).ifPresent(v -> {
        double[] next = at.clone();
        next[axis] = bench.units() == Units.US ? v * UsMeasure.INCH_MM : v;
        bench.apply(new Edit.Move("move", p.rock(), new Vec3(next[0], next[1], next[2]), p.turn()));
      });
      ImGui.sameLine(ui.px(128));
      number(turns[i], Scale.number(turn[i], 1)).ifPresent(v -> {
        double[] next = turn.clone();
        next[axis] = v;
        bench.chosenStone().ifPresent(s -> {
          Quat q = Quat.ofDegreesZyx(next[0], next[1], next[2]);
          Vec3 centre = p.pose().apply(s.centre());
          bench.apply(new Edit.Move("turn", p.rock(), centre.minus(q.rotate(s.centre())).times(1e3), q));
        });
      });
    }
  }

  private Optional<Double> number(String id, String shown) {
    Optional<String> typed = ui.field(id, shown, 58);
    ImGui.sameLine();
    ui.small(id, Palette.INK_SOFT);
    if (typed.isEmpty()) return Optional.empty();
    try {
      return Optional.of(TypedNumber.of(typed.get()));
    } catch (NumberFormatException e) {
      bench.tell("'" + typed.get() + "' is not a number.", holdfast.app.report.SeverityLook.WARN);
      return Optional.empty();
    }
  }

  /** Degrees about z, y and x, in the order in which {@link Quat#ofDegreesZyx} takes them. */
  static double[] degreesZyx(Quat q) {
    double sin = Math.max(-1, Math.min(1, 2 * (q.w() * q.y() - q.z() * q.x())));
    return new double[] {
      Math.toDegrees(Math.atan2(2 * (q.w() * q.z() + q.x() * q.y()), 1 - 2 * (q.y() * q.y() + q.z() * q.z()))),
      Math.toDegrees(Math.asin(sin)),
      Math.toDegrees(Math.atan2(2 * (q.w() * q.x() + q.y() * q.z()), 1 - 2 * (q.x() * q.x() + q.y() * q.y())))
    };
  }

  private void buttons(Placement p) {
    ui.gap(3);
    if (ui.button("Drop", 74, !p.locked())) commands.drop();
    ImGui.sameLine();
    if (ui.button("Steady rest", 158, !p.locked())) commands.steadyRest();
    Panels.tip(ui, "Find a steady rest here: lets the rock settle on whatever lies below, in full.");
    if (ui.button("Duplicate", 82, true)) commands.duplicate();
    ImGui.sameLine();
    if (ui.button(p.locked() ? "Unlock" : "Lock", 64, true)) bench.apply(new Edit.Lock(p.rock(), !p.locked()));
    ImGui.sameLine();
    if (ui.button("Take out", 78, true)) commands.takeOut();
    if (ui.button("Describe…", 92, true)) commands.openSheet(Sheets.Kind.DESCRIBE);
    ImGui.sameLine();
    if (ui.button("Remove", 76, true)) commands.remove();
  }
}
