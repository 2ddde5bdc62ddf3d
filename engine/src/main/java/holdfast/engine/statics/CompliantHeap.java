package holdfast.engine.statics;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A heap whose contacts give a little: linear springs at the corners that only push, springs along the patch that slip at
 * a friction limit held from outside, and linear springs in bonds. One call of {@link #minimise} finds the small movement
 * {@code d} that makes
 *
 * <pre>
 *   1/2 r d'M d + (energy of the springs after d) - load . d
 * </pre>
 *
 * least: one implicit step of inertia {@code r M}, with friction limits constant. That is convex, so Newton's method with
 * a line search finds it.
 *
 * <p>Scaled: forces by the heap's force, lengths of levers by its length, movements by force over stiffness.
 *
 * @see <a href="https://doi.org/10.1007/3-540-31761-9">Wriggers 2006, Computational Contact Mechanics</a>, for the return
 *     to the friction limit and its derivative
 */
final class CompliantHeap {
  private static final int COLUMN = 12;

  final Heap heap;
  final double forceN;
  final double lengthM;
  final Patch[] patches;
  final int links;
  final int bodies;
  final int[] a;
  final int[] b;
  final boolean[] bearing;
  final double[] friction;
  /** First corner of each link; corners of bearings only. */
  final int[] cornerStart;
  /** First bonded spring of each link; springs of bonds and rods only. */
  final int[] springStart;
  /** Twelve figures a corner: the wrench of a unit push on a and on b. */
  final double[] cornerColumn;
  final double[] cornerStiffness;
  /** Three columns a link: shear along first, along second, twist. */
  final double[] slipColumn;
  final double[] springColumn;
  /** For every bonded link its stiffness matrix. */
  final double[][] springStiffness;
  final double[] mass;
  final BlockCholesky factor;

  private final int[] blockAa;
  private final int[] blockBb;
  private final int[] blockAb;
  private final boolean[] flipped;

  // What a step works on.
  final double[] step;
  final double[] push;
  final double[] slip;
  final double[] trial;
  final double[] spring;
  private final double[] residual;
  private final double[] direction;
  private final double[] attempt;
  private double energy;
  int solves;

  CompliantHeap(Heap heap, double forceN, double lengthM) {
    this.heap = heap;
    this.forceN = forceN;
    this.lengthM = lengthM;
    links = heap.links().size();
    bodies = heap.bodies().size();
    patches = heap.links().stream().map(l -> new Patch(l.normal(), l.polygon())).toArray(Patch[]::new);
    a = new int[links];
    b = new int[links];
    bearing = new boolean[links];
    friction = new double[links];
    cornerStart = new int[links + 1];
    springStart = new int[links + 1];
    springStiffness = new double[links][];
    Elements elements = new Elements(heap, forceN, lengthM);
    List<Element> bonded = new ArrayList<>();
    for (int i = 0; i < links; i++) {
      Link l = heap.links().get(i);
      a[i] = l.a();
      b[i] = l.b();
      bearing[i] = l instanceof Link.Bearing;
      friction[i] = l instanceof Link.Bearing bl ? bl.friction() : 0;
      Element e = l instanceof Link.Bond bl ? elements.bond(bl, patches[i]) : l instanceof Link.Rod r ? elements.rod(r) : null;
      bonded.add(e);
      cornerStart[i + 1] = cornerStart[i] + (bearing[i] ? patches[i].corners.size() : 0);
      springStart[i + 1] = springStart[i] + (e == null ? 0 : e.size());
    }
    cornerColumn = new double[COLUMN * cornerStart[links]];
    cornerStiffness = new double[cornerStart[links]];
    slipColumn = new double[3 * COLUMN * links];
    springColumn = new double[COLUMN * springStart[links]];
    for (int i = 0; i < links; i++) {
      if (bearing[i]) {
        int m = patches[i].corners.size();
        for (int k = 0; k < m; k++) {
          int c = cornerStart[i] + k;
          force(cornerColumn, COLUMN * c, i, patches[i].normal, patches[i].corners.get(k));
          cornerStiffness[c] = 1.0 / m;
        }
      } else {
        Element e = bonded.get(i);
        for (int c = 0; c < e.size(); c++) {
          int to = COLUMN * (springStart[i] + c);
          for (int r = 0; r < 6; r++) {
            springColumn[to + r] = e.wrenchA()[r * e.size() + c];
            if (b[i] >= 0) springColumn[to + 6 + r] = e.wrenchB()[r * e.size() + c];
          }
        }
        springStiffness[i] = stiffness(heap.links().get(i), patches[i], e.size());
      }
    }
    mass = new double[6 * bodies];
    for (int i = 0; i < bodies; i++) {
      Heap.Body body = heap.bodies().get(i);
      double m = Math.max(body.massKg(), Double.MIN_NORMAL) * 9.81 / forceN;
      double arm = body.sizeM() / 2 / lengthM;
      for (int k = 0; k < 3; k++) {
        mass[6 * i + k] = m;
        mass[6 * i + 3 + k] = 0.4 * m * arm * arm;
      }
    }
    List<int[]> pairs = new ArrayList<>();
    for (int i = 0; i < links; i++) {
      if (b[i] >= 0) pairs.add(new int[] {a[i], b[i]});
    }
    factor = new BlockCholesky(bodies, pairs);
    blockAa = new int[links];
    blockBb = new int[links];
    blockAb = new int[links];
    flipped = new boolean[links];
    for (int i = 0; i < links; i++) {
      blockAa[i] = factor.blockOf(a[i], a[i]) * BlockCholesky.BB;
      if (b[i] >= 0) {
        blockBb[i] = factor.blockOf(b[i], b[i]) * BlockCholesky.BB;
        blockAb[i] = factor.blockOf(a[i], b[i]) * BlockCholesky.BB;
        flipped[i] = factor.flipped(a[i], b[i]);
      }
    }
    step = new double[6 * bodies];
    residual = new double[6 * bodies];
    direction = new double[6 * bodies];
    attempt = new double[6 * bodies];
    push = new double[cornerStart[links]];
    slip = new double[3 * links];
    trial = new double[3 * links];
    spring = new double[springStart[links]];
  }

  private double[] stiffness(Link link, Patch patch, int size) {
    double[] k = new double[size * size];
    double t = Tolerances.REST_SHEAR_STIFFNESS;
    if (link instanceof Link.Rod rod) {
      // A round section's second moment over its area is (d/4)^2: a thin rod leaves nearly all bending to its seat.
      double gyration = rod.diameterM() / 4 / lengthM;
      for (int i = 0; i < size; i++) k[i * size + i] = i < 2 ? t : i < 4 ? gyration * gyration : 1;
      return k;
    }
    k[0] = 1;
    k[size + 1] = t;
    k[2 * size + 2] = t;
    if (size == 6) {
      // The stretch that goes with a stress gradient is J times the gradient, J the second moments of the patch.
      double l2 = lengthM * lengthM;
      double uu = patch.uu / l2;
      double uv = patch.uv / l2;
      double vv = patch.vv / l2;
      double det = uu * vv - uv * uv;
      k[3 * 6 + 3] = vv / det;
      k[3 * 6 + 4] = -uv / det;
      k[4 * 6 + 3] = -uv / det;
      k[4 * 6 + 4] = uu / det;
      // Twist: moment = t (uu + vv) K angle, its unknown is a force on the arm (uu + vv) / r.
      double arm = Elements.bondTwistArm(patch);
      k[5 * 6 + 5] = t * (patch.uu + patch.vv) / (arm * arm);
    }
    return k;
  }

  /** Puts the shear of a link at (u, v) of its patch, and its twist on an arm of {@code armM}. */
  void centre(int link, double u, double v, double armM) {
    Patch patch = patches[link];
    Vec3 p = patch.centroid.plusTimes(u, patch.first).plusTimes(v, patch.second);
    int at = 3 * COLUMN * link;
    force(slipColumn, at, link, patch.first, p);
    force(slipColumn, at + COLUMN, link, patch.second, p);
    Vec3 m = patch.normal.times(armM / lengthM);
    double[] six = {0, 0, 0, m.x(), m.y(), m.z()};
    for (int r = 0; r < 6; r++) {
      slipColumn[at + 2 * COLUMN + r] = six[r];
      slipColumn[at + 2 * COLUMN + 6 + r] = b[link] >= 0 ? -six[r] : 0;
    }
  }

  private void force(double[] to, int at, int link, Vec3 f, Vec3 where) {
    Vec3 m = where.minus(heap.bodies().get(a[link]).centre()).cross(f).times(1 / lengthM);
    double[] six = {f.x(), f.y(), f.z(), m.x(), m.y(), m.z()};
    System.arraycopy(six, 0, to, at, 6);
    if (b[link] >= 0) {
      Vec3 n = where.minus(heap.bodies().get(b[link]).centre()).cross(f).times(1 / lengthM);
      double[] other = {-f.x(), -f.y(), -f.z(), -n.x(), -n.y(), -n.z()};
      System.arraycopy(other, 0, to, at + 6, 6);
    }
  }

  private double along(double[] columns, int at, int link, double[] d) {
    double s = 0;
    int x = 6 * a[link];
    for (int r = 0; r < 6; r++) s += columns[at + r] * d[x + r];
    if (b[link] >= 0) {
      int y = 6 * b[link];
      for (int r = 0; r < 6; r++) s += columns[at + 6 + r] * d[y + r];
    }
    return s;
  }

  private void addTo(double[] out, double[] columns, int at, int link, double f) {
    int x = 6 * a[link];
    for (int r = 0; r < 6; r++) out[x + r] += columns[at + r] * f;
    if (b[link] >= 0) {
      int y = 6 * b[link];
      for (int r = 0; r < 6; r++) out[y + r] += columns[at + 6 + r] * f;
    }
  }

  /**
   * Finds the step from {@code from} under {@code load}; the step is left in {@link #step}, the forces after it in
   * {@link #push}, {@link #slip} and {@link #spring}.
   *
   * @param held shears and twists before the step, three a link, about the centres now set
   * @return whether the residual was brought down
   */
  boolean minimise(RestState from, double[] held, double[] limit, double[] load, double inertia) {
    double size = 1;
    for (double f : load) size = Math.max(size, Math.abs(f));
    double aim = Tolerances.REST_RESIDUAL * size;
    evaluate(step, from, held, limit, load, inertia);
    for (int newton = 0; newton < Tolerances.REST_NEWTON; newton++) {
      if (max(residual) <= aim) return true;
      assemble(limit, inertia);
      factor.factor(Double.MIN_NORMAL);
      solves++;
      factor.solve(residual, direction);
      double slope = 0;
      for (int i = 0; i < direction.length; i++) slope += residual[i] * direction[i];
      if (!(slope > 0)) return max(residual) <= 1e3 * aim;
      double was = energy;
      double worst = max(residual);
      double share = 1;
      boolean moved = false;
      for (int halving = 0; halving < 30 && !moved; halving++) {
        for (int i = 0; i < step.length; i++) attempt[i] = step[i] + share * direction[i];
        evaluate(attempt, from, held, limit, load, inertia);
        // Close to the end the energy no longer tells; the residual does.
        moved = energy <= was - 1e-4 * share * slope || max(residual) < 0.5 * worst;
        if (!moved) share /= 2;
      }
      System.arraycopy(attempt, 0, step, 0, step.length);
      if (!moved) return max(residual) <= 1e3 * aim;
    }
    return max(residual) <= 1e3 * aim;
  }

  private static double max(double[] v) {
    double m = 0;
    for (double x : v) m = Math.max(m, Math.abs(x));
    return m;
  }

  private void evaluate(double[] d, RestState from, double[] held, double[] limit, double[] load, double inertia) {
    double t = Tolerances.REST_SHEAR_STIFFNESS;
    double e = 0;
    for (int i = 0; i < residual.length; i++) {
      double pull = inertia * mass[i] * d[i];
      residual[i] = load[i] - pull;
      e += 0.5 * pull * d[i] - load[i] * d[i];
    }
    for (int i = 0; i < links; i++) {
      for (int c = cornerStart[i]; c < cornerStart[i + 1]; c++) {
        double g = from.gap[c] + along(cornerColumn, COLUMN * c, i, d);
        double n = g < 0 ? -cornerStiffness[c] * g : 0;
        push[c] = n;
        if (n > 0) {
          e -= 0.5 * n * g;
          addTo(residual, cornerColumn, COLUMN * c, i, n);
        }
      }
      if (bearing[i] && limit[i] > 0) {
        double size = 0;
        for (int k = 0; k < 3; k++) {
          double q = held[3 * i + k] - t * along(slipColumn, COLUMN * (3 * i + k), i, d);
          trial[3 * i + k] = q;
          size += q * q;
        }
        size = Math.sqrt(size);
        double f = size > limit[i] ? limit[i] / size : 1;
        e += f < 1 ? (limit[i] * size - 0.5 * limit[i] * limit[i]) / t : 0.5 * size * size / t;
        for (int k = 0; k < 3; k++) {
          slip[3 * i + k] = f * trial[3 * i + k];
          addTo(residual, slipColumn, COLUMN * (3 * i + k), i, slip[3 * i + k]);
        }
      } else if (bearing[i]) {
        for (int k = 0; k < 3; k++) {
          trial[3 * i + k] = 0;
          slip[3 * i + k] = 0;
        }
      }
      int n = springStart[i + 1] - springStart[i];
      for (int r = 0; r < n; r++) {
        double f = 0;
        for (int c = 0; c < n; c++) {
          int at = springStart[i] + c;
          f -= springStiffness[i][r * n + c] * (from.stretch[at] + along(springColumn, COLUMN * at, i, d));
        }
        spring[springStart[i] + r] = f;
      }
      for (int r = 0; r < n; r++) {
        int at = springStart[i] + r;
        e -= 0.5 * spring[at] * (from.stretch[at] + along(springColumn, COLUMN * at, i, d));
        addTo(residual, springColumn, COLUMN * at, i, spring[at]);
      }
    }
    energy = e;
  }

  private void assemble(double[] limit, double inertia) {
    double t = Tolerances.REST_SHEAR_STIFFNESS;
    factor.clear();
    double[] blocks = factor.values();
    for (int i = 0; i < bodies; i++) {
      int at = factor.blockOf(i, i) * BlockCholesky.BB;
      for (int r = 0; r < 6; r++) blocks[at + 7 * r] += inertia * mass[6 * i + r];
    }
    for (int i = 0; i < links; i++) {
      for (int c = cornerStart[i]; c < cornerStart[i + 1]; c++) {
        if (push[c] > 0) addOuter(blocks, i, cornerColumn, COLUMN * c, cornerColumn, COLUMN * c, cornerStiffness[c]);
      }
      if (bearing[i] && limit[i] > 0) {
        double size = Math.sqrt(trial[3 * i] * trial[3 * i] + trial[3 * i + 1] * trial[3 * i + 1] + trial[3 * i + 2] * trial[3 * i + 2]);
        boolean slips = size > limit[i];
        double f = slips ? limit[i] / size : 1;
        for (int k = 0; k < 3; k++) {
          for (int l = 0; l < 3; l++) {
            double v = t * f * ((k == l ? 1 : 0) - (slips ? trial[3 * i + k] * trial[3 * i + l] / (size * size) : 0));
            if (v != 0) addOuter(blocks, i, slipColumn, COLUMN * (3 * i + k), slipColumn, COLUMN * (3 * i + l), v);
          }
        }
      }
      int n = springStart[i + 1] - springStart[i];
      for (int r = 0; r < n; r++) {
        for (int c = 0; c < n; c++) {
          double v = springStiffness[i][r * n + c];
          if (v != 0) addOuter(blocks, i, springColumn, COLUMN * (springStart[i] + r), springColumn, COLUMN * (springStart[i] + c), v);
        }
      }
    }
  }

  private void addOuter(double[] blocks, int link, double[] p, int pAt, double[] q, int qAt, double f) {
    int aa = blockAa[link];
    for (int r = 0; r < 6; r++) {
      double v = f * p[pAt + r];
      if (v == 0) continue;
      for (int c = 0; c < 6; c++) blocks[aa + 6 * r + c] += v * q[qAt + c];
    }
    if (b[link] < 0) return;
    int bb = blockBb[link];
    int ab = blockAb[link];
    for (int r = 0; r < 6; r++) {
      double v = f * p[pAt + 6 + r];
      for (int c = 0; c < 6; c++) blocks[bb + 6 * r + c] += v * q[qAt + 6 + c];
    }
    for (int r = 0; r < 6; r++) {
      double v = f * p[pAt + r];
      for (int c = 0; c < 6; c++) {
        blocks[ab + (flipped[link] ? 6 * c + r : 6 * r + c)] += v * q[qAt + 6 + c];
      }
    }
  }

  /** A heap that carries nothing yet. */
  RestState unloaded() {
    Arrays.fill(step, 0);
    double[] centre = new double[3 * links];
    for (int i = 0; i < links; i++) centre[3 * i + 2] = patches[i].meanDistance(0, 0);
    return new RestState(new double[cornerStart[links]], new double[3 * links], new double[links], centre, new double[springStart[links]]);
  }

  /** Moves the openings and stretches of {@code state} by the step just found. */
  void advance(RestState state) {
    for (int i = 0; i < links; i++) {
      for (int c = cornerStart[i]; c < cornerStart[i + 1]; c++) state.gap[c] += along(cornerColumn, COLUMN * c, i, step);
      for (int at = springStart[i]; at < springStart[i + 1]; at++) state.stretch[at] += along(springColumn, COLUMN * at, i, step);
    }
  }
}
