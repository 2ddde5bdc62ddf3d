package holdfast.engine.gap;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Dead water: pockets wide enough for a ball of a given size that such a ball cannot leave. Where a ball of that size does
 * not pass, water hardly does either, and waste stays.
 *
 * <p>The problem: the places of the ball's centre, at least its radius from rock, glass, floor and sand, fall into
 * connected parts; the parts that do not reach the water's surface are pockets. Solved on a lattice of a quarter of the
 * ball's size: rock is entered column by column where a vertical line passes a hull, the distance to the nearest solid is
 * exact on the lattice as far as the ball reaches, parts are found by flooding. An opening is therefore told from the limit
 * only to within about half a lattice step on either side, an eighth of the size. The lattice ends one ball beyond the
 * rocks: from there nothing but glass is in the way, so a ball that gets there is out.
 *
 * <p>Devices are not counted as solid: water goes through them. Crevices too tight for the ball itself are no pockets.
 */
public final class DeadWater {
  private static final double STEPS_PER_BALL = 4;

  /** Lattice points above which the lattice is made coarser; 400 MB are not worth a hint about flow. */
  private static final double MOST_POINTS = 6e6;

  private final int nx;
  private final int ny;
  private final int nz;
  private final double stepM;
  private final double lengthM;
  private final double widthM;
  /** Corner of the lattice. */
  private final double leftM;
  private final double frontM;
  private final double lowM;
  /** Number of the rock at each point, -1 for water; x runs fastest, then y, then z. */
  private final int[] rockAt;

  private DeadWater(double lengthM, double widthM, double[] from, double[] to, double stepM) {
    this.stepM = stepM;
    this.lengthM = lengthM;
    this.widthM = widthM;
    leftM = from[0];
    frontM = from[1];
    lowM = from[2];
    nx = points(from[0], to[0]);
    ny = points(from[1], to[1]);
    nz = points(from[2], to[2]);
    rockAt = new int[nx * ny * nz];
    Arrays.fill(rockAt, -1);
  }

  private int points(double from, double to) {
    return Math.max(1, (int) Math.ceil((to - from) / stepM - 1e-9));
  }

  /**
   * A pocket.
   *
   * @param volumeM3 water that the ball sweeps inside it
   * @param centre mean place of the ball's centre, metres
   * @param rocks names of the rocks that close it in, in the order of the placements
   * @param cells middles of the lattice's cells that the ball sweeps, metres: together the volume
   * @param cellM side of a cell, metres
   */
  public record Pocket(double volumeM3, Vec3 centre, List<String> rocks, List<Vec3> cells, double cellM) {
    public Pocket {
      rocks = List.copyOf(rocks);
      cells = List.copyOf(cells);
    }
  }

  /**
   * The pockets of a scene, largest first.
   *
   * @param names of the placed rocks
   * @param hulls their lobes in place, metres
   */
  public static List<Pocket> of(Scene scene, List<String> names, List<List<Hull>> hulls) {
    double ball = scene.settings().get(Setting.DEAD_WATER_MM) * 1e-3;
    double low = Math.max(scene.floor().topMm(), scene.sand().depthMm()) * 1e-3;
    return find(scene.tank().lengthMm() * 1e-3, scene.tank().widthMm() * 1e-3, low, scene.water().levelMm() * 1e-3, ball,
        names, hulls);
  }

  static List<Pocket> find(
      double lengthM, double widthM, double lowM, double levelM, double ballM, List<String> names, List<List<Hull>> hulls) {
    if (!(levelM > lowM) || hulls.isEmpty()) return List.of();
    double margin = ballM * (1 + 2 / STEPS_PER_BALL);
    double[] from = {Math.max(0, reach(hulls, Vec3.X, -1) - margin), Math.max(0, reach(hulls, Vec3.Y, -1) - margin), lowM};
    double[] to = {Math.min(lengthM, reach(hulls, Vec3.X, 1) + margin), Math.min(widthM, reach(hulls, Vec3.Y, 1) + margin),
        Math.min(levelM, Math.max(lowM, reach(hulls, Vec3.Z, 1)) + margin)};
    double volume = (to[0] - from[0]) * (to[1] - from[1]) * (to[2] - from[2]);
    if (!(volume > 0)) return List.of();
    double step = Math.max(ballM / STEPS_PER_BALL, Math.cbrt(volume / MOST_POINTS));
    DeadWater w = new DeadWater(lengthM, widthM, from, to, step);
    for (int r = 0; r < hulls.size(); r++) for (Hull h : hulls.get(r)) w.enter(h, r);
    return w.pockets(ballM / 2, names);
  }

