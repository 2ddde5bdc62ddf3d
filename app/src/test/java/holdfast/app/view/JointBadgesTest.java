package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.edit.Scenes;
import holdfast.app.report.JointNumbers;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Projector;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Numbers of joints that are seen close together do not hide each other; feet on sand are found where they bear. */
class JointBadgesTest {
  /** A badge with the square of a joint that is to be fixed is 2 x 16 pixels wide (13 of radius and 5 of rim, less the corner). */
  private static final double WIDE = 32;

  private static List<JointBadges.Badge> badges(List<Vec3> middles) {
    List<Survey.Touch> touches = new ArrayList<>();
    for (int i = 0; i < middles.size(); i++) {
      touches.add(new Survey.Touch("rock " + i, "rock " + (i + 1), middles.get(i), List.of(), 1));
    }
    JointNumbers numbers = new JointNumbers(touches.stream().map(t -> new JointNumbers.Pair(t.a(), t.b())).toList(), 0);
    Camera c = Camera.fit(Camera.View.FRONT, new Vec3(0, 0, 0), new Vec3(1, 0.5, 0.5), 1.6, 0.12);
    return JointBadges.of(new Projector(c, 1280, 800), touches, numbers, 1);
  }

  @Test
  void oneThatWouldHideAnotherStandsBesideWithALine() {
    List<JointBadges.Badge> out = badges(List.of(new Vec3(0.5, 0.2, 0.2), new Vec3(0.505, 0.2, 0.205), new Vec3(0.5, 0.2, 0.2)));
    assertThat(out).hasSize(3);
    assertThat(out.get(0).beside()).isFalse();
    assertThat(out.get(1).beside()).isTrue();
    for (JointBadges.Badge a : out) {
      for (JointBadges.Badge b : out) {
        if (a == b) continue;
        assertThat(Math.max(Math.abs(a.x() - b.x()), Math.abs(a.y() - b.y()))).isGreaterThanOrEqualTo(WIDE - 1e-9);
      }
    }
  }

  @Test
  void thoseThatAreApartStandAtTheirJoints() {
    assertThat(badges(List.of(new Vec3(0.2, 0.2, 0.2), new Vec3(0.8, 0.2, 0.2)))).noneMatch(JointBadges.Badge::beside);
  }

  /** A slab of 200 x 150 mm on 40 mm of sand over the bare bottom, and one that stands in the sand on the bottom itself. */
  @Test
  void feetOnSandAreDrawnAtItsSurface() {
    Scene s = Scenes.small();
    Floor bare = new Floor(Floor.Kind.BARE, 12.7, 1.5, 0, 0, Optional.empty());
    Scene sandy = new Scene("sand", s.tank(), bare, new Scene.Sand(40, 1.5), s.water(), List.of(), List.of(), s.rocks(),
        List.of(Scenes.at("slab", 200, 200, 40), Scenes.at("block", 450, 200, 0)), List.of(), s.settings());
    List<Survey.Touch> feet = Survey.of(sandy, Shapes.of(sandy, MeshLoader.NONE)).feet();
    assertThat(feet).extracting(Survey.Touch::a).containsExactlyInAnyOrder("slab", "block");
    Survey.Touch slab = feet.stream().filter(f -> f.a().equals("slab")).findFirst().orElseThrow();
    assertThat(slab.b()).isEqualTo("sand");
    assertThat(slab.middle()).isEqualTo(new Vec3(0.2, 0.2, 0.04));
    assertThat(slab.areaMm2()).isCloseTo(30000, within(1e-6));
  }
}
