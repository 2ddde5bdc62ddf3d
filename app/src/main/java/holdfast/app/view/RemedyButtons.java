package holdfast.app.view;

import holdfast.app.edit.Remedies;
import holdfast.app.edit.Remedy;
import holdfast.app.report.SeverityLook;
import holdfast.app.view.draw.Palette;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import imgui.ImGui;
import java.util.List;

/** What the window can do about an opened finding at a press: one step to undo, and judged again. */
final class RemedyButtons {
  private final Workbench bench;
  private final Ui ui;
  private final JointsPage joints;
  /** Of the finding and the scene that were asked about last. */
  private List<Remedy> known = List.of();
  private Finding asked;
  private long revision;

  RemedyButtons(Workbench bench, Ui ui, JointsPage joints) {
    this.bench = bench;
    this.ui = ui;
    this.joints = joints;
  }

  void draw(Finding f) {
    if (bench.mode() != Workbench.Mode.ARRANGE) return;
    if (f.code() == Code.NEEDS_BOND) {
      fixJoints(f);
      return;
    }
    List<Remedy> all = remedies(f);
    for (int i = 0; i < all.size(); i++) {
      Remedy r = all.get(i);
      ui.gap(i == 0 ? 2 : 0);
      // A name may be longer than the panel is wide.
      float room = ImGui.getContentRegionAvailX() - 2 * ImGui.getStyle().getFramePaddingX() - ui.px(4);
      String words = String.join("\n", ui.brokenAt(bench.units().prose(r.words()), room));
      boolean pressed = i == 0 ? ui.mainButton(words, 0) : ui.button(words);
      if (pressed && bench.apply(r.edit())) bench.tell("Done: " + r.edit().name() + ". It is judged again.", SeverityLook.FINE);
    }
    if (!all.isEmpty()) ui.small("Judged again afterwards; one step to undo.", Palette.INK_SOFT);
  }

  private void fixJoints(Finding f) {
    if (f.severity() != Severity.FAIL) return;
    int wanted = joints.wanted().size();
    ui.gap(2);
    if (ui.mainButton(wanted == 1 ? "Fix this joint" : "Fix these " + wanted + " joints", 0)) joints.fixWanted();
    Panels.tip(ui, "With mortar, as much as is usual for such rocks. One step to undo.");
  }

  private List<Remedy> remedies(Finding f) {
    if (f != asked || revision != bench.document().revision()) {
      asked = f;
      revision = bench.document().revision();
      known = bench.report().map(r -> new Remedies(r, bench.stones().shapes(bench.scene()).placed()).of(f)).orElse(List.of());
    }
    return known;
  }
}
