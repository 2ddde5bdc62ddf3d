package holdfast.engine.pane;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How long the bottom pane of a layout of 30 rocks takes, all on the floor: three load cases on every bed. Prints its figures and
 * asserts none of them:
 * {@code mvn -q -pl engine -am -Pslow -Dtest=PaneTimeTest -Dsurefire.failIfNoSpecifiedTests=false test}.
 */
class PaneTimeTest {
  private static final int ROCKS = 30;
  private static final int RUNS = 9;

  /** Feet of four to eight corners, forces between a half and one and a half of their share; invented. */
  private static PaneLoad load() {
    Random random = new Random(30);
    Map<LoadCase, PaneLoad.Case> cases = new EnumMap<>(LoadCase.class);
    List<FootLoad> feet = new ArrayList<>();
    for (int i = 0; i < ROCKS; i++) {
      double x = 0.12 + 0.17 * (i % 10) + 0.03 * random.nextDouble();
      double y = 0.12 + 0.17 * (i / 10) + 0.03 * random.nextDouble();
      double radius = 0.02 + 0.05 * random.nextDouble();
      int corners = 4 + random.nextInt(5);
      List<Vec3> ring = new ArrayList<>();
      for (int k = 0; k < corners; k++) {
        double a = 2 * Math.PI * k / corners;
        ring.add(new Vec3(x + radius * Math.cos(a), y + radius * Math.sin(a), 1e-3 * Floor.DEFAULT.topMm()));
      }
      feet.add(new FootLoad("rock " + i, ring, 10, 30, true));
    }
    for (LoadCase c : LoadCase.values()) cases.put(c, new PaneLoad.Case(feet, 20.0 * ROCKS, true));
    return new PaneLoad(cases, Optional.of(new PaneLoad.HeldRock("rock 0", 6)));
  }

  @Test
  @Tag("slow")
  void thirtyRocks() {
    PaneLoad load = load();
    for (Tank.BottomSupport support : Tank.BottomSupport.values()) {
      Tank tank = new Tank(1770, 570, 580, 15, 15, support, false, false, List.of(), List.of(), List.of());
      Scene scene = PaneScenes.scene(tank, Floor.DEFAULT, 545);
      PaneReport first = BottomPane.judge(scene, load);
      for (int i = 0; i < 3; i++) assertThat(BottomPane.judge(scene, load)).isEqualTo(first);
      double[] ms = new double[RUNS];
      for (int i = 0; i < RUNS; i++) {
        long start = System.nanoTime();
        BottomPane.judge(scene, load);
        ms[i] = 1e-6 * (System.nanoTime() - start);
      }
      Arrays.sort(ms);
      System.out.printf(java.util.Locale.ROOT, "bottom pane, %d rocks, support %s: median %.0f ms, %.0f to %.0f over %d runs%n",
          ROCKS, support.name().toLowerCase(java.util.Locale.ROOT), ms[RUNS / 2], ms[0], ms[RUNS - 1], RUNS);
    }
  }
}