  private static double reach(List<List<Hull>> hulls, Vec3 axis, int sign) {
    Vec3 along = axis.times(sign);
    return sign * hulls.stream().flatMap(List::stream).mapToDouble(h -> h.reach(along)).max().orElse(0);
  }

  /** Marks the points inside a hull: on each vertical line they are an interval. */
  private void enter(Hull h, int rock) {
    int x0 = Math.max(0, (int) Math.floor((-h.reach(Vec3.X.negated()) - leftM) / stepM - 0.5));
    int x1 = Math.min(nx - 1, (int) Math.ceil((h.reach(Vec3.X) - leftM) / stepM));
    int y0 = Math.max(0, (int) Math.floor((-h.reach(Vec3.Y.negated()) - frontM) / stepM - 0.5));
    int y1 = Math.min(ny - 1, (int) Math.ceil((h.reach(Vec3.Y) - frontM) / stepM));
    for (int j = y0; j <= y1; j++) {
      for (int i = x0; i <= x1; i++) {
        double from = Double.NEGATIVE_INFINITY;
        double to = Double.POSITIVE_INFINITY;
        for (Hull.Face f : h.faces()) {
          double room = f.offset() - f.normal().x() * x(i) - f.normal().y() * y(j);
          double up = f.normal().z();
          if (Math.abs(up) < 1e-12) {
            if (room < 0) to = Double.NEGATIVE_INFINITY;
          } else if (up > 0) {
            to = Math.min(to, room / up);
          } else {
            from = Math.max(from, room / up);
          }
        }
        int k0 = Math.max(0, (int) Math.ceil((from - lowM) / stepM - 0.5));
        int k1 = Math.min(nz - 1, (int) Math.floor((to - lowM) / stepM - 0.5));
        for (int k = k0; k <= k1; k++) rockAt[index(i, j, k)] = rock;
      }
    }
  }

  private double x(int i) {
    return leftM + (i + 0.5) * stepM;
  }

  private double y(int j) {
    return frontM + (j + 0.5) * stepM;
  }

  private int index(int i, int j, int k) {
    return (k * ny + j) * nx + i;
  }

  private Vec3 middle(int p) {
    return new Vec3(x(p % nx), y(p / nx % ny), lowM + (p / nx / ny + 0.5) * stepM);
  }

  private List<Pocket> pockets(double radiusM, List<String> names) {
    // Points stand half a step inside the solid's skin on the average.
    double least = radiusM / stepM + 0.5;
    int[] squared = distances((int) Math.ceil(least));
    boolean[] roomy = new boolean[rockAt.length];
    for (int k = 0; k < nz; k++) {
      for (int j = 0; j < ny; j++) {
        double pane = Math.min(y(j), widthM - y(j));
        for (int i = 0; i < nx; i++) {
          double wall = Math.min(Math.min(x(i), lengthM - x(i)), Math.min(pane, (k + 0.5) * stepM)) / stepM + 0.5;
          roomy[index(i, j, k)] = Math.min(wall, Math.sqrt(squared[index(i, j, k)])) >= least - 1e-9;
        }
      }
    }
    boolean[] seen = new boolean[rockAt.length];
    int[] queue = new int[rockAt.length];
    for (int p = 0; p < rockAt.length; p++) if (roomy[p] && !seen[p] && isOut(p)) flood(p, roomy, seen, queue);
    List<Pocket> out = new ArrayList<>();
    for (int p = 0; p < roomy.length; p++) {
      if (!roomy[p] || seen[p]) continue;
      out.add(pocket(Arrays.copyOf(queue, flood(p, roomy, seen, queue)), radiusM, names));
    }
    out.sort(Comparator.comparingDouble(Pocket::volumeM3).reversed());
    return out;
  }

