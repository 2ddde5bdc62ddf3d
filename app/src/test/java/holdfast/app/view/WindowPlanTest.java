package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.view.draw.Projector;
import holdfast.engine.bonding.JointSearch;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.io.TankSizes;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lwjgl.glfw.GLFW;

/**
 * A tank is planned from nothing in the window alone, with the real judge: a new tank, measured rocks, placed, turned and
 * dropped; the verdict, what to do about it and doing it; saved, and the build sheet written.
 */
class WindowPlanTest {
  private static final int LEFT = GLFW.GLFW_MOUSE_BUTTON_LEFT;

  @TempDir
  Path folder;
  private WindowDriver d;

  @AfterEach
  void close() {
    if (d != null) d.close();
  }

  /** Types into the field that has the keyboard. */
  private void letters(String text) {
    for (char c : text.toCharArray()) {
      d.window.letter(c);
      d.frames(1);
    }
  }

  /** The name is typed at once, as the sheet opens with its field; Enter does what its main button does. */
  private void addRock(String name, String look, String length, String width, String height, String kg) {
    d.window.key(GLFW.GLFW_KEY_A, 0, GLFW.GLFW_PRESS, 0);
    d.window.letter('a');
    d.frames(1);
    d.window.key(GLFW.GLFW_KEY_A, 0, GLFW.GLFW_RELEASE, 0);
    d.frames(3);
    letters(name);
    d.click(look);
    d.type("length", length);
    d.type("width", width);
    d.type("height", height);
    d.type("weight", kg);
    d.enter();
    d.frames(3);
    assertThat(d.window.commands().sheet()).as(name + " was taken").isEmpty();
    assertThat(d.bench.scene().placement(name)).as(name).isPresent();
  }

  private void dragTo(String rock, double x, double y) {
    Projector.Spot from = d.spot(rock);
    double z = d.bench.stone(rock).orElseThrow().centreInTank().z();
    Projector.Spot to = d.spot(new Vec3(x, y, z));
    d.drag(from.x(), from.y(), to.x(), to.y(), LEFT, 0);
    assertThat(Math.abs(d.bench.stone(rock).orElseThrow().centreInTank().x() - x)).isLessThan(0.02);
  }

  @Test
  void fromNothingToTheBuildSheet() throws IOException {
    Path file = folder.resolve("plan.json");
    Scene first = ScenesSheet.empty(TankSizes.named("60x30x35 cm").orElseThrow());
    d = new WindowDriver(first, folder.resolve("user"), Viewport.judging());
    d.window.commands().begin();
    d.frames(3);
    d.click("size 60x60x60 cm");
    d.frames(3);
    assertThat(d.bench.scene().tank().lengthMm()).isBetween(570.0, 600.0);
    // What is beneath the tank is asked for by the findings, and told.
    d.click("Tank…");
    d.frames(3);
    d.click("foam, all over");
    d.enter();
    d.frames(3);
    assertThat(d.window.commands().sheet()).as("Enter closes the sheet").isEmpty();

    // Small fish only.
    d.click("Figures…");
    d.frames(3);
    d.type(Setting.PUSH_TIER_N.key(), "5");
    d.enter();
    d.click("Close");
    d.frames(3);
    assertThat(d.bench.scene().settings().get(Setting.PUSH_TIER_N)).isEqualTo(5);
    assertThat(d.window.commands().sheet()).isEmpty();

    addRock("base", "box", "300", "260", "90", "12");
    addRock("post", "box", "90", "90", "200", "2.2");
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    dragTo("base", 0.30, 0.30);
    dragTo("post", 0.30, 0.30);
    assertThat(d.placement("post").atMm().z()).as("on the base").isGreaterThan(90);
    // Turned by key and lifted, then let down again.
    for (int i = 0; i < 3; i++) d.key(GLFW.GLFW_KEY_COMMA, 0);
    assertThat(Math.toDegrees(d.placement("post").turn().angleRad())).isCloseTo(15, within(1e-9));
    double rests = d.placement("post").atMm().z();
    for (int i = 0; i < 5; i++) d.key(GLFW.GLFW_KEY_PAGE_UP, 0);
    d.click("Drop");
    assertThat(d.placement("post").atMm().z()).isCloseTo(rests, within(1e-6));
    d.rest();

    // A post of 2.2 kg on 90 mm bears 2.2 * 9.81 * 45 / 180 = 5.4 N dry, and under water, about six tenths as heavy, 3 N.
    assertThat(d.bench.report().orElseThrow().verdict()).isEqualTo(CheckReport.Verdict.FAILS);
    List<Finding> all = d.bench.findings();
    assertThat(all).anyMatch(f -> f.code() == Code.TOPPLES && f.about().get(0).equals("post"));
    int i = 0;
    while (all.get(i).code() != Code.NEEDS_BOND) i++;
    assertThat(all.get(i).severity()).as(all.get(i).sentence()).isEqualTo(Severity.FAIL);
    d.scrollTo("finding " + i);
    d.click("finding " + i);
    d.rest();
    d.scrollTo("Fix this joint");
    d.click("Fix this joint");
    JointSpec joint = d.bench.scene().joint("base", "post").orElseThrow();
    assertThat(joint.bond()).isEqualTo(JointSpec.Bond.MORTAR);
    // As much as the finding says: the smaller rock weighs 2.2 kg.
    assertThat(all.get(i).remedy()).contains(Math.round(joint.amountMl()) + " ml of mortar");
    assertThat(joint.amountMl()).isEqualTo(JointSearch.usualMl(2.2));
    d.rest();
    assertThat(d.bench.findings()).as("mended").noneMatch(f -> f.code() == Code.NEEDS_BOND || f.code() == Code.TOPPLES);
    assertThat(d.bench.document().undoName().orElseThrow()).startsWith("fix ").contains("mortar");

    // Saved under a name, and the sheet from the same report.
    d.key(GLFW.GLFW_KEY_S, GLFW.GLFW_MOD_CONTROL);
    d.frames(3);
    d.type("scene file", file.toString());
    d.click("Save here");
    d.frames(3);
    Scene saved = SceneReader.read(file).match(s -> s, refused -> {
      throw new AssertionError(refused.rendered());
    });
    assertThat(saved).isEqualTo(d.bench.scene());
    assertThat(d.bench.document().unsaved()).isFalse();
    d.key(GLFW.GLFW_KEY_E, GLFW.GLFW_MOD_CONTROL);
    d.frames(3);
    d.click("Write the sheet");
    d.frames(2);
    // A job of minutes says so as long as it lasts; a frame is 40 ms.
    if (d.bench.plans().busy()) {
      d.frames(200);
      if (d.bench.plans().busy()) assertThat(d.bench.notice().orElseThrow().text()).startsWith("Writing the sheet");
    }
    d.rest();
    assertThat(d.bench.notice().orElseThrow().text()).startsWith("Wrote the sheet");
    assertThat(Files.readAllBytes(folder.resolve("plan.pdf"))).startsWith("%PDF".getBytes(StandardCharsets.US_ASCII));
  }
}
