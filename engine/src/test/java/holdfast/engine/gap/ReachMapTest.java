package holdfast.engine.gap;

import static holdfast.engine.gap.GapScenes.box;
import static holdfast.engine.gap.GapScenes.rock;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.gap.ReachMap.State;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock.Kind;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tank of 600 x 300 x 400 mm with 360 mm of water, bare floor. Expected figures are derived, or from a slow twin. */
class ReachMapTest {
  private static final Cleaner CLEANER = new Cleaner(0.09, 0.06, 0.035);
  private static final Scene SCENE = GapScenes.scene(Settings.DEFAULT);

  private static ReachMap map(Side side, double cell, PlacedRock... rocks) {
    return ReachMap.of(SCENE, List.of(rocks), side, CLEANER, cell);
  }

  @ParameterizedTest
  @EnumSource(Side.class)
  void anEmptyTankIsWipedAllOver(Side side) {
    ReachMap m = map(side, 0.007);
    assertThat(m.share(State.WIPED)).isEqualTo(1);
    assertThat(m.obstacles()).isEmpty();
  }

  @Test
  void aRockBehindTheCleanerIsNotInTheWay() {
    assertThat(map(Side.FRONT, 0.005, rock(0, "far", Kind.DRY, box(200, 35, 0, 300, 135, 200))).share(State.WIPED)).isEqualTo(1);
    assertThat(map(Side.FRONT, 0.005, rock(0, "near", Kind.DRY, box(200, 34, 0, 300, 135, 200))).share(State.WIPED)).isLessThan(1);
  }

  /** The block 50 mm off the front pane: 35 mm pass behind it, 60 mm lose its own face, 100 by 200 of 600 by 360 (derived). */
  @Test
  void aThickerCleanerReachesLess() {
    List<PlacedRock> block = List.of(rock(0, "block", Kind.DRY, box(200, 50, 0, 300, 150, 200)));
    assertThat(ReachMap.wiped(SCENE, block, 0.035)).containsExactly(1.0, 1.0, 1.0, 1.0);
    List<Double> thick = ReachMap.wiped(SCENE, block, 0.060);
    assertThat(thick.get(Side.FRONT.ordinal())).isCloseTo(1 - 0.1 * 0.2 / (0.6 * 0.36), within(0.01));
    assertThat(thick.get(Side.BACK.ordinal())).isEqualTo(1);
  }

  @Test
  void aBlockTakesExactlyItsOwnFace() {
    // A block at the glass, 100 wide and 200 high, on cell borders: the cleaner wipes up to it on three sides.
    ReachMap m = map(Side.FRONT, 0.005, rock(0, "block", Kind.DRY, box(200, 10, 0, 300, 110, 200)));
    for (int c = 0; c < m.columns(); c++) {
      for (int r = 0; r < m.rows(); r++) {
        boolean behind = c >= 40 && c < 60 && r < 40;
        assertThat(m.state(c, r)).isEqualTo(behind ? State.BLOCKED : State.WIPED);
      }
    }
    assertThat(m.obstacles()).extracting(ReachMap.Obstacle::name).containsExactly("block");
  }

  @Test
  void underAShelfAlongTheWholePaneNothingIsReached() {
    ReachMap m = map(Side.FRONT, 0.005, rock(0, "shelf", Kind.DRY, box(0, 10, 150, 600, 110, 200)));
    // Derived: above 200 wiped; below 150 it fits (60 high) but cannot come there; between, it does not fit.
    assertThat(m.state(60, 10)).isEqualTo(State.CUT_OFF);
    assertThat(m.state(60, 29)).isEqualTo(State.CUT_OFF);
    assertThat(m.state(60, 30)).isEqualTo(State.BLOCKED);
    assertThat(m.state(60, 39)).isEqualTo(State.BLOCKED);
    assertThat(m.state(60, 40)).isEqualTo(State.WIPED);
    assertThat(m.share(State.CUT_OFF)).isCloseTo(150.0 / 360, within(1e-9));
  }

