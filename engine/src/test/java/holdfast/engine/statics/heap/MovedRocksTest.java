package holdfast.engine.statics.heap;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.SceneBuilders.Family;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** After some rocks have moved, what is found anew and what is kept make the heap that a search of everything makes (definition). */
class MovedRocksTest {
  private static void sameAsAnew(Scene scene, long seed) {
    SceneHeap before = SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
    before.heap();
    Random random = new Random(seed);
    for (int round = 0; round < 6; round++) {
      List<PlacedRock> moved = new ArrayList<>(before.rocks());
      for (int k = 0; k <= round % 3; k++) {
        int i = random.nextInt(moved.size());
        PlacedRock r = moved.get(i);
        Vec3 by = new Vec3(0.02 * random.nextGaussian(), 0.02 * random.nextGaussian(), k == 0 ? 0 : 1e-3 * random.nextGaussian());
        moved.set(i, r.at(new Pose(r.pose().at().plus(by), Quat.about(Vec3.Z, 0.1 * round).times(r.pose().turn()).unit())));
      }
      SceneHeap kept = before.withRocks(moved);
      SceneHeap anew = SceneHeap.of(scene, moved);
      assertThat(kept.contacts()).as("seed %d, round %d", seed, round).isEqualTo(anew.contacts());
      assertThat(kept.heap()).as("seed %d, round %d", seed, round).isEqualTo(anew.heap());
      assertThat(kept.seats()).as("seed %d, round %d", seed, round).isEqualTo(anew.seats());
      for (State s : anew.weights().states()) assertThat(kept.weights().loads(s)).isEqualTo(anew.weights().loads(s));
    }
  }

  @ParameterizedTest
  @EnumSource(Family.class)
  void inHeapsOfEveryKind(Family family) {
    sameAsAnew(family.of(15, 4), 11);
  }

  @ParameterizedTest
  @ValueSource(strings = {"islands", "peninsula"})
  void withJointsDevicesAndRocksOfSeveralLobes(String name) {
    sameAsAnew(SceneReader.read(Path.of("../scenes/" + name + ".json")).match(s -> s, no -> {
      throw new AssertionError(no.rendered());
    }), 12);
  }

  @Test
  void whoHasNotMovedIsNotSoughtAnew() {
    Scene scene = Family.WALL.of(10, 1);
    SceneHeap before = SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
    SceneHeap same = before.withRocks(before.rocks());
    for (int i = 0; i < before.contacts().contacts().size(); i++) {
      assertThat(same.contacts().contacts().get(i)).isSameAs(before.contacts().contacts().get(i));
    }
  }
}
