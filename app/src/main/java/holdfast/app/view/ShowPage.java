package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import imgui.ImGui;
import imgui.flag.ImGuiStyleVar;

/** What to show and what to leave out, and where to cut the picture open. */
final class ShowPage {
  private static final double SECOND_COLUMN = 150;
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
    for (Shown.CutWay way : Shown.CutWay.values()) {
      ImGui.pushStyleVar(ImGuiStyleVar.FramePadding, ui.px(4), ui.px(3));
      if (ImGui.radioButton(way.word(), shown.cutWay() == way)) shown.cut(way, shown.cutShare());
      ImGui.popStyleVar();
      ui.note(way.word());
    }
    if (shown.cutWay() == Shown.CutWay.NONE) return;
    float[] share = {(float) shown.cutShare() * 100};
    ImGui.setNextItemWidth(-1);
    if (ImGui.sliderFloat("##cut", share, 2, 98, "at %.0f %% of the tank")) shown.cut(shown.cutWay(), share[0] / 100);
    ui.note("cut slider");
    ui.small("Rocks are cut where the plane meets them.", Palette.INK_SOFT);
  }

  private void layers(Shown.Layer... all) {
    for (int i = 0; i < all.length; i++) {
      Shown.Layer l = all[i];
      if (i % 2 == 1) ImGui.sameLine(ui.px(SECOND_COLUMN));
      if (ui.check(l.word(), bench.shown().has(l))) bench.shown().set(l, !bench.shown().has(l));
    }
  }
}
