package holdfast.engine.contact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expected figures are derived: boxes along the axes. */
class HullDistanceTest {
  @Test
  void theNearestLobesCount() {
    HullDistance d = HullDistance.between(
        List.of(Bodies.box(new Vec3(0, 0, 0), new Vec3(1, 1, 1)), Bodies.box(new Vec3(0, 0, 3), new Vec3(1, 1, 4))),
        List.of(Bodies.box(new Vec3(9, 0, 0), new Vec3(10, 1, 1)), Bodies.box(new Vec3(4, 5, 4), new Vec3(6, 6, 6))));
    // From (1, 1, 4) to (4, 5, 4): 3 and 4 along the axes.
    assertThat(d.distanceM()).isCloseTo(5, within(1e-12));
    assertThat(d.onA().distanceTo(new Vec3(1, 1, 4))).isLessThan(1e-12);
    assertThat(d.onB().distanceTo(new Vec3(4, 5, 4))).isLessThan(1e-12);
  }

  @Test
  void anOverlapIsTheShortestWayOut() {
    HullDistance d = HullDistance.between(
        List.of(Bodies.box(new Vec3(0, 0, 0), new Vec3(1, 1, 1))), List.of(Bodies.box(new Vec3(0.9, 0.2, 0.3), new Vec3(2, 2, 2))));
    assertThat(d.distanceM()).isCloseTo(-0.1, within(1e-12));
    assertThat(Math.abs(d.onA().x() - d.onB().x())).isCloseTo(0.1, within(1e-12));
  }
}
