package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.SeverityLook;
import holdfast.model.scene.Scene;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lwjgl.glfw.GLFW;

/** Stages of building in the real window, on the counterweighted plank of {@link StagePlanTest}. */
class WindowStagesTest extends WindowCase {
  @Override
  Scene scene() {
    return StagePlanTest.counterweighted();
  }

  @BeforeEach
  void build() {
    d.click("Build");
    d.rest();
  }

  @Test
  void slidesThroughTheJudgedOrder() {
    Stages s = d.window.stages();
    assertThat(s.shown()).as("it begins with the whole heap").isEqualTo(3);
    d.key(GLFW.GLFW_KEY_LEFT, 0);
    assertThat(s.shown()).isEqualTo(2);
    assertThat(s.fresh()).containsExactly("plank");
    assertThat(s.notYet()).containsExactly("weight");
    assertThat(s.look()).as("the plank must be held").contains(SeverityLook.WARN);
    d.key(GLFW.GLFW_KEY_LEFT, 0);
    assertThat(s.look()).contains(SeverityLook.FINE);
    for (int i = 0; i < 5; i++) d.key(GLFW.GLFW_KEY_LEFT, 0);
    assertThat(s.shown()).isZero();
    assertThat(s.notYet()).hasSize(3);
    Ui.Place slider = d.window.ui().place("stage slider").orElseThrow();
    d.click(slider.x1() - 8, slider.y());
    assertThat(s.shown()).isEqualTo(3);
  }

  @Test
  void arrowKeysMoveNoRockMeanwhile() {
    var before = d.bench.scene();
    d.click("plank");
    d.key(GLFW.GLFW_KEY_LEFT, 0);
    d.key(GLFW.GLFW_KEY_DELETE, 0);
    assertThat(d.bench.scene()).isEqualTo(before);
    d.key(GLFW.GLFW_KEY_ESCAPE, 0);
    d.key(GLFW.GLFW_KEY_LEFT, 0);
    assertThat(d.placement("plank").atMm().x()).isEqualTo(329);
  }

  @Test
  void aChangedSceneIsPlannedAnew() {
    d.key(GLFW.GLFW_KEY_ESCAPE, 0);
    d.click("weight");
    d.key(GLFW.GLFW_KEY_BACKSPACE, 0);
    d.click("Build");
    assertThat(d.window.stages().plan()).as("the old order is not shown").isEmpty();
    d.rest();
    assertThat(d.window.stages().plan().orElseThrow().stages()).isEqualTo(2);
    assertThat(d.window.stages().look()).contains(SeverityLook.FAIL);
  }
}
