package holdfast.app.view.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Three boxes one behind the other, as the left pane shows them; what is seen of each is derived by hand. */
class NamePlacesTest {
  private static final Stone NEAR = box("near", 0, 0.20);
  private static final Stone LOW = box("low behind", 0.3, 0.10);
  private static final Stone TALL = box("tall behind", 0.6, 0.40);
  private static final List<Stone> ALL = List.of(NEAR, LOW, TALL);
  private static final Projector EYE = new Projector(
      Camera.fit(Camera.View.LEFT, new Vec3(-0.1, -0.1, 0), new Vec3(0.8, 0.3, 0.5), 1.6, 0.1), 800, 500);

  /** From y = 0 to 0.2 m and from the floor to a height; 0.2 m deep. */
  private static Stone box(String name, double x, double high) {
    List<Vec3> corners = new ArrayList<>();
    for (double dx : new double[] {0, 0.2}) {
      for (double dy : new double[] {0, 0.2}) {
        for (double dz : new double[] {0, high}) corners.add(new Vec3(dx, dy, dz));
      }
    }
    Hull hull = HullBuilder.build(corners).match(h -> h, why -> {
      throw new AssertionError(why.toString());
    });
    return new Stone(name, Rock.Kind.DRY, List.of(hull), new Vec3(0.1, 0.1, high / 2),
        new Pose(new Vec3(x, 0, 0), Pose.IDENTITY.turn()));
  }

  @Test
  void whatStandsInFrontHasItsNameAtItsCentre() {
    Projector.Spot centre = EYE.spot(NEAR.centreInTank());
    assertThat(NamePlaces.seen(EYE, NEAR, ALL)).hasValue(centre);
  }

  @Test
  void whatIsHiddenHasNone() {
    assertThat(NamePlaces.seen(EYE, LOW, ALL)).isEmpty();
    assertThat(NamePlaces.seen(EYE, LOW, List.of(LOW, TALL))).isPresent();
  }

  /** Seen from 0.2 to 0.4 m of height: half way is 0.3 m, as wide as it is; two lines of sight either way. */
  @Test
  void whatLooksOverAnotherHasItsNameThere() {
    Projector.Spot middle = EYE.spot(new Vec3(0.6, 0.1, 0.3));
    Projector.Spot at = NamePlaces.seen(EYE, TALL, ALL).orElseThrow();
    double step = 0.5 * Math.sqrt(0.2 * 0.2 + 0.2 * 0.2 + 0.4 * 0.4) / 7 / EYE.metresPerPixel(TALL.centreInTank());
    assertThat(at.x()).isCloseTo(middle.x(), within(2 * step));
    assertThat(at.y()).isCloseTo(middle.y(), within(2 * step));
    assertThat(at.y()).isLessThan(EYE.spot(new Vec3(0, 0.1, 0.2)).y());
  }
}
