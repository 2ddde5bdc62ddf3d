package holdfast.engine.build;

import holdfast.engine.contact.Planar;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Whether a rigid body passes a rectangular opening on a straight lift.
 *
 * <p>The problem: find a direction of travel u, seen from the body, and a turn t about it such that the body's shadow along
 * u fits the rectangle. Only the convex hull matters. For a given u the best turn is found exactly: the two widths of the
 * shadow are sinusoids between the turns at which one of its edges lies along a side of the rectangle, so the best of
 * their smaller slack is at one of these turns or where the two slacks are equal (rotating calipers). Over u, the
 * half-sphere is divided; no width changes by more than the diameter times the chord between two directions, which bounds
 * the slack over a whole cell. The search ends with a pose that fits, with the proof that none does, or undecided when
 * the best is within {@link #TOLERANCE_M} of fitting.
 *
 * <p>A body that passes only by turning while it is in the opening is not found here; {@link Turning} looks for that.
 *
 * @see "Toussaint 1983, Solving geometric problems with the rotating calipers, Proc. IEEE MELECON"
 */
public final class OpeningFit {
  /** A slack closer to nought than this is not told from nought, metres: half a millimetre, finer than stone is measured. */
  public static final double TOLERANCE_M = 5e-4;

  /** Directions tried before giving up. */
  private static final int MOST_DIRECTIONS = 60_000;

  private OpeningFit() {}

  /** Whether it passes. */
  public enum Answer { PASSES, STUCK, UNDECIDED }

  /**
   * What was found.
   *
   * @param answer whether it passes
   * @param up direction in the body that points up on the way through, unit vector: the body's own up when it need not be tilted
   * @param along direction in the body, square to {@code up}, that goes along the first side of the opening
   * @param slackM room left on the tighter side in that pose, metres; below zero it is too large by that much
   * @param atMostM no pose leaves more room than this
   */
  public record Passage(Answer answer, Vec3 up, Vec3 along, double slackM, double atMostM) {
    /** Angle from its upright pose, radians. */
    public double tiltRad() {
      return Math.acos(Math.max(-1, Math.min(1, Math.abs(up.z()))));
    }
  }

  /**
   * The passage of the hull of {@code points} through an opening of two given sides.
   *
   * @param points corners of the body, metres; upright as built
   * @param firstM one side of the opening, metres
   * @param secondM the other
   */
  public static Passage through(List<Vec3> points, double firstM, double secondM) {
    List<Vec3> corners = HullBuilder.build(points).match(h -> h.corners(), why -> List.copyOf(points));
    double diameter = 0;
    for (Vec3 p : corners) for (Vec3 q : corners) diameter = Math.max(diameter, p.distanceTo(q));

    Trial best = tryUp(corners, Vec3.Z, firstM, secondM);
    if (best.slack >= 0) return new Passage(Answer.PASSES, best.up, best.along, best.slack, Double.POSITIVE_INFINITY);

    PriorityQueue<Cell> queue = new PriorityQueue<>(
        Comparator.<Cell>comparingDouble(c -> -c.bound).thenComparingInt(c -> c.number));
    int made = 0;
    for (int face = 0; face < 3; face++) {
      queue.add(cell(corners, diameter, face, -1, -1, 2, firstM, secondM, made++));
    }
    while (!queue.isEmpty()) {
      Cell c = queue.poll();
      if (c.trial.slack > best.slack) best = c.trial;
      if (best.slack >= 0) return new Passage(Answer.PASSES, best.up, best.along, best.slack, Double.POSITIVE_INFINITY);
      if (c.bound < 0) return new Passage(Answer.STUCK, best.up, best.along, best.slack, c.bound);
      if (made >= MOST_DIRECTIONS || c.bound - c.trial.slack < TOLERANCE_M) {
        return new Passage(Answer.UNDECIDED, best.up, best.along, best.slack, c.bound);
      }
      double half = c.width / 2;
      for (int i = 0; i < 4; i++) {
        queue.add(cell(corners, diameter, c.face, c.s + (i & 1) * half, c.t + (i >> 1) * half, half, firstM, secondM, made++));
      }
    }
    throw new IllegalStateException("the search has no cells");
  }

  /** A direction with its best turn. */
  private record Trial(Vec3 up, Vec3 along, double slack) {}

  /** A square on a face of the cube round the directions, with the trial at its middle and a bound over all of it. */
  private record Cell(int face, double s, double t, double width, Trial trial, double bound, int number) {}

  private static Cell cell(
      List<Vec3> corners, double diameter, int face, double s, double t, double width, double first, double second, int number) {
    Vec3 middle = onFace(face, s + width / 2, t + width / 2);
    double chord = 0;
    for (int i = 0; i < 4; i++) {
      chord = Math.max(chord, middle.distanceTo(onFace(face, s + (i & 1) * width, t + (i >> 1) * width)));
    }
    Trial trial = tryUp(corners, middle, first, second);
    return new Cell(face, s, t, width, trial, trial.slack + diameter * chord, number);
  }

  private static Vec3 onFace(int face, double s, double t) {
    return (face == 0 ? new Vec3(s, t, 1) : face == 1 ? new Vec3(1, s, t) : new Vec3(s, 1, t)).unit();
  }

  /** The best turn for one direction of travel. */
  private static Trial tryUp(List<Vec3> corners, Vec3 up, double first, double second) {
    Vec3 e1 = up.anyPerpendicular();
    Vec3 e2 = up.cross(e1);
    double[] shadow = new double[2 * corners.size()];
    for (int i = 0; i < corners.size(); i++) {
      shadow[2 * i] = corners.get(i).dot(e1);
      shadow[2 * i + 1] = corners.get(i).dot(e2);
    }
    double[] flat = Planar.hull(shadow, 0);
    double[][] hull = new double[Planar.corners(flat)][];
    for (int i = 0; i < hull.length; i++) hull[i] = new double[] {flat[2 * i], flat[2 * i + 1]};
    double[] turns = breaks(hull);
    double bestSlack = Double.NEGATIVE_INFINITY;
    double bestTurn = 0;
    for (int i = 0; i < turns.length; i++) {
      double from = turns[i];
      double to = i + 1 < turns.length ? turns[i + 1] : turns[0] + Math.PI;
      for (double turn : candidates(hull, from, to, first, second)) {
        double slack = Math.min(first - width(hull, turn), second - width(hull, turn + Math.PI / 2));
        if (slack > bestSlack) {
          bestSlack = slack;
          bestTurn = turn;
        }
      }
    }
    Vec3 along = e1.times(Math.cos(bestTurn)).plusTimes(Math.sin(bestTurn), e2);
    return new Trial(up, along, bestSlack);
  }

  /** The turn at the start of a stretch, and those inside it where both slacks are equal. */
  private static List<Double> candidates(double[][] hull, double from, double to, double first, double second) {
    List<Double> out = new ArrayList<>(List.of(from));
    double mid = (from + to) / 2;
    double[] d1 = span(hull, mid);
    double[] d2 = span(hull, mid + Math.PI / 2);
    double a = d1[0] - d2[1];
    double b = d1[1] + d2[0];
    double size = Math.hypot(a, b);
    if (size == 0 || Math.abs(first - second) > size) return out;
    double middle = Math.atan2(b, a);
    double off = Math.acos((first - second) / size);
    for (double root : new double[] {middle - off, middle + off}) {
      double turn = from + floorMod(root - from, 2 * Math.PI);
      if (turn <= to) out.add(turn);
    }
    return out;
  }

  private static double floorMod(double v, double by) {
    return v - by * Math.floor(v / by);
  }

  /** The vector between the two corners that bound the shadow along a direction. */
  private static double[] span(double[][] hull, double turn) {
    double c = Math.cos(turn);
    double s = Math.sin(turn);
    double[] high = hull[0];
    double[] low = hull[0];
    for (double[] p : hull) {
      double d = p[0] * c + p[1] * s;
      if (d > high[0] * c + high[1] * s) high = p;
      if (d < low[0] * c + low[1] * s) low = p;
    }
    return new double[] {high[0] - low[0], high[1] - low[1]};
  }

  private static double width(double[][] hull, double turn) {
    double c = Math.cos(turn);
    double s = Math.sin(turn);
    double high = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    for (double[] p : hull) {
      double d = p[0] * c + p[1] * s;
      high = Math.max(high, d);
      low = Math.min(low, d);
    }
    return high - low;
  }

  /** Turns from 0 to pi at which an edge lies along one of the two sides, in order. */
  private static double[] breaks(double[][] hull) {
    double[] out = new double[2 * hull.length];
    for (int i = 0; i < hull.length; i++) {
      double[] p = hull[i];
      double[] q = hull[(i + 1) % hull.length];
      double angle = Math.atan2(q[1] - p[1], q[0] - p[0]);
      out[2 * i] = floorMod(angle, Math.PI);
      out[2 * i + 1] = floorMod(angle + Math.PI / 2, Math.PI);
    }
    Arrays.sort(out);
    return out;
  }
}
