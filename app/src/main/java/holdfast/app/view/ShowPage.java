package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import imgui.ImGui;

/** What to show and what to leave out, and where to cut the picture open. */
final class ShowPage {
  private static final double SECOND_COLUMN = 150;
  /** Share of the tank by which an arrow key moves the cut. */
  private static final double STEP = 0.02;
  private final Workbench bench;
  private final Ui ui;

  ShowPage(Workbench bench, Ui ui) {
    this.bench = bench;
    this.ui = ui;
  }

  void draw() {
    ui.heading("Tank");
    layers(Shown.Layer.WATER, Shown.Layer.SAND, Shown.Layer.GLASS, Shown.Layer.CELLS, Shown.Layer.NAMES);
    ui.heading("What was found");
    layers(Shown.Layer.ROSE, Shown.Layer.JOINTS, Shown.Layer.FEET, Shown.Layer.GAPS, Shown.Layer.PANE, Shown.Layer.LIGHT,
        Shown.Layer.REACH);
    ui.heading("Cut open");
    Shown shown = bench.shown();
    ui.row("cut");
    for (Shown.CutWay way : Shown.CutWay.values()) {
      if (ui.choice(way.word(), shown.cutWay() == way)) shown.cut(way, shown.cutShare());
    }
    ui.rowEnd();
    if (shown.cutWay() == Shown.CutWay.NONE) return;
    float[] share = {(float) shown.cutShare() * 100};
    ImGui.setNextItemWidth(-1);
    if (ImGui.sliderFloat("##cut", share, 2, 98, "")) shown.cut(shown.cutWay(), share[0] / 100);
    ui.note("cut slider");
    int steps = ui.lever("cut slider");
    if (steps != 0) shown.cut(shown.cutWay(), Math.max(0.02, Math.min(0.98, shown.cutShare() + STEP * steps)));
    ui.small("At " + Math.round(100 * shown.cutShare()) + " % of the tank. Rocks are cut where the plane meets them.",
        Palette.INK_SOFT);
  }

  private void layers(Shown.Layer... all) {
    for (int i = 0; i < all.length; i++) {
      Shown.Layer l = all[i];
      if (i % 2 == 1) ImGui.sameLine(ui.px(SECOND_COLUMN));
      if (ui.check(l.word(), bench.shown().has(l))) bench.shown().set(l, !bench.shown().has(l));
    }
  }
}
