package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.SceneBuilders;
import holdfast.engine.statics.Recall;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The checks that leave something out, for one who drags a rock: what they ask they answer as the whole check does, what they
 * leave out they do not find, and they never pass a scene with rocks. Expected answers are those of the whole check (definition).
 */
class ShortCheckTest {
  /** What is found of the heap as it is drawn and of its own weight. */
  private static final Set<Code> STANDING = EnumSet.of(Code.FALLS, Code.SQUEEZED, Code.OVERLAPS, Code.HOVERS, Code.OUTSIDE,
      Code.BOND_WITHOUT_CONTACT);
  /** What needs the heap to be judged again and again. */
  private static final Set<Code> LONG = EnumSet.of(Code.TOPPLES, Code.PRESSED, Code.SLIDES, Code.SHAKES, Code.UNDERMINED,
      Code.LIFTED, Code.SINGLE_BOND, Code.NEEDS_PANE, Code.NEEDS_BOND);

  private static Shapes shapes(Scene s) {
    return Shapes.of(s, MeshLoader.NONE);
  }

  private static List<Finding> of(Set<Code> codes, CheckReport r) {
    return r.findings().stream().filter(f -> codes.contains(f.code())).toList();
  }

  private static void agrees(Scene s) {
    CheckReport whole = Check.run(s, shapes(s), new CheckOptions(1, CheckOptions.Pushes.ROSES, 0, 1));
    CheckReport quick = Check.run(s, shapes(s), new CheckOptions(1, CheckOptions.Pushes.NONE, 0, 1));
    CheckReport standing = Check.standing(s, shapes(s), 1, CheckWatch.NONE, new Recall());
    for (CheckReport r : List.of(quick, standing)) {
      assertThat(of(STANDING, r)).isEqualTo(of(STANDING, whole));
      assertThat(of(LONG, r)).isEmpty();
      assertThat(r.verdict()).isNotEqualTo(CheckReport.Verdict.PASSES);
      assertThat(r.joints()).as("the joints, as they lie").isEqualTo(whole.joints());
      assertThat(r.states().stream().map(CheckReport.StateLine::standing)).isEqualTo(
          whole.states().stream().map(CheckReport.StateLine::standing).toList());
    }
    assertThat(quick.pane()).isEqualTo(whole.pane());
    assertThat(of(EnumSet.of(Code.ON_SAND, Code.BIG_ON_SMALL, Code.ROCK_WEAKER), quick))
        .isEqualTo(of(EnumSet.of(Code.ON_SAND, Code.BIG_ON_SMALL, Code.ROCK_WEAKER), whole));
    assertThat(of(LONG, whole)).as("there is something to leave out").isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"nano", "bad"})
  void shippedScenesAreAnsweredAsByTheWholeCheck(String name) {
    agrees(SceneReader.read(Path.of("../scenes/" + name + ".json")).match(s -> s, refused -> {
      throw new AssertionError(refused.rendered());
    }));
  }

  @Test
  void aTowerIsAnsweredAsByTheWholeCheck() {
    agrees(SceneBuilders.Family.TOWERS.of(5, 1));
  }

  /** Without a rock there is nothing that could be left out. */
  @Test
  void anEmptySceneLeavesNothingOut() {
    Scene s = SceneBuilders.Family.TOWERS.of(5, 1).withPlacements(List.of());
    assertThat(of(EnumSet.of(Code.UNDECIDED), Check.standing(s, shapes(s), 1, CheckWatch.NONE, new Recall()))).isEmpty();
  }
}
