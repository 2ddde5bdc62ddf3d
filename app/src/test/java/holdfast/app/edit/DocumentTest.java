package holdfast.app.edit;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The document: what was done can be taken back, step by step, and done again. Expected values follow from the definition of undo. */
class DocumentTest {
  private static Edit move(String rock, double x) {
    return new Edit.Move("move", rock, new Vec3(x, 200, 70), Quat.IDENTITY);
  }

  @Test
  void undoAndRedoNameWhatTheyDo() {
    Document d = new Document(Scenes.small());
    Scene before = d.scene();
    d.apply(move("block", 310));
    assertThat(d.undoName()).contains("move block");
    assertThat(d.undo()).contains("move block");
    assertThat(d.scene()).isEqualTo(before);
    assertThat(d.undoName()).isEmpty();
    assertThat(d.redoName()).contains("move block");
    d.redo();
    assertThat(d.scene().placement("block").orElseThrow().atMm().x()).isEqualTo(310);
  }

  @Test
  void dragIsOneStep() {
    Document d = new Document(Scenes.small());
    Scene before = d.scene();
    for (int i = 1; i <= 50; i++) d.apply(move("block", 300 + i), 7);
    assertThat(d.stepNames()).containsExactly("move block");
    d.undo();
    assertThat(d.scene()).isEqualTo(before);
    d.redo();
    assertThat(d.scene().placement("block").orElseThrow().atMm().x()).isEqualTo(350);
    // Another gesture is another step.
    d.apply(move("block", 400), 8);
    assertThat(d.stepsDone()).isEqualTo(2);
  }

  @Test
  void undoneDragIsNotContinued() {
    Document d = new Document(Scenes.small());
    d.apply(move("block", 310), 7);
    d.undo();
    d.apply(move("block", 320), 7);
    assertThat(d.stepNames()).containsExactly("move block");
    d.undo();
    assertThat(d.scene()).isEqualTo(Scenes.small());
  }

  @Test
  void refusedEditLeavesEverythingAsItWas() {
    Document d = new Document(Scenes.small());
    long r = d.revision();
    assertThat(d.apply(move("nobody", 1))).isInstanceOf(Outcome.Refused.class);
    assertThat(d.apply(new Edit.Set(Setting.PUSH_TIER_N, OptionalDouble.of(-3)))).isInstanceOf(Outcome.Refused.class);
    assertThat(d.apply(new Edit.Together("both", List.of(move("block", 5), new Edit.Add(Scenes.box("slab", 1, 1, 1, 1))))))
        .isInstanceOf(Outcome.Refused.class);
    assertThat(d.revision()).isEqualTo(r);
    assertThat(d.scene()).isEqualTo(Scenes.small());
    assertThat(d.undoName()).isEmpty();
  }

  @Test
  void lockedRockStays() {
    Document d = new Document(Scenes.small());
    d.apply(new Edit.Lock("block", true));
    assertThat(d.apply(move("block", 5))).isInstanceOf(Outcome.Refused.class);
    d.apply(new Edit.Lock("block", false));
    assertThat(d.apply(move("block", 5))).isInstanceOf(Outcome.Changed.class);
  }

  @Test
  void renamedRockKeepsItsPlaceAndJoints() {
    Document d = new Document(Scenes.small());
    d.apply(new Edit.Fix(JointSpec.paste("slab", "block", JointSpec.Bond.MORTAR, 40)));
    d.apply(new Edit.Describe("block", Scenes.box("crown", 100, 100, 80, 1.4)));
    assertThat(d.scene().placement("crown")).isPresent();
    assertThat(d.scene().joint("crown", "slab")).isPresent();
    assertThat(d.undoName()).contains("call block crown");
  }

  @Test
  void removedRockTakesItsJointsAlong() {
    Document d = new Document(Scenes.small());
    d.apply(new Edit.Fix(JointSpec.paste("slab", "block", JointSpec.Bond.PUTTY, 20)));
    d.apply(new Edit.TakeOut("block"));
    assertThat(d.scene().joints()).isEmpty();
    assertThat(d.scene().rock("block")).isPresent();
    d.apply(new Edit.Remove("block"));
    assertThat(d.scene().rock("block")).isEmpty();
    d.undo();
    d.undo();
    assertThat(d.scene().joint("slab", "block")).isPresent();
  }

  @Test
  void unsavedOnlyWhileDifferentFromTheFile() {
    Document d = new Document(Scenes.small());
    assertThat(d.unsaved()).isFalse();
    d.apply(move("block", 310));
    assertThat(d.unsaved()).isTrue();
    d.undo();
    assertThat(d.unsaved()).isFalse();
  }

  @Test
  void anyRowOfEditsCanBeTakenBackAndMadeAgain() {
    long seed = 20260101;
    Random random = new Random(seed);
    Document d = new Document(Scenes.small());
    List<Scene> after = new ArrayList<>(List.of(d.scene()));
    for (int i = 0; i < 300; i++) {
      int before = d.stepsDone();
      d.apply(any(random, i));
      if (d.stepsDone() > before) after.add(d.scene());
    }
    for (int i = after.size() - 2; i >= 0; i--) {
      d.undo();
      assertThat(d.scene()).as("seed %d, undo to step %d", seed, i).isEqualTo(after.get(i));
    }
    assertThat(d.undo()).isEmpty();
    for (int i = 1; i < after.size(); i++) {
      d.redo();
      assertThat(d.scene()).as("seed %d, redo to step %d", seed, i).isEqualTo(after.get(i));
    }
  }

  private static Edit any(Random random, int i) {
    String rock = List.of("slab", "block", "spare", "extra").get(random.nextInt(4));
    String other = List.of("slab", "block").get(random.nextInt(2));
    return switch (random.nextInt(8)) {
      case 0 -> new Edit.Place(rock, new Vec3(i, 100, 10), Quat.about(Vec3.Z, random.nextDouble()));
      case 1 -> new Edit.TakeOut(rock);
      case 2 -> new Edit.Add(Scenes.box("extra", 50, 50, 50, 0.3));
      case 3 -> new Edit.Remove(rock);
      case 4 -> new Edit.Lock(rock, random.nextBoolean());
      case 5 -> new Edit.Fix(JointSpec.paste(rock, other.equals(rock) ? "spare" : other, JointSpec.Bond.MORTAR, 10 + i));
      case 6 -> new Edit.Set(Setting.PUSH_TIER_N, random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(5 + i % 40));
      default -> move(rock, random.nextInt(500));
    };
  }

  @Test
  void memoryStaysFlatOverTenThousandEditsAndUndos() {
    Document d = new Document(Scenes.small());
    cycle(d, 1000);
    long early = used();
    cycle(d, 10_000);
    // 10,000 kept scenes would be over 5 MB; what is left is noise of the collector.
    assertThat(used() - early).isLessThan(2_000_000L);
    assertThat(d.stepNames()).hasSize(1);
  }

  private static void cycle(Document d, int times) {
    for (int i = 0; i < times; i++) {
      d.apply(move("block", 100 + i % 300));
      d.undo();
    }
  }

  private static long used() {
    for (int i = 0; i < 4; i++) System.gc();
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }
}
