package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.SceneBuilders.Family;
import holdfast.engine.bonding.TierQuestion;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A check after an edit says what a check that knows nothing says (definition: what is recalled is what would have been
 * found), and judges only the heap that was touched (exact: heaps that share no contact do not act on each other).
 */
class RecallTest {
  private static final Scene TOWERS = Family.TOWERS.of(15, 3);

  private static Scene moved(Scene scene, int rock, Vec3 by) {
    List<Placement> placements = new ArrayList<>(scene.placements());
    Placement p = placements.get(rock);
    placements.set(rock, new Placement(p.rock(), p.atMm().plus(by.times(1e3)), p.turn(), p.locked()));
    return scene.withPlacements(placements);
  }

  private static CheckReport check(Scene scene, boolean exact, int threads, Recall recall) {
    return Check.run(scene, Shapes.of(scene, MeshLoader.NONE), new CheckOptions(threads, CheckOptions.Pushes.ROSES, 0, 1, exact),
        CheckWatch.NONE, recall);
  }

  /** Every figure to its last digit: a record's words have all of them, where a comparison of fields allows for 1e-15. */
  private static void assertSame(CheckReport known, CheckReport fresh, String what) {
    assertThat(known).as(what).usingRecursiveComparison().isEqualTo(fresh);
    assertThat(known.toString()).as(what).isEqualTo(fresh.toString());
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void afterEveryEditTheReportIsThatOfAFreshCheck(boolean exact) {
    Recall recall = new Recall();
    Scene scene = TOWERS;
    check(scene, exact, 2, recall);
    Vec3[] edits = {new Vec3(2e-3, 0, 0), new Vec3(0, -3e-3, 0), new Vec3(-2e-3, 3e-3, 0), new Vec3(0, 0, 5e-3)};
    for (int k = 0; k < edits.length; k++) {
      scene = moved(scene, 4 + 5 * (k % 2), edits[k]);
      CheckReport known = check(scene, exact, 2, recall);
      CheckReport fresh = check(scene, exact, 1, new Recall());
      assertSame(known, fresh, "edit " + k);
    }
  }

  /** In the order in which a window asks: room first, pushes then, an edit, the edit taken back. */
  @ParameterizedTest
  @ValueSource(strings = {"glued-arch", "rod-pillar", "arch-on-slab"})
  void whoAsksOnAndTakesBackHearsWhatAFreshCheckSays(String name) {
    Scene scene = SceneReader.read(Path.of("../scenes/small/" + name + ".json")).match(s -> s, no -> {
      throw new AssertionError(no.rendered());
    });
    Scene edited = moved(scene, scene.placements().size() - 1, new Vec3(1e-3, 0, 0));
    Recall recall = new Recall();
    for (Scene s : List.of(scene, edited, scene)) {
      Shapes shapes = Shapes.of(s, MeshLoader.NONE);
      for (CheckOptions.Pushes pushes : List.of(CheckOptions.Pushes.NONE, CheckOptions.Pushes.TIER)) {
        CheckOptions options = new CheckOptions(1, pushes, 0, 1);
        assertSame(Check.standing(s, shapes, options, CheckWatch.NONE, recall),
            Check.standing(s, Shapes.of(s, MeshLoader.NONE), options, CheckWatch.NONE, new Recall()), "standing " + pushes);
      }
      for (CheckOptions.Pushes pushes : CheckOptions.Pushes.values()) {
        CheckOptions options = new CheckOptions(1, pushes, 0, 1);
        assertSame(Check.run(s, shapes, options, CheckWatch.NONE, recall),
            Check.run(s, Shapes.of(s, MeshLoader.NONE), options), "pushed " + pushes);
      }
    }
  }

  /** What is asked while a rock is held need not be asked again when it is let go; the other way round nothing is taken over. */
  @Test
  void whatAnotherOneKnowsIsTakenOver() {
    Recall held = new Recall();
    held.of("asked", () -> 1);
    Recall after = new Recall(held);
    assertThat(after.<Integer>of("asked", () -> 2)).isEqualTo(1);
    assertThat(after.<Integer>of("new", () -> 3)).isEqualTo(3);
    assertThat(held.<Integer>of("new", () -> 4)).isEqualTo(4);
    Scene scene = moved(TOWERS, 4, new Vec3(2e-3, 0, 0));
    CheckOptions tier = new CheckOptions(1, CheckOptions.Pushes.TIER, 0, 1);
    Shapes shapes = Shapes.of(scene, MeshLoader.NONE);
    Check.standing(scene, shapes, tier, CheckWatch.NONE, held);
    assertSame(Check.run(scene, shapes, tier, CheckWatch.NONE, after), Check.run(scene, shapes, tier), "taken over");
  }

  @Test
  void onlyTheHeapThatWasTouchedIsJudgedAnew() {
    Recall recall = new Recall();
    TierQuestion.unmet(heap(TOWERS), 1, recall);
    int before = recall.size();
    TierQuestion.unmet(heap(TOWERS), 1, recall);
    assertThat(recall.size()).as("nothing was edited").isEqualTo(before);
    TierQuestion.unmet(heap(moved(TOWERS, 4, new Vec3(2e-3, 0, 0))), 1, recall);
    assertThat(recall.size() - before).as("one tower of three").isLessThanOrEqualTo(before / 3).isPositive();
  }

  /** Definition: what is found of a state bears its name, also where another state has the same weights. */
  @Test
  void equalStatesKeepTheirNames() {
    HeapStudy study = new HeapStudy(heap(TOWERS), 1);
    assertThat(study.shakes()).extracting(HeapStudy.ShakeFound::state).isEqualTo(study.states());
  }

  @Test
  void whatIsNoLongerAskedForIsForgotten() {
    Recall recall = new Recall();
    for (int k = 0; k < 12; k++) TierQuestion.unmet(heap(moved(TOWERS, 4, new Vec3(1e-4 * k, 0, 0))), 1, recall);
    int size = recall.size();
    for (int k = 12; k < 24; k++) TierQuestion.unmet(heap(moved(TOWERS, 4, new Vec3(1e-4 * k, 0, 0))), 1, recall);
    assertThat(recall.size()).isLessThanOrEqualTo(size);
  }

  private static SceneHeap heap(Scene scene) {
    return SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
  }
}