  @Test
  void aSlotNarrowerThanTheCleanerIsBlocked() {
    for (double slot : new double[] {85, 90 + 5}) {
      ReachMap m = map(Side.FRONT, 0.005, rock(0, "left", Kind.DRY, box(100, 10, 0, 200, 110, 200)),
          rock(1, "right", Kind.DRY, box(200 + slot, 10, 0, 400, 110, 200)));
      // A slot exactly as wide as the cleaner plus one cell is found; one of 85 for a cleaner of 90 is not.
      assertThat(m.state(45, 10)).isEqualTo(slot > 90 ? State.WIPED : State.BLOCKED);
    }
  }

  @Test
  void theBackAndSidePanesHaveTheirOwnCoordinates() {
    PlacedRock corner = rock(0, "corner", Kind.DRY, box(500, 200, 0, 595, 295, 100));
    // At the right pane the rock lies far along (to the back), at the back pane far along (to the right).
    assertThat(map(Side.RIGHT, 0.005, corner).state(45, 5)).isEqualTo(State.BLOCKED);
    assertThat(map(Side.RIGHT, 0.005, corner).state(5, 5)).isEqualTo(State.WIPED);
    assertThat(map(Side.BACK, 0.005, corner).state(110, 5)).isEqualTo(State.BLOCKED);
    assertThat(map(Side.BACK, 0.005, corner).state(5, 5)).isEqualTo(State.WIPED);
    assertThat(map(Side.FRONT, 0.005, corner).share(State.WIPED)).isEqualTo(1);
  }

  @Test
  void sandKeepsTheCleanerUp() {
    Scene s = new Scene("test", GapScenes.TANK, SCENE.floor(), new Scene.Sand(40, 1.5), SCENE.water(), List.of(), List.of(),
        List.of(), List.of(), List.of(), Settings.DEFAULT);
    ReachMap m = ReachMap.of(s, List.of(), Side.FRONT, CLEANER, 0.005);
    assertThat(m.lowM()).isCloseTo(0.04, within(1e-12));
    assertThat(m.rows()).isEqualTo(64);
  }

  @Test
  void aCleanerLongerThanThePaneWipesNothing() {
    ReachMap m = ReachMap.of(SCENE, List.of(), Side.LEFT, new Cleaner(0.301, 0.06, 0.03), 0.005);
    assertThat(m.share(State.BLOCKED)).isEqualTo(1);
    assertThat(ReachMap.of(SCENE, List.of(), Side.LEFT, new Cleaner(0.3, 0.06, 0.03), 0.005).share(State.WIPED)).isEqualTo(1);
  }

  /**
   * Against a slow twin that knows only small cubes and boxes. It brackets the map: what the map calls wiped is wiped
   * when the cleaner is tried only at the middle of each place against cubes whose middles lie in a rock; and whatever
   * is wiped with the cleaner and the rocks made larger by a place and a cube is wiped in the map.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void agreesWithASearchOverSmallCubes(long seed) {
    Random random = new Random(seed);
    List<PlacedRock> rocks = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Vec3 at = new Vec3(0.1 + 0.13 * i, 0.05 + 0.04 * random.nextDouble(), 0.06 + 0.2 * random.nextDouble());
      rocks.add(rock(i, "stone " + i, Kind.DRY, GapScenes.stone(random, 0.1 + 0.05 * random.nextDouble(), at)));
    }
    double cell = 0.02;
    double cube = 0.004;
    ReachMap m = ReachMap.of(SCENE, rocks, Side.FRONT, CLEANER, cell);
    boolean[][][] lenient = twin(cubes(rocks, cube, 0, CLEANER.thicknessM()), cell, 0);
    double slack = cube * Math.sqrt(3) / 2;
    boolean[][][] strict = twin(cubes(rocks, cube, slack, CLEANER.thicknessM() + slack), cell, cell / 2 + cube);
    int wiped = 0;
    for (int c = 0; c < m.columns(); c++) {
      for (int r = 0; r < m.rows(); r++) {
        State state = m.state(c, r);
        if (state == State.WIPED) assertThat(lenient[0][c][r]).as("seed %d cell %d %d", seed, c, r).isTrue();
        if (state == State.BLOCKED) assertThat(strict[1][c][r]).as("seed %d cell %d %d", seed, c, r).isFalse();
        if (strict[0][c][r]) assertThat(state).as("seed %d cell %d %d", seed, c, r).isEqualTo(State.WIPED);
        if (state == State.WIPED) wiped++;
      }
    }
    assertThat(wiped).isBetween(m.columns() * m.rows() / 10, m.columns() * m.rows() - 1);
  }

  /** Middles {x, z} of the cubes in front of {@code depth} that lie in a rock or within {@code slack} of its planes. */
  private static List<double[]> cubes(List<PlacedRock> rocks, double cube, double slack, double depth) {
    List<double[]> found = new ArrayList<>();
    for (double y = cube / 2 - 0.08; y < depth; y += cube) {
      for (double x = cube / 2 - 0.08; x < 0.68; x += cube) {
        for (double z = cube / 2 - 0.08; z < 0.48; z += cube) {
          for (PlacedRock p : rocks) if (holds(p.lobes().get(0), x, y, z, slack)) found.add(new double[] {x, z});
        }
      }
    }
    return found;
  }

