package holdfast.engine;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * Layouts of any number of rocks that touch by construction, for tests and benchmarks: the same family, number and seed
 * give the same scene. All stones are prisms with level beds, laid on each other; edges and corners lie where a seeded
 * draw puts them, so no two stones are alike.
 */
public final class SceneBuilders {
  /** Length, depth and height of a stone before it is drawn askew, millimetres. */
  private static final double LENGTH = 140;

  private static final double DEPTH = 120;
  private static final double HEIGHT = 70;

  /** Share of a side by which a corner is off at most. */
  private static final double ASKEW = 0.1;

  /** Stones of one tower. */
  private static final int TOWER = 5;

  /** Newtons; small fish. Heaps of loose stones of two kilograms bear it. */
  private static final double TIER_N = 5;

  /** The families. */
  public enum Family {
    /** Towers of five stones, apart from each other. */
    TOWERS,
    /** A wall one stone deep in running bond: neighbours touch at their ends, each course is one stone shorter. */
    WALL,
    /** Layers of stones that touch all four neighbours, each layer laid across the joints of the one beneath. */
    PILE;

    /** A scene of {@code count} rocks. */
    public Scene of(int count, long seed) {
      List<List<Vec3>> stones = switch (this) {
        case TOWERS -> towers(count, new Random(seed));
        case WALL -> wall(count, new Random(seed));
        case PILE -> pile(count, new Random(seed));
      };
      return scene(name().toLowerCase(Locale.ROOT) + " of " + count, stones);
    }
  }

  private SceneBuilders() {}

  private static List<List<Vec3>> towers(int count, Random random) {
    List<List<Vec3>> out = new ArrayList<>();
    int columns = (int) Math.ceil(Math.sqrt(Math.ceil((double) count / TOWER)));
    for (int i = 0; i < count; i++) {
      int tower = i / TOWER;
      int level = i % TOWER;
      double x = 1.5 * LENGTH * (tower % columns);
      double y = 1.5 * LENGTH * (tower / columns);
      double narrow = 1 - 0.05 * level;
      double[][] corners = new double[4][];
      for (int k = 0; k < 4; k++) {
        double sideX = k == 0 || k == 3 ? -0.5 : 0.5;
        double sideY = k < 2 ? -0.5 : 0.5;
        corners[k] = new double[] {
          x + narrow * LENGTH * sideX * (1 - ASKEW * random.nextDouble()),
          y + narrow * DEPTH * sideY * (1 - ASKEW * random.nextDouble())};
      }
      out.add(prism(corners, HEIGHT * level, HEIGHT * (level + 1)));
    }
    return out;
  }

  private static List<List<Vec3>> wall(int count, Random random) {
    int longest = 2;
    while (stones(longest) < count) longest++;
    List<List<Vec3>> out = new ArrayList<>();
    for (int course = 0; out.size() < count; course++) {
      double[][] front = joints(longest - course + 1, LENGTH * course / 2, random);
      for (int i = 0; i + 1 < front.length && out.size() < count; i++) {
        double[][] corners = {
          {front[i][0], 0}, {front[i + 1][0], 0}, {front[i + 1][1], DEPTH}, {front[i][1], DEPTH}};
        out.add(prism(corners, HEIGHT * course, HEIGHT * (course + 1)));
      }
    }
    return out;
  }

  /** Of a wall whose courses end at three fifths of a triangle's height. */
  private static int stones(int longest) {
    int sum = 0;
    for (int course = 0; course < Math.ceil(0.6 * longest); course++) sum += longest - course;
    return sum;
  }

  /** Where the joints of a course meet its front and its back. */
  private static double[][] joints(int count, double from, Random random) {
    double[][] x = new double[count][];
    for (int i = 0; i < count; i++) {
      x[i] = new double[] {from + LENGTH * (i + askew(random)), from + LENGTH * (i + askew(random))};
    }
    return x;
  }

  private static List<List<Vec3>> pile(int count, Random random) {
    int along = 1;
    int across = 1;
    while (pyramid(along, across) < count) {
      if (along <= across) along++;
      else across++;
    }
    List<List<Vec3>> out = new ArrayList<>();
    for (int layer = 0; out.size() < count; layer++) {
      int m = along - layer;
      int n = across - layer;
      double[][][] node = new double[m + 1][n + 1][];
      for (int i = 0; i <= m; i++) {
        for (int j = 0; j <= n; j++) {
          node[i][j] = new double[] {LENGTH * (i + 0.5 * layer + askew(random)), DEPTH * (j + 0.5 * layer + askew(random))};
        }
      }
      for (int i = 0; i < m; i++) {
        for (int j = 0; j < n && out.size() < count; j++) {
          double[][] corners = {node[i][j], node[i + 1][j], node[i + 1][j + 1], node[i][j + 1]};
          out.add(prism(corners, HEIGHT * layer, HEIGHT * (layer + 1)));
        }
      }
    }
    return out;
  }

  private static int pyramid(int a, int b) {
    int sum = 0;
    for (int k = 0; k < Math.min(a, b); k++) sum += (a - k) * (b - k);
    return sum;
  }

  private static double askew(Random random) {
    return ASKEW * (2 * random.nextDouble() - 1);
  }

  private static List<Vec3> prism(double[][] corners, double bottom, double top) {
    List<Vec3> out = new ArrayList<>();
    for (double z : new double[] {bottom, top}) for (double[] c : corners) out.add(new Vec3(c[0], c[1], z));
    return out;
  }

  /** Stones on the bare bottom of a tank that is large enough, filled with sea water. */
  private static Scene scene(String name, List<List<Vec3>> stones) {
    double[] low = {Double.MAX_VALUE, Double.MAX_VALUE};
    double[] high = new double[3];
    for (List<Vec3> s : stones) {
      for (Vec3 p : s) {
        low[0] = Math.min(low[0], p.x());
        low[1] = Math.min(low[1], p.y());
        high[0] = Math.max(high[0], p.x());
        high[1] = Math.max(high[1], p.y());
        high[2] = Math.max(high[2], p.z());
      }
    }
    double room = 100;
    double level = Math.ceil(1.6 * high[2]);
    Tank tank = new Tank(Math.ceil(high[0] - low[0] + 2 * room), Math.ceil(high[1] - low[1] + 2 * room), level + 50, 12, 19,
        Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    List<Rock> rocks = new ArrayList<>();
    List<Placement> placements = new ArrayList<>();
    for (int i = 0; i < stones.size(); i++) {
      Vec3 own = stones.get(i).get(0);
      Rock.Form form = new Rock.Points(stones.get(i).stream().map(p -> p.minus(own)).toList());
      Rock rock = new Rock("stone " + (i + 1), Rock.Kind.DRY, form,
          new Rock.BulkDensity(1.8), 0, false, false, OptionalDouble.empty());
      rocks.add(rock);
      placements.add(new Placement(rock.name(), own.plus(new Vec3(room - low[0], room - low[1], 0)), Quat.IDENTITY, false));
    }
    Floor bare = new Floor(Floor.Kind.BARE, Floor.DEFAULT.cellMm(), Floor.DEFAULT.wallMm(), 0, 0, Optional.empty());
    return new Scene(name, tank, bare, new Scene.Sand(0, 1.5), new Scene.Water(level, 35, 25), List.of(), List.of(),
        rocks, placements, List.of(), Settings.DEFAULT.with(Setting.PUSH_TIER_N, TIER_N));
  }
}
