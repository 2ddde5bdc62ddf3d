package holdfast.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Document;
import holdfast.app.edit.Edit;
import holdfast.app.edit.Scenes;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One numbering of joints for sheet and window. */
class JointNumbersTest {
  /** Slab, block and cap one above the other, and a spare rock on the tray. */
  private static Scene tower() {
    Scene s = Scenes.small();
    return s.withRocks(List.of(Scenes.box("slab", 200, 150, 60, 3), Scenes.box("block", 100, 100, 80, 1.4),
        Scenes.box("cap", 80, 80, 40, 0.5), Scenes.box("spare", 80, 80, 60, 0.7)))
        .withPlacements(List.of(Scenes.at("slab", 300, 200, 10),
            Scenes.at("block", 300, 200, 70), Scenes.at("cap", 300, 200, 150)));
  }

  private static final List<JointNumbers.Pair> TOUCHING =
      List.of(new JointNumbers.Pair("slab", "block"), new JointNumbers.Pair("block", "cap"));

  @Test
  void fixedOnesFirstInTheOrderOfTheScene() {
    Scene s = tower().withJoints(List.of(JointSpec.paste("cap", "block", JointSpec.Bond.PUTTY, 20)));
    JointNumbers n = JointNumbers.of(s, TOUCHING);
    assertThat(n.fixed()).isEqualTo(1);
    assertThat(n.number("block", "cap")).contains(1);
    assertThat(n.number("slab", "block")).contains(2);
    assertThat(n.number("slab", "cap")).isEmpty();
    // The sheet knows the fixed ones by the same numbers.
    assertThat(JointNumbers.of(s).pairs()).isEqualTo(n.pairs().subList(0, 1));
  }

  @Test
  void whatIsNotFixedOrNotInTheTankHasNoNumberOnTheSheet() {
    Scene s = tower().withJoints(List.of(JointSpec.paste("slab", "block", JointSpec.Bond.NONE, 0),
        JointSpec.paste("slab", "spare", JointSpec.Bond.MORTAR, 40), JointSpec.paste("block", "cap", JointSpec.Bond.MORTAR, 40)));
    assertThat(JointNumbers.of(s).pairs()).containsExactly(new JointNumbers.Pair("block", "cap"));
  }

  /** Another amount or paste is no reason to number anew; a joint that is fixed later comes after those before. */
  @Test
  void numbersStayWhenAJointIsChanged() {
    Document d = new Document(tower());
    d.apply(new Edit.Fix(JointSpec.paste("slab", "block", JointSpec.Bond.MORTAR, 40)));
    d.apply(new Edit.Fix(JointSpec.paste("block", "cap", JointSpec.Bond.MORTAR, 40)));
    JointNumbers before = JointNumbers.of(d.scene());
    d.apply(new Edit.Fix(JointSpec.paste("block", "slab", JointSpec.Bond.PUTTY, 55)));
    assertThat(d.scene().joint("slab", "block").orElseThrow().amountMl()).isEqualTo(55);
    assertThat(JointNumbers.of(d.scene()).number("slab", "block")).isEqualTo(before.number("slab", "block")).contains(1);
    assertThat(JointNumbers.of(d.scene()).number("block", "cap")).contains(2);
  }
}
