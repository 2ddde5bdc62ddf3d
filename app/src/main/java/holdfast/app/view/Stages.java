package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import holdfast.model.scene.Placement;
import imgui.ImGui;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The heap as it is built, rock by rock: what is not there yet is drawn faint. */
final class Stages {
  private final Workbench bench;
  private List<String> order = List.of();
  private long revision;
  private int placed;

  Stages(Workbench bench) {
    this.bench = bench;
  }

  /** The order of building for the scene as it is now: nothing before what it stands on, and the lowest first. */
  void update(Optional<Survey> survey) {
    if (survey.isEmpty() || revision == survey.get().revision()) return;
    revision = survey.get().revision();
    order = lowestFirst(survey.get());
    placed = order.size();
  }

  private List<String> lowestFirst(Survey survey) {
    List<String> left = new ArrayList<>(bench.scene().placements().stream().map(Placement::rock).toList());
    List<String> out = new ArrayList<>();
    while (!left.isEmpty()) {
      String next = left.stream()
          .filter(r -> survey.joints().stream().noneMatch(t -> left.contains(below(t)) && above(t).equals(r)))
          .min((a, b) -> Double.compare(low(a), low(b)))
          // Rocks that lean on each other: the lowest of them first.
          .orElseGet(() -> left.stream().min((a, b) -> Double.compare(low(a), low(b))).orElseThrow());
      out.add(next);
      left.remove(next);
    }
    return out;
  }

  private double low(String rock) {
    return bench.stone(rock).map(s -> s.low().z()).orElse(0.0);
  }

  private double middle(String rock) {
    return bench.stone(rock).map(s -> s.centreInTank().z()).orElse(0.0);
  }

  private String below(Survey.Touch t) {
    return middle(t.a()) <= middle(t.b()) ? t.a() : t.b();
  }

  private String above(Survey.Touch t) {
    return below(t).equals(t.a()) ? t.b() : t.a();
  }

  int shown() {
    return bench.mode() == Workbench.Mode.STAGES ? placed : -1;
  }

  Set<String> notYet() {
    return new LinkedHashSet<>(order.subList(Math.min(placed, order.size()), order.size()));
  }

  void panel(Layout at, Ui ui) {
    float w = Math.min(ui.px(560), at.sceneWidth() - ui.px(32));
    float h = ui.px(94);
    Panels.begin("stages", at.sceneX() + (at.sceneWidth() - w) / 2, at.sceneY() + at.sceneHeight() - h - ui.px(14), w, h, ui, 16, 10);
    if (order.isEmpty()) {
      ui.soft("Nothing is placed yet.");
    } else {
      int[] value = {placed};
      ui.strong(placed == 0 ? "Before the first rock" : "Stage " + placed + ": set down " + order.get(placed - 1));
      ImGui.setNextItemWidth(-1);
      if (ImGui.sliderInt("##stage", value, 0, order.size(), "%d of " + order.size() + " rocks")) placed = value[0];
      ui.note("stage slider");
    }
    ui.small("In the order of what stands on what. Whether each stage stands: see the build sheet.", Palette.INK_SOFT);
    Panels.end();
  }
}
