package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import holdfast.app.edit.Scenes;
import holdfast.app.report.SeverityLook;
import holdfast.app.report.Units;
import holdfast.app.report.sheet.SheetContent;
import holdfast.engine.build.StageJudge;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * The order of building as the window tells it. Verdicts are derived by hand: a plank whose centre lies 50 mm beyond the
 * edge of its base falls, and three times its own weight 50 mm inside that edge holds it.
 */
class StagePlanTest {
  static Scene counterweighted() {
    Scene s = Scenes.small();
    return new Scene("counterweight", s.tank(), s.floor(), s.sand(), s.water(), List.of(), List.of(),
        List.of(Scenes.box("base", 160, 120, 100, 5), Scenes.box("plank", 300, 100, 30, 1.5), Scenes.box("weight", 100, 140, 130, 4.5)),
        List.of(Scenes.at("plank", 330, 200, 110), Scenes.at("base", 200, 200, 10), Scenes.at("weight", 230, 200, 140)),
        List.of(), new Settings(Map.of(Setting.CONTACT_INSET_MM, 0.0)));
  }

  private static StagePlan plan(Scene s) {
    return StagePlan.of(s, Shapes.of(s, MeshLoader.NONE), 1, () -> false);
  }

  @Test
  void plankIsHeldUntilItsWeightIsOn() {
    StagePlan p = plan(counterweighted());
    assertThat(List.of(p.rocks(1), p.rocks(2), p.rocks(3))).containsExactly("base", "plank", "weight");
    assertThat(List.of(p.look(1), p.look(2), p.look(3)))
        .containsExactly(SeverityLook.FINE, SeverityLook.WARN, SeverityLook.FINE);
    assertThat(p.help(2)).isEqualTo("Does not stand yet: hold it by hand until weight is on.");
    assertThat(p.tag(2)).contains("hold it");
    assertThat(p.tag(3)).isEmpty();
    assertThat(p.words()).startsWith("No order stands unaided");
  }

  @Test
  void plankWithoutAWeightMustNotBeBuilt() {
    Scene s = counterweighted();
    StagePlan p = plan(s.withPlacements(s.placements().stream().filter(q -> !q.rock().equals("weight")).toList()));
    assertThat(p.look(2)).isEqualTo(SeverityLook.FAIL);
    assertThat(p.help(2)).contains("do not build this");
    assertThat(p.tag(2)).contains("falls");
  }

  /** The span of the shipped cube lies on two legs; their names and joints are those of its file. */
  @Test
  void aRockFixedToTwoIsNamedOnce() {
    StagePlan p = plan(Judged.scene("cube"));
    List<String> said = IntStream.rangeClosed(1, p.stages()).mapToObj(i -> p.joints(i, Units.METRIC)).toList();
    String with = "with 45 ml of mortar \\(joint \\d\\)";
    assertThat(said).anyMatch(w -> w.matches("Fix it to left leg " + with + ", and to right leg " + with + "\\."));
  }

  /** Two rocks fixed on the bench are one piece in the tank. */
  @Test
  void jointsAreMadeOnTheBenchAndThePieceIsLowered() {
    StagePlan p = plan(Scenes.small().withJoints(List.of(JointSpec.paste("slab", "block", JointSpec.Bond.MORTAR, 40))));
    assertThat(p.title(1)).isEqualTo("On the bench, 1 of 2: set down slab");
    assertThat(p.joints(1, Units.METRIC)).isEmpty();
    assertThat(p.joints(2, Units.METRIC)).isEqualTo("Fix it to slab with 40 ml of mortar (joint 1).");
    assertThat(p.title(3)).isEqualTo("Into the tank, 1 of 1: lower slab and block");
    assertThat(p.stages()).isEqualTo(3);
    assertThat(p.words()).isEqualTo("Every stage stands by itself, dry, with fresh joints bearing nothing.");
  }

  /** The stages of the window are those that the build sheet prints: one plan. */
  @Test
  void theSheetPrintsTheSamePlan() {
    for (Scene s : List.of(counterweighted(),
        Scenes.small().withJoints(List.of(JointSpec.paste("slab", "block", JointSpec.Bond.MORTAR, 40))))) {
      Shapes shapes = Shapes.of(s, MeshLoader.NONE);
      SheetContent sheet = SheetContent.of(s, shapes, Optional.empty(), new StageJudge(s, shapes.placed()));
      assertThat(plan(s).plan()).isEqualTo(sheet.plan());
    }
  }

  @Test
  void staleSearchEnds() {
    Scene s = Scenes.small();
    Shapes shapes = Shapes.of(s, MeshLoader.NONE);
    assertThatThrownBy(() -> StagePlan.of(s, shapes, 1, () -> true)).isInstanceOf(CancellationException.class);
  }
}
