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

  private static CheckReport standing(Scene s, CheckOptions.Pushes pushes) {
    return Check.standing(s, shapes(s), new CheckOptions(1, pushes, 0, 1), CheckWatch.NONE, new Recall());
  }

  private static void agrees(Scene s) {
    CheckReport whole = Check.run(s, shapes(s), new CheckOptions(1, CheckOptions.Pushes.ROSES, 0, 1));
    CheckReport quick = Check.run(s, shapes(s), new CheckOptions(1, CheckOptions.Pushes.NONE, 0, 1));
    CheckReport standing = standing(s, CheckOptions.Pushes.NONE);
    for (CheckReport r : List.of(quick, standing)) {
      assertThat(of(STANDING, r)).isEqualTo(of(STANDING, whole));
      assertThat(of(LONG, r)).isEmpty();
      assertThat(r.verdict()).isNotEqualTo(CheckReport.Verdict.PASSES);
      assertThat(r.joints()).as("the joints, as they lie").isEqualTo(whole.joints());
      assertThat(r.states().stream().map(CheckReport.StateLine::standing)).isEqualTo(
          whole.states().stream().map(CheckReport.StateLine::standing).toList());
    }
    assertThat(quick.pane()).isEqualTo(whole.pane());
    tierAgrees(s, whole);
    assertThat(of(EnumSet.of(Code.ON_SAND, Code.BIG_ON_SMALL, Code.ROCK_WEAKER), quick))
        .isEqualTo(of(EnumSet.of(Code.ON_SAND, Code.BIG_ON_SMALL, Code.ROCK_WEAKER), whole));
    assertThat(of(LONG, whole)).as("there is something to leave out").isNotEmpty();
  }

  /** The tier alone: one of the whole check's rocks that go over, if there are any and all stands; no slides, no margins. */
  private static void tierAgrees(Scene s, CheckReport whole) {
    Set<Code> over = EnumSet.of(Code.TOPPLES, Code.PRESSED, Code.SHAKES);
    boolean stands = whole.states().stream().allMatch(l -> l.standing() == CheckReport.Standing.STAYS);
    List<Finding> go = of(over, whole).stream().filter(f -> f.severity() == Severity.FAIL).toList();
    for (CheckReport tier : List.of(standing(s, CheckOptions.Pushes.TIER),
        Check.run(s, shapes(s), new CheckOptions(1, CheckOptions.Pushes.TIER, 0, 1)))) {
      assertThat(of(STANDING, tier)).isEqualTo(of(STANDING, whole));
      assertThat(tier.verdict()).isNotEqualTo(CheckReport.Verdict.PASSES);
      List<Finding> found = of(LONG, tier);
      assertThat(found).hasSize(stands && !go.isEmpty() ? 1 : 0);
      for (Finding f : found) {
        assertThat(go).anySatisfy(g -> {
          assertThat(g.code()).isEqualTo(f.code());
          assertThat(g.about().get(0)).isEqualTo(f.about().get(0));
          assertThat(g.remedy()).isEqualTo(f.remedy());
        });
      }
    }
  }

  /** The layout before its remedies stands, and has a rock that topples at the tier. */
  @Test
  void aRockThatTopplesIsToldByTheTierAlone() {
    Scene s = shipped("peninsula-before");
    CheckReport whole = Check.run(s, shapes(s), new CheckOptions(1, CheckOptions.Pushes.WEAKEST, 0, 1));
    assertThat(whole.states()).allSatisfy(l -> assertThat(l.standing()).isEqualTo(CheckReport.Standing.STAYS));
    assertThat(of(EnumSet.of(Code.TOPPLES), whole)).isNotEmpty();
    tierAgrees(s, whole);
  }

  @ParameterizedTest
  @ValueSource(strings = {"nano", "bad"})
  void shippedScenesAreAnsweredAsByTheWholeCheck(String name) {
    agrees(shipped(name));
  }

  private static Scene shipped(String name) {
    return SceneReader.read(Path.of("../scenes/" + name + ".json")).match(s -> s, refused -> {
      throw new AssertionError(refused.rendered());
    });
  }

  @Test
  void aTowerIsAnsweredAsByTheWholeCheck() {
    agrees(SceneBuilders.Family.TOWERS.of(5, 1));
  }

  /** Without a rock there is nothing that could be left out. */
  @Test
  void anEmptySceneLeavesNothingOut() {
    Scene s = SceneBuilders.Family.TOWERS.of(5, 1).withPlacements(List.of());
    assertThat(of(EnumSet.of(Code.UNDECIDED), standing(s, CheckOptions.Pushes.NONE))).isEmpty();
  }
}