  private static boolean holds(Hull h, double x, double y, double z, double slack) {
    for (Hull.Face f : h.faces()) {
      if (f.normal().x() * x + f.normal().y() * y + f.normal().z() * z > f.offset() + slack) return false;
    }
    return true;
  }

  /** {wiped from the rim, fits} by pane cell; the cleaner tried at the middle of each place, larger by {@code margin}. */
  private static boolean[][][] twin(List<double[]> cubes, double cell, double margin) {
    double l = CLEANER.lengthM() / 2;
    double h = CLEANER.heightM() / 2;
    int nx = (int) Math.ceil((0.6 - 2 * l) / cell - 1e-9);
    int nz = (int) Math.ceil(0.4 / cell - 1e-9) + 1;
    boolean[][] free = new boolean[nx][nz];
    for (int i = 0; i < nx; i++) {
      for (int j = 0; j < nz; j++) {
        double x = (l + i * cell + Math.min(0.6 - l, l + (i + 1) * cell)) / 2;
        double z = h + (j + 0.5) * cell;
        free[i][j] = cubes.stream().noneMatch(c -> Math.abs(c[0] - x) < l + margin && Math.abs(c[1] - z) < h + margin);
      }
    }
    boolean[][] reached = new boolean[nx][nz];
    ArrayDeque<int[]> next = new ArrayDeque<>();
    for (int i = 0; i < nx; i++) next.add(new int[] {i, nz - 1});
    while (!next.isEmpty()) {
      int[] p = next.remove();
      if (p[0] < 0 || p[0] >= nx || p[1] < 0 || p[1] >= nz || !free[p[0]][p[1]] || reached[p[0]][p[1]]) continue;
      reached[p[0]][p[1]] = true;
      for (int[] d : new int[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) next.add(new int[] {p[0] + d[0], p[1] + d[1]});
    }
    int columns = (int) Math.ceil(0.6 / cell - 1e-9);
    int rows = (int) Math.ceil(0.36 / cell - 1e-9);
    boolean[][][] covered = new boolean[2][columns][rows];
    for (int c = 0; c < columns; c++) {
      for (int r = 0; r < rows; r++) {
        for (int i = 0; i < nx; i++) {
          for (int j = 0; j < nz; j++) {
            boolean over = i * cell <= c * cell + 1e-9 && Math.min(0.6, (c + 1) * cell) <= Math.min(0.6, (i + 1) * cell + 2 * l) + 1e-9
                && j * cell <= r * cell + 1e-9 && (r + 1) * cell <= (j + 1) * cell + 2 * h + 1e-9;
            covered[0][c][r] |= over && reached[i][j];
            covered[1][c][r] |= over && free[i][j];
          }
        }
      }
    }
    return covered;
  }
}
