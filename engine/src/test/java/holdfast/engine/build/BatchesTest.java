package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.build.BuildOrder.Help;
import holdfast.engine.build.BuildOrder.Stage;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.JointSpec.Bond;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class BatchesTest {
  private static Scene scene(List<JointSpec> joints, Settings settings) {
    Tank tank = new Tank(600, 400, 450, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    return new Scene("b", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(400, 35, 25), List.of(), List.of(),
        List.of(), List.of(), joints, settings);
  }

  private static Stage stage(int rock, List<Integer> joints, boolean cured) {
    return new Stage(rock, joints, !cured, cured ? Help.PROP : Help.NONE, 0, cured, Set.of());
  }

  /**
   * By hand (derived) with the defaults (5 min a rock, 2 min a joint, 3 min a mix, 15 min working, 1.6 g/ml, 30 % waste,
   * 250 g a batch): joints of 40 ml need 64 g, so three to a batch by powder (249.6 g); 9 + 2 min by the clock for the third.
   */
  @Test
  void setsTheWorkAgainstTheClock() {
    List<JointSpec> joints = new ArrayList<>();
    List<Stage> stages = new ArrayList<>(List.of(stage(0, List.of(), false)));
    for (int i = 0; i < 4; i++) {
      joints.add(JointSpec.paste("r" + i, "r" + (i + 1), Bond.MORTAR, 40));
      stages.add(stage(i + 1, List.of(i), false));
    }
    Batches b = Batches.of(scene(joints, Settings.DEFAULT), stages, Collections.nCopies(5, false));
    // Mixed at 5 + 5 + 3 = 13; joint 0 to 15, 1 to 22; joint 2 would end at 29 > 13 + 15: a new batch.
    assertThat(b.batches()).extracting(Batches.Batch::joints).containsExactly(List.of(0, 1), List.of(2, 3));
    assertThat(b.minutes()).containsExactly(0.0, 5.0, 15.0, 22.0, 32.0);
    Batches.Batch first = b.batches().get(0);
    assertThat(first.startMin()).isEqualTo(10);
    assertThat(first.goneMin()).isEqualTo(28);
    assertThat(first.powderG()).isCloseTo(2 * 64 * 1.3, within(1e-9));
    assertThat(first.waterG()).isCloseTo(2 * 40 * 0.38 * 1.3, within(1e-9));
    assertThat(first.wasteG()).isCloseTo(2 * 64 * 0.3, within(1e-9));
    assertThat(b.workMin()).isEqualTo(39);
  }

  /** A joint of 200 ml needs 416 g with its waste: two mixes of at most 250 g. */
  @Test
  void aLargeJointTakesSeveralMixes() {
    List<JointSpec> joints = List.of(JointSpec.paste("a", "b", Bond.MORTAR, 200));
    Batches b = Batches.of(scene(joints, Settings.DEFAULT),
        List.of(stage(0, List.of(), false), stage(1, List.of(0), false)), List.of(false, true));
    assertThat(b.batches()).hasSize(1);
    assertThat(b.batches().get(0).mixes()).isEqualTo(2);
    assertThat(b.livingOutMin()).isEqualTo(5 + 2 * 3 + 2);
  }

  @Test
  void noBatchOutlastsAWaitForSetting() {
    List<JointSpec> joints = List.of(JointSpec.paste("a", "b", Bond.MORTAR, 10), JointSpec.paste("b", "c", Bond.MORTAR, 10),
        JointSpec.paste("c", "d", Bond.PUTTY, 10));
    Batches b = Batches.of(scene(joints, Settings.DEFAULT),
        List.of(stage(0, List.of(), false), stage(1, List.of(0), true), stage(2, List.of(1, 2), true)), List.of(false, false,
            false));
    assertThat(b.batches()).hasSize(2);
    assertThat(b.waits()).containsExactly(0.0, 1.0, 24.0);
    assertThat(b.putty()).isEqualTo(10);
    assertThat(b.batches().get(1).startMin()).isEqualTo(5 + 5 + 3 + 2 + 60 + 5);
  }

  /** No way to part the joints into consecutive batches is shorter; every way is tried. */
  @Test
  void takesTheFewestBatches() {
    long seed = 3;
    Random random = new Random(seed);
    Settings s = Settings.DEFAULT.with(Setting.PLACE_MIN, 1).with(Setting.MIX_MIN, 0);
    for (int run = 0; run < 60; run++) {
      int n = 2 + random.nextInt(8);
      List<JointSpec> joints = new ArrayList<>();
      List<Stage> stages = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        joints.add(JointSpec.paste("r" + i, "r" + (i + 1), Bond.MORTAR, 5 + random.nextInt(60)));
        stages.add(stage(i, List.of(i), false));
      }
      Batches b = Batches.of(scene(joints, s), stages, Collections.nCopies(n, false));
      assertThat(b.batches().size()).as("seed %d run %d", seed, run).isEqualTo(fewest(joints));
    }
  }

  /** Joint k of a batch ends 3 k + 2 minutes after mixing (no mixing time, a minute a rock, two a joint). */
  private static int fewest(List<JointSpec> joints) {
    int best = Integer.MAX_VALUE;
    for (int mask = 0; mask < 1 << (joints.size() - 1); mask++) {
      boolean sound = true;
      int batches = 1;
      double grams = 0;
      int k = 0;
      for (int i = 0; i < joints.size(); i++) {
        if (i > 0 && (mask >> (i - 1) & 1) == 1) {
          batches++;
          grams = 0;
          k = 0;
        }
        grams += joints.get(i).amountMl() * 1.6 * 1.3;
        sound &= k == 0 || grams <= 250 && 3 * k + 2 <= 15;
        k++;
      }
      if (sound) best = Math.min(best, batches);
    }
    return best;
  }
}
