package holdfast.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Sand dug from under feet: who falls, how far, and who stays. Scenes invented; expectations are plain geometry (derived). */
class UndermineTest {
  /** A table with two legs on 40 mm of sand, legs 60 mm apart by their inner faces; a box beside it. */
  private static Scene scene(double boxZ) {
    String text = """
        { "format": "holdfast-scene/1",
          "tank": { "length_mm": 600, "width_mm": 400, "height_mm": 400, "side_glass_mm": 8, "bottom_glass_mm": 8 },
          "floor": { "kind": "bare" }, "sand": { "depth_mm": 40 }, "water": { "level_mm": 375 },
          "rocks": [
            { "name": "table", "kind": "dry", "form": { "lobes_mm": [
                [[-70,-30,0],[-30,-30,0],[-30,30,0],[-70,30,0],[-70,-30,60],[-30,-30,60],[-30,30,60],[-70,30,60]],
                [[30,-30,0],[70,-30,0],[70,30,0],[30,30,0],[30,-30,60],[70,-30,60],[70,30,60],[30,30,60]],
                [[-70,-30,60],[70,-30,60],[70,30,60],[-70,30,60],[-70,-30,90],[70,-30,90],[70,30,90],[-70,30,90]]] },
              "mass": { "weighed_kg": 1.5 } },
            { "name": "box", "kind": "dry", "form": { "points_mm": [
                [-40,-40,0],[40,-40,0],[40,40,0],[-40,40,0],[-40,-40,90],[40,-40,90],[40,40,90],[-40,40,90]] },
              "mass": { "weighed_kg": 1.2 } }
          ],
          "placements": [
            { "rock": "table", "at_mm": [200, 200, 40] },
            { "rock": "box", "at_mm": [450, 200, %s] }
          ] }
        """.formatted(boxZ);
    return SceneReader.read(text, "undermine").match(s -> s, refused -> {
      throw new IllegalStateException(refused.problems().toString());
    });
  }

  private static Shapes shapes(Scene scene) {
    return Shapes.of(scene, MeshLoader.NONE);
  }

  private static PlayResult.Played dig(Scene scene, String rock, int foot) {
    var bodies = shapes(scene).bodies().values();
    List<List<Vec3>> feet = SceneBodies.sandFeet(scene, bodies, rock);
    List<List<Vec3>> chosen = foot < 0 ? feet : List.of(feet.get(foot));
    return Bump.play(SceneBodies.playJob(scene, bodies, true), new Disturbance.Undermining(rock, chosen)).match(p -> p, none -> {
      throw new IllegalStateException(none.reason());
    });
  }

  @Test
  void aBoxGoesDownByTheDepthOfTheSandAndItsNeighbourStays() {
    PlayResult.Played played = dig(scene(40), "box", -1);
    assertThat(played.outcomes().get(1).fate()).isEqualTo(PlayResult.Fate.FELL);
    assertThat(played.outcomes().get(1).dropM()).isCloseTo(0.04, within(5e-4));
    assertThat(played.outcomes().get(1).restsOn()).contains("bottom pane");
    assertThat(played.outcomes().get(0).fate()).isEqualTo(PlayResult.Fate.STAYED);
  }

  @Test
  void oneLegDugFreeTipsTheTableTowardIt() {
    Scene scene = scene(40);
    assertThat(SceneBodies.sandFeet(scene, shapes(scene).bodies().values(), "table")).hasSize(2);
    PlayResult.Played left = dig(scene, "table", 0);
    PlayResult.Played right = dig(scene, "table", 1);
    // Which way: the left end sinks, so the centre of mass goes left; and the mirror image.
    assertThat(left.outcomes().get(0).landedAtM().x()).isLessThan(0.195);
    assertThat(right.outcomes().get(0).landedAtM().x()).isGreaterThan(0.205);
    assertThat(left.outcomes().get(0).turnRad()).isGreaterThan(0.1);
    assertThat(left.outcomes().get(1).fate()).isEqualTo(PlayResult.Fate.STAYED);
  }

  /** One rock stands through the sand on the bottom, another on the sand: the second stays up until it is dug free. */
  @Test
  void sandCarriesBesideARockThatStandsThroughIt() {
    Scene scene = scene(0);
    var bodies = shapes(scene).bodies().values();
    PlayResult.Played still = Bump.play(SceneBodies.playJob(scene, bodies, true), new Disturbance.Nothing()).match(p -> p, none -> {
      throw new IllegalStateException(none.reason());
    });
    assertThat(still.outcomes()).allSatisfy(o -> assertThat(o.fate()).isEqualTo(PlayResult.Fate.STAYED));
    assertThat(still.outcomes().get(0).landedAtM().z()).isGreaterThan(0.08);
    assertThat(SceneBodies.sandFeet(scene, bodies, "box")).isEmpty();
    assertThat(dig(scene, "table", -1).outcomes().get(0).dropM()).isCloseTo(0.04, within(5e-4));
  }

  /** A pit takes away its area and no more (derived). */
  @Test
  void aPitTakesAwayItsOwnSand() {
    Scene scene = scene(40);
    var bodies = shapes(scene).bodies().values();
    var sand = SandBed.of(scene, SceneBodies.of(scene, bodies)).orElseThrow();
    assertThat(volume(sand.lobes())).isCloseTo(0.6 * 0.4 * 0.04, within(1e-9));
    List<Vec3> outline = List.of(new Vec3(0.1, 0.1, 0.04), new Vec3(0.2, 0.1, 0.04), new Vec3(0.2, 0.15, 0.04));
    // 10 mm more on every side of 100 x 50 mm.
    assertThat(volume(SandBed.dug(sand, List.of(outline)).orElseThrow().lobes()))
        .isCloseTo((0.6 * 0.4 - 0.12 * 0.07) * 0.04, within(1e-9));
  }

  private static double volume(List<Hull> lobes) {
    return lobes.stream().mapToDouble(h -> holdfast.model.geom.Polyhedra.massProperties(h).volumeM3()).sum();
  }
}
