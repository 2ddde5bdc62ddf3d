package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.Elements;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Patch;
import holdfast.engine.statics.heap.Scale;
import holdfast.engine.statics.solver.BlockPattern;
import holdfast.engine.statics.solver.Element;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * A heap whose contacts give a little: linear springs at the corners that only push, springs along the patch that slip at
 * the friction limit, and linear springs in bonds. Here are their directions and stiffnesses; {@link RestStep} moves it.
 *
 * <p>Scaled: forces by the heap's force, lengths of levers by its length, movements by force over stiffness.
 */
final class CompliantHeap {
  static final int COLUMN = 12;

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
  /** Stiffness of each bearing against shear, and against twist over its arm. */
  final double[] shearStiffness;
  /** Three columns a link: shear along first, along second, twist. */
  final double[] slipColumn;
  final double[] springColumn;
  /** For every bonded link its stiffness matrix. */
  final double[][] springStiffness;
  final double[] mass;
  /** Half the size of each body: what turns by one moves its outside this far. */
  final double[] arm;
  final BlockPattern pattern;

  CompliantHeap(Heap heap, Scale scale, Stiffness stiffness) {
    this.heap = heap;
    forceN = scale.forceN();
    lengthM = scale.lengthM();
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
      Element e = l instanceof Link.Bond bl ? elements.bond(bl, patches[i]) : l instanceof Link.Rod r ? elements.rod(r) : null;
      bonded.add(e);
      cornerStart[i + 1] = cornerStart[i] + (bearing[i] ? patches[i].corners.size() : 0);
      springStart[i + 1] = springStart[i] + (e == null ? 0 : e.size());
    }
    cornerColumn = new double[COLUMN * cornerStart[links]];
    cornerStiffness = new double[cornerStart[links]];
    shearStiffness = new double[links];
    for (int i = 0; i < links; i++) shearStiffness[i] = Tolerances.REST_SHEAR_STIFFNESS * stiffness.shear(i);
    slipColumn = new double[3 * COLUMN * links];
    springColumn = new double[COLUMN * springStart[links]];
    for (int i = 0; i < links; i++) {
      if (bearing[i]) {
        int m = patches[i].corners.size();
        for (int k = 0; k < m; k++) {
          int c = cornerStart[i] + k;
          force(cornerColumn, COLUMN * c, i, patches[i].normal, patches[i].corners.get(k));
          cornerStiffness[c] = stiffness.push(i) / m;
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
    arm = new double[bodies];
    for (int i = 0; i < bodies; i++) {
      Heap.Body body = heap.bodies().get(i);
      double m = Math.max(body.massKg(), Double.MIN_NORMAL) * 9.81 / forceN;
      arm[i] = body.sizeM() / 2 / lengthM;
      for (int k = 0; k < 3; k++) {
        mass[6 * i + k] = m;
        mass[6 * i + 3 + k] = 0.4 * m * arm[i] * arm[i];
      }
    }
    List<int[]> pairs = new ArrayList<>();
    for (int i = 0; i < links; i++) {
      if (b[i] >= 0) pairs.add(new int[] {a[i], b[i]});
    }
    pattern = new BlockPattern(bodies, pairs);
    frictionShare(1);
  }

  private double[] stiffness(Link link, Patch patch, int size) {
    double[] k = new double[size * size];
    double t = Tolerances.REST_SHEAR_STIFFNESS;
    if (link instanceof Link.Rod rod) {
      // A round section's second moment over its area is (d/4)^2: a thin rod leaves nearly all bending to its seat.
      double gyration = rod.diameterM() / 4 / lengthM;
      for (int i = 0; i < size; i++) {
        k[i * size + i] = i < 2 ? t : i < 4 ? gyration * gyration : Tolerances.REST_ROD_PULL_STIFFNESS;
      }
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

  /** Lets every bearing have this share of its friction. */
  void frictionShare(double share) {
    for (int i = 0; i < links; i++) friction[i] = heap.links().get(i) instanceof Link.Bearing l ? share * l.friction() : 0;
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

  /** How far the movement {@code d} goes along a column. */
  double along(double[] columns, int at, int link, double[] d) {
    double onA = dot(columns, at, d, 6 * a[link]);
    return b[link] >= 0 ? onA + dot(columns, at + 6, d, 6 * b[link]) : onA;
  }

  /** Adds the force {@code f} along a column to {@code out}. */
  void addTo(double[] out, double[] columns, int at, int link, double f) {
    add(out, 6 * a[link], columns, at, f);
    if (b[link] >= 0) add(out, 6 * b[link], columns, at + 6, f);
  }

  // Written out: short checks run before the compiler that would do it has seen these.

  private static double dot(double[] p, int i, double[] q, int j) {
    return p[i] * q[j] + p[i + 1] * q[j + 1] + p[i + 2] * q[j + 2] + p[i + 3] * q[j + 3] + p[i + 4] * q[j + 4]
        + p[i + 5] * q[j + 5];
  }

  private static void add(double[] to, int i, double[] p, int j, double f) {
    to[i] += p[j] * f;
    to[i + 1] += p[j + 1] * f;
    to[i + 2] += p[j + 2] * f;
    to[i + 3] += p[j + 3] * f;
    to[i + 4] += p[j + 4] * f;
    to[i + 5] += p[j + 5] * f;
  }

  /** A heap that carries nothing yet. */
  RestState unloaded() {
    double[] centre = new double[3 * links];
    for (int i = 0; i < links; i++) centre[3 * i + 2] = patches[i].meanDistance(0, 0);
    return new RestState(new double[cornerStart[links]], new double[3 * links], new double[links], centre,
        new double[springStart[links]]);
  }

  /** Moves the openings and stretches of {@code state} by {@code step}. */
  void advance(RestState state, double[] step) {
    for (int i = 0; i < links; i++) {
      for (int c = cornerStart[i]; c < cornerStart[i + 1]; c++) state.gap[c] += along(cornerColumn, COLUMN * c, i, step);
      for (int at = springStart[i]; at < springStart[i + 1]; at++) state.stretch[at] += along(springColumn, COLUMN * at, i, step);
    }
  }
}
