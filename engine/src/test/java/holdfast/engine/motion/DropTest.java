package holdfast.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class DropTest {
  private static final MotionBody BASE = TestBodies.box("base", 0.2, 0.2, 0.1, TestBodies.at(0.3, 0.3, 0.05));
  private static final MotionBody TILE = TestBodies.box("tile", 0.12, 0.06, 0.03, TestBodies.at(1, 1, 0.015));

  private static SettleJob job() {
    return new SettleJob(List.of(BASE, TILE), Set.of(), List.of(TestBodies.floor()), List.of(), 0, WorldOptions.Friction.uniform(0.6));
  }

  @Test
  void comesDownOntoWhatIsUnderTheSpot() {
    Drop.Dropped.Lies onBase = (Drop.Dropped.Lies) Drop.drop(job(), "tile", new Vec3(0.32, 0.3, 0), Quat.IDENTITY);
    // Half of 30 mm above the base's top at 100 mm (derived).
    assertThat(onBase.pose().at().z()).isCloseTo(0.115, within(1e-9));
    assertThat(onBase.rolledM()).isLessThan(1e-4);
    assertThat(onBase.disturbedM()).isLessThan(1e-4);
    Drop.Dropped.Lies onFloor = (Drop.Dropped.Lies) Drop.drop(job(), "tile", new Vec3(0.8, 0.3, 0), Quat.IDENTITY);
    assertThat(onFloor.pose().at().z()).isCloseTo(0.015, within(1e-9));
  }

  @Test
  void fallsOffWhereItCannotLie() {
    // Its centre is 10 mm beyond the base's rim.
    Drop.Dropped.Lies lies = (Drop.Dropped.Lies) Drop.drop(job(), "tile", new Vec3(0.41, 0.3, 0), Quat.IDENTITY);
    assertThat(lies.pose().apply(Vec3.ZERO).z()).isLessThan(0.08);
    assertThat(lies.rolledM()).isGreaterThan(0.005);
  }

  @Test
  void saysWhenItHitsADroppedRocksNeighbourhood() {
    // A plank on a ridge, in balance; the tile dropped on its end tips it.
    MotionBody ridge = TestBodies.box("ridge", 0.03, 0.1, 0.05, TestBodies.at(0.3, 0.3, 0.025));
    MotionBody plank = TestBodies.box("plank", 0.3, 0.08, 0.02, TestBodies.at(0.3, 0.3, 0.06));
    SettleJob job = new SettleJob(List.of(ridge, plank, TILE), Set.of(), List.of(TestBodies.floor()), List.of(), 0,
        WorldOptions.Friction.uniform(0.6));
    Drop.Dropped.Lies lies = (Drop.Dropped.Lies) Drop.drop(job, "tile", new Vec3(0.42, 0.3, 0), Quat.IDENTITY);
    assertThat(lies.disturbedM()).isGreaterThan(0.005);
  }

  @Test
  void theSteadiestRestOfATileIsFlatAndWell() {
    SteadyRest.Tries few = new SteadyRest.Tries(0.02, 2, 3, 2, 0.002);
    MotionBody onEnd = TILE.at(TestBodies.at(1, 1, 0.06, Quat.ofDegreesZyx(0, 90, 0)));
    SettleJob job = new SettleJob(List.of(BASE, onEnd), Set.of(), List.of(TestBodies.floor()), List.of(), 0,
        WorldOptions.Friction.uniform(0.6));
    List<SteadyRest.Candidate> found = SteadyRest.near(job, "tile", new Vec3(0.3, 0.3, 0), few,
        FootMargin.DEFAULT.of(job.fixed()));
    assertThat(found).isNotEmpty();
    assertThat(found).isSortedAccordingTo((p, q) -> Double.compare(q.marginN(), p.marginN()));
    SteadyRest.Candidate best = found.get(0);
    // Flat: W b / (2 y) over the short side, W = 0.12 * 0.06 * 0.03 * 2000 * 9.81, b = 60 mm, y = 0.9 * 30 mm (derived).
    double expected = 0.12 * 0.06 * 0.03 * 2000 * 9.81 * 0.06 / (2 * 0.9 * 0.03);
    assertThat(best.marginN()).isCloseTo(expected, within(0.01 * expected));
    assertThat(best.pose().at().z()).isCloseTo(0.115, within(1e-6));
    assertThat(found.get(found.size() - 1).marginN()).isLessThan(0.5 * expected);
  }
}
