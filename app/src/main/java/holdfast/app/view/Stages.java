package holdfast.app.view;

import holdfast.app.report.SeverityLook;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Placement;
import imgui.ImGui;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;

/**
 * The heap as it is built, rock by rock, in the order that was judged to stand at every stage or to need the least help:
 * what is not there yet is drawn faint.
 */
final class Stages {
  private final Workbench bench;
  private final AtomicLong wanted = new AtomicLong();
  private Optional<StagePlan> plan = Optional.empty();
  private Optional<String> trouble = Optional.empty();
  private int placed;

  Stages(Workbench bench) {
    this.bench = bench;
  }

  /** Once a frame: asks for the order of the scene as it is now. */
  void tick() {
    long revision = bench.document().revision();
    if (bench.mode() != Workbench.Mode.STAGES || wanted.get() == revision) return;
    wanted.set(revision);
    trouble = Optional.empty();
    var scene = bench.scene();
    var shapes = bench.stones().shapes(scene);
    bench.plans().start(() -> StagePlan.of(scene, shapes, revision, () -> wanted.get() != revision), this::found, why -> {
      if (wanted.get() == revision) trouble = Optional.of(why);
    });
  }

  private void found(StagePlan p) {
    if (p.revision() != wanted.get()) return;
    plan = Optional.of(p);
    placed = p.stages();
  }

  /** The order of the scene as it is now, once it is known. */
  Optional<StagePlan> plan() {
    return plan.filter(p -> p.revision() == bench.document().revision());
  }

  /** The number of rocks on show; all but nothing faint when no order is known yet. */
  int shown() {
    return bench.mode() == Workbench.Mode.STAGES && plan().isPresent() ? placed : -1;
  }

  /** One stage on, or back. */
  void step(int by) {
    plan().ifPresent(p -> placed = Math.max(0, Math.min(p.stages(), placed + by)));
  }

  /** The rock that is set down at the stage on show. */
  Set<String> fresh() {
    return shown() > 0 ? Set.copyOf(plan().orElseThrow().step(placed).rocks()) : Set.of();
  }

  Set<String> notYet() {
    if (shown() < 0) return Set.of();
    Set<String> out = bench.scene().placements().stream().map(Placement::rock)
        .collect(Collectors.toCollection(LinkedHashSet::new));
    if (placed > 0) out.removeAll(plan().orElseThrow().step(placed).there());
    return out;
  }

  /** A tag on the fresh rock when it does not stand. */
  void draw(Brush brush, Projector eye, Tableau tableau) {
    if (shown() < 1) return;
    Optional<String> tag = plan().orElseThrow().tag(placed);
    String rock = plan().orElseThrow().step(placed).rocks().get(0);
    Optional<Stone> stone = tableau.stones().stream().filter(s -> s.name().equals(rock)).findFirst();
    if (tag.isEmpty() || stone.isEmpty()) return;
    Projector.Spot p = eye.spot(new Vec3(stone.get().centreInTank().x(), stone.get().centreInTank().y(), stone.get().high().z()));
    if (p.inFront()) {
      brush.tag(p.x(), p.y() - 16 * brush.scale(), tag.get(), Style.STRONG, Palette.INK, Palette.PANEL.solid(0.94));
    }
  }

  void panel(Layout at, Ui ui) {
    Panels.begin("stages", at.sceneX(), at.sceneY() + at.sceneHeight(), at.sceneWidth(), at.stripHeight(), ui, 20, 11);
    Panels.edge('t');
    if (bench.scene().placements().isEmpty()) {
      ui.soft("Nothing is placed yet.");
    } else if (trouble.isPresent()) {
      ui.wrapped("No order of building: " + trouble.get() + ".", Palette.INK);
    } else if (plan().isEmpty()) {
      ui.strong("Looking for an order in which every stage stands…");
      ui.soft("Each stage is judged dry, before the sand is in, with fresh joints bearing nothing.");
    } else {
      known(plan().get(), ui, at.stripHeight());
    }
    Panels.end();
  }

  private void known(StagePlan p, Ui ui, float height) {
    int n = p.stages();
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    if (placed > 0) {
      ui.shape(p.look(placed), x + ui.px(7), y + ImGui.getFontSize() / 2 + ui.px(1), 13);
      ImGui.setCursorScreenPos(x + ui.px(22), y);
    }
    ui.strong(placed == 0 ? "Before the first rock" : p.title(placed));
    String about = placed == 0 ? p.words() : join(join(p.help(placed), p.joints(placed, bench.units())), p.step(placed).note());
    ui.wrapped(about, Palette.INK_SOFT);
    ImGui.setCursorPosY(height - ImGui.getFrameHeight() - ui.px(13));
    slider(p, ui, n);
  }

  private static String join(String a, String b) {
    return b.isEmpty() ? a : a + " " + b;
  }

  /** The slider, and above each of its places the mark of the stage. */
  private void slider(StagePlan p, Ui ui, int n) {
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    float w = ImGui.getContentRegionAvailX();
    int[] value = {placed};
    ImGui.setNextItemWidth(-1);
    if (ImGui.sliderInt("##stage", value, 0, n, "")) placed = value[0];
    ui.note("stage slider");
    step(ui.lever("stage slider"));
    // The grab of a slider of whole numbers is as wide as one step, but not below its least width.
    float pad = 2;
    float grab = Math.max((w - 2 * pad) / (n + 1), ui.px(14));
    for (int i = 1; i <= n; i++) {
      float at = x + pad + grab / 2 + (w - 2 * pad - grab) * i / n;
      if (i != placed) ui.shape(p.look(i), at, y + ImGui.getFrameHeight() / 2, 9);
    }
  }

  /** The mark of the stage on show; empty before the first rock. */
  Optional<SeverityLook> look() {
    return shown() < 1 ? Optional.empty() : Optional.of(plan().orElseThrow().look(placed));
  }
}