  /** At the lattice's top, or at an end of it that is not against a pane. */
  private boolean isOut(int p) {
    int i = p % nx;
    int j = p / nx % ny;
    boolean left = i == 0 && leftM > 0;
    boolean right = i == nx - 1 && leftM + nx * stepM < lengthM - 1e-9;
    boolean front = j == 0 && frontM > 0;
    boolean back = j == ny - 1 && frontM + ny * stepM < widthM - 1e-9;
    return left || right || front || back || p / nx / ny == nz - 1;
  }

  /** All points joined to one through faces, put into {@code queue}; returns how many. */
  private int flood(int start, boolean[] roomy, boolean[] seen, int[] queue) {
    seen[start] = true;
    queue[0] = start;
    int end = 1;
    for (int next = 0; next < end; next++) {
      int p = queue[next];
      int i = p % nx;
      int j = p / nx % ny;
      int k = p / nx / ny;
      if (i > 0) end = visit(p - 1, roomy, seen, queue, end);
      if (i < nx - 1) end = visit(p + 1, roomy, seen, queue, end);
      if (j > 0) end = visit(p - nx, roomy, seen, queue, end);
      if (j < ny - 1) end = visit(p + nx, roomy, seen, queue, end);
      if (k > 0) end = visit(p - nx * ny, roomy, seen, queue, end);
      if (k < nz - 1) end = visit(p + nx * ny, roomy, seen, queue, end);
    }
    return end;
  }

  private static int visit(int p, boolean[] roomy, boolean[] seen, int[] queue, int end) {
    if (!roomy[p] || seen[p]) return end;
    seen[p] = true;
    queue[end] = p;
    return end + 1;
  }

  /** What the ball sweeps from its places in a pocket, and the rocks that it comes near. */
  private Pocket pocket(int[] centres, double radiusM, List<String> names) {
    int reach = (int) Math.ceil(radiusM / stepM);
    Set<Integer> swept = new TreeSet<>();
    Set<Integer> near = new TreeSet<>();
    Vec3 sum = Vec3.ZERO;
    for (int p : centres) {
      int i = p % nx;
      int j = p / nx % ny;
      int k = p / nx / ny;
      sum = sum.plus(middle(p));
      for (int c = Math.max(0, k - reach - 1); c <= Math.min(nz - 1, k + reach + 1); c++) {
        for (int b = Math.max(0, j - reach - 1); b <= Math.min(ny - 1, j + reach + 1); b++) {
          for (int a = Math.max(0, i - reach - 1); a <= Math.min(nx - 1, i + reach + 1); a++) {
            int q = index(a, b, c);
            if (rockAt[q] >= 0) near.add(rockAt[q]);
            else if (Math.hypot(Math.hypot(a - i, b - j), c - k) * stepM <= radiusM) swept.add(q);
          }
        }
      }
    }
    return new Pocket(swept.size() * Math.pow(stepM, 3), sum.times(1.0 / centres.length),
        near.stream().map(names::get).toList(), swept.stream().map(this::middle).toList(), stepM);
  }

  /**
   * Squared distance, in steps, of every point to the nearest solid one, axis by axis; what is farther than {@code most} steps
   * is told as at least that.
   */
  private int[] distances(int most) {
    int[] f = new int[rockAt.length];
    for (int p = 0; p < f.length; p++) f[p] = rockAt[p] >= 0 ? 0 : most * most;
    int[] line = new int[Math.max(nx, Math.max(ny, nz))];
    for (int k = 0; k < nz; k++) {
      for (int j = 0; j < ny; j++) along(f, index(0, j, k), 1, nx, most, line);
      for (int i = 0; i < nx; i++) along(f, index(i, 0, k), nx, ny, most, line);
    }
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) along(f, index(i, j, 0), nx * ny, nz, most, line);
    }
    return f;
  }

  /** The least of the squared distances on one line, each with the square of the way to it. */
  private static void along(int[] f, int start, int stride, int n, int most, int[] line) {
    boolean near = false;
    for (int q = 0; q < n; q++) {
      line[q] = f[start + q * stride];
      near |= line[q] < most * most;
    }
    if (!near) return;
    for (int q = 0; q < n; q++) {
      int least = line[q];
      for (int d = 1; d < most; d++) {
        if (q >= d) least = Math.min(least, line[q - d] + d * d);
        if (q + d < n) least = Math.min(least, line[q + d] + d * d);
      }
      f[start + q * stride] = least;
    }
  }
}
