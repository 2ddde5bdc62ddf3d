package holdfast.engine.gap;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Dead water: pockets wide enough for a ball of a given size that such a ball cannot leave. Where a ball of that size does
 * not pass, water hardly does either, and waste stays.
 *
 * <p>The problem: the places of the ball's centre, at least its radius from rock, glass, floor and sand, fall into
 * connected parts; the parts that do not reach the water's surface are pockets. Solved on a lattice of a quarter of the
 * ball's size: rock is entered column by column where a vertical line passes a hull, the distance to the nearest solid
 * is exact on the lattice, parts are found by flooding. An opening is therefore told from the limit only to within about
 * half a lattice step on either side, an eighth of the size. The lattice ends one ball beyond the rocks: from there nothing
 * but glass is in the way, so a ball that gets there is out.
 *
 * <p>Devices are not counted as solid: water goes through them. Crevices too tight for the ball itself are no pockets.
 *
 * @see "Felzenszwalb &amp; Huttenlocher 2012, Distance transforms of sampled functions, Theory of Computing 8:415"
 */
public final class DeadWater {
  private static final double STEPS_PER_BALL = 4;

  /** Lattice points above which the lattice is made coarser; 400 MB are not worth a hint about flow. */
  private static final double MOST_POINTS = 6e6;

  private static final double FAR = 1e12;

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
    double[] squared = new double[rockAt.length];
    for (int p = 0; p < squared.length; p++) squared[p] = rockAt[p] >= 0 ? 0 : FAR;
    distances(squared);
    // Points stand half a step inside the solid's skin on the average.
    double least = radiusM / stepM + 0.5;
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
    for (int p = 0; p < rockAt.length; p++) if (roomy[p] && !seen[p] && isOut(p)) flood(p, roomy, seen);
    List<Pocket> out = new ArrayList<>();
    for (int p = 0; p < roomy.length; p++) {
      if (roomy[p] && !seen[p]) out.add(pocket(flood(p, roomy, seen), radiusM, names));
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

  /** All points joined to one through faces. */
  private List<Integer> flood(int start, boolean[] roomy, boolean[] seen) {
    List<Integer> out = new ArrayList<>();
    Deque<Integer> open = new ArrayDeque<>(List.of(start));
    seen[start] = true;
    while (!open.isEmpty()) {
      int p = open.poll();
      out.add(p);
      int i = p % nx;
      int j = p / nx % ny;
      int k = p / nx / ny;
      if (i > 0) visit(p - 1, roomy, seen, open);
      if (i < nx - 1) visit(p + 1, roomy, seen, open);
      if (j > 0) visit(p - nx, roomy, seen, open);
      if (j < ny - 1) visit(p + nx, roomy, seen, open);
      if (k > 0) visit(p - nx * ny, roomy, seen, open);
      if (k < nz - 1) visit(p + nx * ny, roomy, seen, open);
    }
    return out;
  }

  private static void visit(int p, boolean[] roomy, boolean[] seen, Deque<Integer> open) {
    if (!roomy[p] || seen[p]) return;
    seen[p] = true;
    open.add(p);
  }

  /** What the ball sweeps from its places in a pocket, and the rocks that it comes near. */
  private Pocket pocket(List<Integer> centres, double radiusM, List<String> names) {
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
    return new Pocket(swept.size() * Math.pow(stepM, 3), sum.times(1.0 / centres.size()),
        near.stream().map(names::get).toList(), swept.stream().map(this::middle).toList(), stepM);
  }

  /** Squared distance, in steps, of every point to the nearest solid one: one axis after the other. */
  private void distances(double[] f) {
    int longest = Math.max(nx, Math.max(ny, nz));
    double[] line = new double[longest];
    double[] result = new double[longest];
    int[] vertex = new int[longest];
    double[] border = new double[longest + 1];
    for (int k = 0; k < nz; k++) {
      for (int j = 0; j < ny; j++) along(f, index(0, j, k), 1, nx, line, result, vertex, border);
      for (int i = 0; i < nx; i++) along(f, index(i, 0, k), nx, ny, line, result, vertex, border);
    }
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) along(f, index(i, j, 0), nx * ny, nz, line, result, vertex, border);
    }
  }

  /** The lower envelope of the parabolas on one line. */
  private static void along(
      double[] f, int start, int stride, int n, double[] line, double[] result, int[] vertex, double[] border) {
    for (int q = 0; q < n; q++) line[q] = f[start + q * stride];
    int k = 0;
    vertex[0] = 0;
    border[0] = Double.NEGATIVE_INFINITY;
    border[1] = Double.POSITIVE_INFINITY;
    for (int q = 1; q < n; q++) {
      double s = meet(line, q, vertex[k]);
      while (s <= border[k]) s = meet(line, q, vertex[--k]);
      vertex[++k] = q;
      border[k] = s;
      border[k + 1] = Double.POSITIVE_INFINITY;
    }
    k = 0;
    for (int q = 0; q < n; q++) {
      while (border[k + 1] < q) k++;
      double d = q - vertex[k];
      result[q] = d * d + line[vertex[k]];
    }
    for (int q = 0; q < n; q++) f[start + q * stride] = Math.min(FAR, result[q]);
  }

  private static double meet(double[] line, int q, int v) {
    return ((line[q] + (double) q * q) - (line[v] + (double) v * v)) / (2.0 * q - 2.0 * v);
  }
}
