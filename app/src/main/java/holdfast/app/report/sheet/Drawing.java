package holdfast.app.report.sheet;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Rocks seen from far away along one direction: their outlines, which stretches of them are seen and which are hidden
 * behind other rocks, and the shadows of their lobes.
 *
 * <p>An outline is where a face that looks at the viewer meets one that does not. Whether a stretch p + t e of it is behind
 * a hull is a question in two unknowns, the place t along it and the way s toward the viewer: each face of the hull gives
 * one linear inequality in both, and taking s out by pairs (Fourier and Motzkin) leaves the interval of t that is hidden,
 * exactly. Outlines inside the shadow of another lobe of the same rock are not outlines of the rock.
 */
final class Drawing {
  /** Hulls count as this much smaller when they hide, metres, so that stones in contact do not nibble at each other. */
  private static final double SHRINK_M = 3e-4;

  /** Faces that meet at less than this angle are one to the eye: cosine of 28 degrees. */
  private static final double CREASE = Math.cos(Math.toRadians(28));

  /** Shorter stretches are not drawn, as a part of an edge. */
  private static final double LEAST_STRETCH = 1e-6;

  /** What a line shows. */
  enum Kind { OUTLINE, HIDDEN, CREASE }

  /** A stretch of line of one rock, in metres on the picture. */
  record Stroke(int rock, Kind kind, double x1, double y1, double x2, double y2) {}

  /** Where the viewer is: axes of the picture in the world, {@code toward} pointing at the viewer; unit vectors. */
  record View(Vec3 right, Vec3 up, Vec3 toward) {
    static final View PLAN = new View(Vec3.X, Vec3.Y, Vec3.Z);
    static final View FRONT = new View(Vec3.X, Vec3.Z, Vec3.Y.negated());
    static final View RIGHT = new View(Vec3.Y, Vec3.Z, Vec3.X);
    static final View LEFT = new View(Vec3.Y.negated(), Vec3.Z, Vec3.X.negated());
    static final View BACK = new View(Vec3.X.negated(), Vec3.Z, Vec3.Y);

    /** From above at the front: turned about the upright by {@code degrees} and lifted. */
    static View above(double degrees, double lift) {
      double a = Math.toRadians(degrees);
      double b = Math.toRadians(lift);
      Vec3 toward = new Vec3(Math.sin(a) * Math.cos(b), -Math.cos(a) * Math.cos(b), Math.sin(b));
      Vec3 right = new Vec3(Math.cos(a), Math.sin(a), 0);
      return new View(right, toward.cross(right), toward);
    }

    double[] flat(Vec3 p) {
      return new double[] {p.dot(right), p.dot(up)};
    }
  }

  private final View view;
  private final List<List<Hull>> rocks;
  /** For each lobe the least and greatest x and y of its shadow. */
  private final List<List<double[]>> boxes = new ArrayList<>();

  /** A drawing of rocks, each given by its lobes in the world. */
  Drawing(View view, List<List<Hull>> rocks) {
    this.view = view;
    this.rocks = rocks;
    for (List<Hull> lobes : rocks) {
      boxes.add(lobes.stream()
          .map(h -> Flat.box(List.of(h.corners().stream().map(view::flat).toList()))).toList());
    }
  }

  /** The shadow of each lobe of a rock, counter-clockwise; their union is the rock's. */
  List<List<double[]>> shadows(int rock) {
    List<List<double[]>> out = new ArrayList<>();
    for (Hull h : rocks.get(rock)) out.add(Flat.hull(h.corners().stream().map(view::flat).toList()));
    return out;
  }

  /** Rocks from the farthest to the nearest, by the depth of their middles: the order in which to fill them. */
  List<Integer> backToFront() {
    List<Integer> order = new ArrayList<>();
    double[] depth = new double[rocks.size()];
    for (int i = 0; i < rocks.size(); i++) {
      order.add(i);
      double near = Double.NEGATIVE_INFINITY;
      double far = Double.POSITIVE_INFINITY;
      for (Hull h : rocks.get(i)) {
        near = Math.max(near, h.reach(view.toward()));
        far = Math.min(far, -h.reach(view.toward().negated()));
      }
      depth[i] = near + far;
    }
    order.sort(Comparator.comparingDouble(i -> depth[i]));
    return order;
  }

  /** All lines, with or without the creases between faces. */
  List<Stroke> strokes(boolean creases) {
    List<Stroke> out = new ArrayList<>();
    for (int r = 0; r < rocks.size(); r++) {
      for (int l = 0; l < rocks.get(r).size(); l++) addLobe(out, r, l, creases);
    }
    return out;
  }

  private void addLobe(List<Stroke> out, int rock, int lobe, boolean creases) {
    Hull hull = rocks.get(rock).get(lobe);
    Map<Long, Hull.Face> seen = new TreeMap<>();
    for (Hull.Face f : hull.faces()) {
      int n = f.loop().size();
      for (int i = 0; i < n; i++) {
        int a = f.loop().get(i);
        int b = f.loop().get((i + 1) % n);
        long key = (long) Math.min(a, b) * hull.corners().size() + Math.max(a, b);
        Hull.Face other = seen.putIfAbsent(key, f);
        if (other != null) addEdge(out, rock, lobe, hull.corners().get(a), hull.corners().get(b), f, other, creases);
      }
    }
  }

