package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lwjgl.glfw.GLFW;

/** Remedies at a press, judged by the real judge; which there are and what they move is tested with {@code Remedies}. */
class WindowRemediesTest extends OpenedWindow {
  /** The front face of the block lies 30 mm from the pane; 50 mm are asked for. */
  private static Scene near() {
    return Scenes.small().withRocks(List.of(Scenes.box("block", 100, 100, 80, 1.4)))
        .withPlacements(List.of(Scenes.at("block", 300, 80, 10)));
  }

  private int number(Code code) {
    List<Finding> all = d.bench.findings();
    for (int i = 0; i < all.size(); i++) if (all.get(i).code() == code) return i;
    throw new AssertionError("no " + code + " among " + all);
  }

  @Test
  void aPressMendsTheFindingAndUndoBringsItBack() {
    open(near(), Judged.WORK);
    d.rest();
    d.click("finding " + number(Code.GAP));
    d.rest();
    d.click("Move block 20 mm back");
    d.rest();
    assertThat(d.placement("block").atMm().y()).isEqualTo(100);
    assertThat(d.bench.findings()).noneMatch(f -> f.code() == Code.GAP);
    assertThat(d.bench.document().undoName()).contains("move block");
    assertThat(d.window.ui().place("Move block 20 mm back")).isEmpty();
    d.click("Undo");
    d.rest();
    assertThat(d.bench.findings()).anyMatch(f -> f.code() == Code.GAP);
    assertThat(d.bench.scene()).isEqualTo(near());
  }

  /** By keys alone, and in the units that are read: 20 mm are 0.787 in, 13/16 to the nearest sixteenth (exact inch). */
  @Test
  void byKeyboardAndInInches() {
    open(near(), Judged.WORK);
    d.rest();
    d.click("in lb");
    d.click("finding " + number(Code.GAP));
    d.rest();
    d.key(GLFW.GLFW_KEY_TAB, 0);
    d.frames(3);
    assertThat(d.window.ui().focus().at().orElseThrow().id()).endsWith("/Move block 13/16 in back");
    d.key(GLFW.GLFW_KEY_ENTER, 0);
    d.rest();
    assertThat(d.placement("block").atMm().y()).isEqualTo(100);
    assertThat(d.window.ui().focus().at()).as("the mark goes to what is near").isPresent();
  }

  /** What is opened low in the list comes in sight to its end, button and all. */
  @Test
  void theButtonComesInSight() {
    open(Judged.scene("handling"), Judged.WORK);
    d.rest();
    int i = number(Code.OPENING_TURN);
    d.scrollTo("finding " + i);
    d.click("finding " + i);
    d.rest();
    String button = "Make pier to arm in the tank";
    Ui.Place p = d.window.ui().place(button).orElseThrow();
    assertThat(p.y1()).isLessThan(d.window.layout().height() - d.window.layout().foot());
    Finding f = d.bench.findings().get(i);
    d.click(button);
    d.rest();
    assertThat(d.bench.scene().joint("pier", "arm").orElseThrow().madeIn()).isEqualTo(JointSpec.MadeIn.TANK);
    assertThat(d.bench.findings()).noneMatch(o -> o.code() == f.code() && o.about().equals(f.about()));
  }
}
