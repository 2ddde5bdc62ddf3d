package holdfast.engine;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.SceneBuilders.Family;
import holdfast.engine.contact.PairFit;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What tests and benchmarks build on is what its names say. */
class SceneBuildersTest {
  private static SceneHeap heap(Family family, int count) {
    Scene scene = family.of(count, 1);
    Shapes shapes = Shapes.of(scene, MeshLoader.NONE);
    assertThat(shapes.problems()).isEmpty();
    return SceneHeap.of(scene, shapes.placed());
  }

  /** Joints by counting faces: each stone of a course lies across one joint; piles of 30 have layers of 16, 9, 4, 1 stones. */
  @Test
  void stonesTouchWhatTheyShould() {
    assertThat(heap(Family.TOWERS, 30).heap().separate()).hasSize(6);
    assertThat(joints(heap(Family.TOWERS, 30))).isEqualTo(6 * 4);
    assertThat(heap(Family.WALL, 30).heap().separate()).hasSize(1);
    SceneHeap pile = heap(Family.PILE, 30);
    assertThat(pile.heap().separate()).hasSize(1);
    // Sideways 2 k (k - 1) a layer of k by k, upward 4 for each stone of the layer above: derived. Drawn askew, stones of
    // one layer may also meet a fifth of the next over a corner.
    assertThat(joints(pile)).isBetween(24L + 12 + 4 + 4 * (9 + 4 + 1), 24L + 12 + 4 + 6 * (9 + 4 + 1));
    assertThat(pile.contacts().fits()).extracting(PairFit::distanceM).allSatisfy(d -> assertThat(Math.abs(d)).isLessThan(1e-9));
  }

  private static long joints(SceneHeap heap) {
    return heap.heap().links().stream().filter(l -> l.b() != Heap.GROUND).count();
  }

  @ParameterizedTest
  @EnumSource(Family.class)
  void theyStay(Family family) {
    SceneHeap heap = heap(family, 30);
    for (Heap.Part p : heap.heap().separate()) {
      assertThat(new PartJudge(p, heap.weights().loads(State.FILLED)).safe()).isTrue();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 10, 30, 100, 150})
  void anyNumber(int count) {
    for (Family f : Family.values()) {
      assertThat(f.of(count, 1).placements()).hasSize(count);
      assertThat(f.of(count, 1)).isEqualTo(f.of(count, 1)).isNotEqualTo(f.of(count, 2));
    }
  }
}