  private void addEdge(
      List<Stroke> out, int rock, int lobe, Vec3 p, Vec3 q, Hull.Face f, Hull.Face g, boolean creases) {
    boolean fFront = f.normal().dot(view.toward()) > 1e-9;
    boolean gFront = g.normal().dot(view.toward()) > 1e-9;
    boolean outline = fFront != gFront;
    boolean crease = creases && fFront && gFront && f.normal().dot(g.normal()) < CREASE;
    if (!outline && !crease) return;

    double[] a = view.flat(p);
    double[] b = view.flat(q);
    List<double[]> hidden = new ArrayList<>();
    List<double[]> gone = new ArrayList<>();
    List<double[]> inside = new ArrayList<>();
    for (int r = 0; r < rocks.size(); r++) {
      for (int l = 0; l < rocks.get(r).size(); l++) {
        if (r == rock && l == lobe || apart(boxes.get(r).get(l), a, b)) continue;
        Hull hull = rocks.get(r).get(l);
        double[] behind = behind(hull, p, q, true);
        if (r != rock) {
          if (behind != null) hidden.add(behind);
          continue;
        }
        if (behind != null) gone.add(behind);
        double[] within = behind(hull, p, q, false);
        if (within != null) inside.add(within);
      }
    }
    List<Double> cuts = new ArrayList<>(List.of(0.0, 1.0));
    for (List<double[]> list : List.of(hidden, gone, inside)) {
      for (double[] i : list) {
        cuts.add(i[0]);
        cuts.add(i[1]);
      }
    }
    cuts.sort(Comparator.naturalOrder());
    for (int i = 0; i + 1 < cuts.size(); i++) {
      double from = cuts.get(i);
      double to = cuts.get(i + 1);
      if (to - from < LEAST_STRETCH) continue;
      double mid = (from + to) / 2;
      if (in(gone, mid)) continue;
      boolean rim = outline && !in(inside, mid);
      boolean behindOther = in(hidden, mid);
      if (behindOther && !rim) continue;
      if (!rim && !creases) continue;
      Kind kind = behindOther ? Kind.HIDDEN : rim ? Kind.OUTLINE : Kind.CREASE;
      out.add(new Stroke(rock, kind,
          a[0] + from * (b[0] - a[0]), a[1] + from * (b[1] - a[1]), a[0] + to * (b[0] - a[0]), a[1] + to * (b[1] - a[1])));
    }
  }

  private static boolean apart(double[] box, double[] a, double[] b) {
    return Math.max(a[0], b[0]) < box[0] || Math.min(a[0], b[0]) > box[2]
        || Math.max(a[1], b[1]) < box[1] || Math.min(a[1], b[1]) > box[3];
  }

  private static boolean in(List<double[]> intervals, double t) {
    for (double[] i : intervals) if (t > i[0] && t < i[1]) return true;
    return false;
  }

  /**
   * The stretch of p to q, as an interval of 0 to 1, for which a point of the hull lies on the line toward the viewer;
   * only in front when {@code front}, else on either side. Null when there is none.
   */
  private double[] behind(Hull hull, Vec3 p, Vec3 q, boolean front) {
    Vec3 e = q.minus(p);
    Vec3 d = view.toward();
    int n = hull.faces().size();
    // a + b t + c s <= 0 for every face; s >= 0 when only what is in front counts.
    double[] a = new double[n + 1];
    double[] b = new double[n + 1];
    double[] c = new double[n + 1];
    for (int i = 0; i < n; i++) {
      Hull.Face f = hull.faces().get(i);
      a[i] = f.normal().dot(p) - f.offset() + SHRINK_M;
      b[i] = f.normal().dot(e);
      c[i] = f.normal().dot(d);
    }
    int count = n;
    if (front) {
      c[n] = -1;
      count = n + 1;
    }
    double[] range = {0, 1};
    for (int i = 0; i < count; i++) {
      if (Math.abs(c[i]) < 1e-12) {
        if (!narrow(range, a[i], b[i])) return null;
        continue;
      }
      if (c[i] < 0) continue;
      for (int j = 0; j < count; j++) {
        if (c[j] >= -1e-12) continue;
        if (!narrow(range, a[i] * -c[j] + a[j] * c[i], b[i] * -c[j] + b[j] * c[i])) return null;
      }
    }
    return range;
  }

  /** Keeps the part of a range with a + b t at most 0; false when nothing is left. */
  private static boolean narrow(double[] range, double a, double b) {
    if (b > 0) range[1] = Math.min(range[1], -a / b);
    else if (b < 0) range[0] = Math.max(range[0], -a / b);
    else if (a > 0) return false;
    return range[1] > range[0];
  }
}
