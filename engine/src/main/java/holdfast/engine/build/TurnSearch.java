package holdfast.engine.build;

import holdfast.engine.build.GateBody.Lobe;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * A way through a gate on which the body turns while it is in the opening.
 *
 * <p>A pose is a height and a rotation; sideways the body is free where it has room ({@link GateFit}). Above the rim every
 * rotation can be had, so the search starts there, with the body hung over the opening in directions spread over the sphere,
 * and grows a tree downwards: a step down, or a small turn about what is in the opening, mended by small turns where it lacks
 * room. The pose whose body is farthest through goes on first. Once the whole body is under the opening it is turned upright
 * there. A step belongs to the tree only when the movement is proved ({@link GateLeg#proved}).
 *
 * <p>The order is fixed and the number of poses bounded, so the answer is the same on every machine. That nothing is found
 * says nothing.
 */
final class TurnSearch {
  private final GateBody body;
  private final GateFit fit;
  private final double stepM;
  private final PriorityQueue<Node> queue =
      new PriorityQueue<>(Comparator.<Node>comparingDouble(n -> -n.worth).thenComparingInt(n -> n.number));
  private final Set<List<Integer>> seen = new HashSet<>();
  private int made;
  private int setDown;

  /** A pose that was reached, from where and on which movement. The first of a branch hangs above the rim. */
  private record Node(GatePose pose, Optional<Node> from, Optional<GateLeg> leg, double worth, int number) {}

  private TurnSearch(GateBody body, Gate gate) {
    this.body = body;
    this.fit = new GateFit(body, gate);
    this.stepM = 2 * body.radiusM() * Tolerances.DOWN_STEP;
  }

  /**
   * The way of a body through a gate; empty when none was found. One that is found is sought again with more room to spare,
   * and the roomiest is given.
   */
  static Optional<TurnPath> find(GateBody body, Gate gate) {
    Optional<List<GateLeg>> found = legs(body, gate);
    if (found.isEmpty()) return Optional.empty();
    for (double spare : Tolerances.SPARE_M) {
      Optional<List<GateLeg>> roomy = legs(body, gate.narrowed(spare / 2));
      Optional<TurnPath> path = roomy.flatMap(l -> new PathEasing(new GateFit(body, gate), l).eased(spare));
      if (path.isPresent()) return path;
    }
    return new PathEasing(new GateFit(body, gate), found.get()).eased(0);
  }

  private static Optional<List<GateLeg>> legs(GateBody body, Gate gate) {
    if (gate.lengthM() <= 0 || gate.widthM() <= 0) return Optional.empty();
    return new TurnSearch(body, gate).run();
  }

  private Optional<List<GateLeg>> run() {
    seeds();
    while (!queue.isEmpty() && fit.poses() < Tolerances.MOST_POSES) {
      if (Thread.currentThread().isInterrupted()) throw new IllegalStateException("the search was interrupted");
      Node n = queue.poll();
      double room = fit.room(n.pose);
      Vec3 pivot = fit.pivotOf(n.pose);
      if (fit.top() < -fit.gate().thicknessM() && setDown++ < Tolerances.MOST_SETTINGS_DOWN) {
        Optional<List<GateLeg>> rest = upright(n.pose);
        if (rest.isPresent()) {
          List<GateLeg> legs = legsTo(n);
          legs.addAll(rest.get());
          return Optional.of(legs);
        }
      }
      if (room == Double.POSITIVE_INFINITY) pivot = body.centre();
      grow(n, pivot);
    }
    return Optional.empty();
  }

  private static List<GateLeg> legsTo(Node end) {
    List<GateLeg> out = new ArrayList<>();
    for (Node n = end; n.leg.isPresent(); n = n.from.orElseThrow()) out.add(n.leg.get());
    Collections.reverse(out);
    return out;
  }

  // -- the tree ------------------------------------------------------------------------------------------------------

  /** Bodies hung over the opening: directions on a spiral round the sphere, each with turns about it, and the upright pose. */
  private void seeds() {
    List<Quat> turns = new ArrayList<>();
    for (int k = 0; k < Tolerances.TURNS; k++) turns.add(Quat.about(Vec3.Z, Math.PI * k / Tolerances.TURNS));
    List<Quat> tilts = new ArrayList<>(List.of(Quat.IDENTITY, Quat.about(Vec3.X, Math.PI)));
    for (Vec3 axis : new Vec3[] {Vec3.X, Vec3.X.negated(), Vec3.Y, Vec3.Y.negated()}) tilts.add(Quat.about(axis, Math.PI / 2));
    double golden = Math.PI * (3 - Math.sqrt(5));
    for (int i = 0; i < Tolerances.DIRECTIONS; i++) {
      double up = 1 - (2.0 * i + 1) / Tolerances.DIRECTIONS;
      double tilt = Math.acos(up);
      Vec3 axis = new Vec3(Math.cos(golden * i), Math.sin(golden * i), 0);
      tilts.add(Quat.about(axis, tilt));
    }
    for (Quat tilt : tilts) for (Quat turn : turns) seed(turn.times(tilt).unit());
  }

  /** Lets a body straight down as far as it goes in steps. */
  private void seed(Quat turn) {
    double low = 0;
    for (Lobe l : body.lobes()) for (Vec3 p : l.corners()) low = Math.min(low, turn.rotate(p.minus(body.centre())).z());
    GatePose start = new GatePose(turn, -low + stepM);
    GatePose at = start;
    while (true) {
      GatePose next = new GatePose(turn, at.heightM() - stepM);
      if (fit.room(next) < Tolerances.LEAST_ROOM_M) break;
      at = next;
      if (fit.top() < -fit.gate().thicknessM()) break;
    }
    if (at.equals(start)) return;
    Node first = new Node(start, Optional.empty(), Optional.empty(), 0, made++);
    Vec3 pivot = body.centre();
    GateLeg leg = new GateLeg(start, at, pivot, body.centre());
    if (!seen.add(cell(at)) || Double.isNaN(leg.proved(fit, 0, 0))) return;
    fit.room(at);
    queue.add(new Node(at, Optional.of(first), Optional.of(leg), fit.through(), made++));
  }

  private void grow(Node n, Vec3 pivot) {
    double a = Tolerances.TURN_STEP_RAD;
    for (double down : new double[] {stepM, stepM / 4, -stepM}) {
      reach(n, new GatePose(n.pose.turn(), n.pose.heightM() - down), pivot);
    }
    for (Vec3 axis : new Vec3[] {Vec3.X, Vec3.Y, Vec3.Z}) {
      reach(n, turned(n.pose, axis, a, pivot), pivot);
      reach(n, turned(n.pose, axis, -a, pivot), pivot);
    }
  }

  private void reach(Node n, GatePose wanted, Vec3 pivot) {
    double room = fit.room(wanted);
    if (fit.bottom() > 0) return;
    GatePose pose = wanted;
    if (room < Tolerances.LEAST_ROOM_M) {
      if (room < -Tolerances.MENDED_M) return;
      Optional<GatePose> mended = mended(wanted, room, pivot);
      if (mended.isEmpty()) return;
      pose = mended.get();
    }
    if (!seen.add(cell(pose))) return;
    GateLeg leg = new GateLeg(n.pose, pose, pivot, body.centre());
    if (Double.isNaN(leg.proved(fit, 0, 0))) return;
    fit.room(pose);
    queue.add(new Node(pose, Optional.of(n), Optional.of(leg), fit.through(), made++));
  }

  /** Small turns about the pivot that make room, the best first, in smaller and smaller steps. */
  private Optional<GatePose> mended(GatePose wanted, double had, Vec3 pivot) {
    GatePose at = wanted;
    double room = had;
    for (double a = Tolerances.TURN_STEP_RAD / 2; a > Tolerances.TURN_STEP_RAD / 10; a /= 2) {
      for (int k = 0; k < 3; k++) {
        GatePose best = at;
        double bestRoom = room;
        for (Vec3 axis : new Vec3[] {Vec3.X, Vec3.Y, Vec3.Z}) {
          for (int s = -1; s <= 1; s += 2) {
            GatePose p = turned(at, axis, s * a, pivot);
            double r = fit.room(p);
            if (r > bestRoom) {
              best = p;
              bestRoom = r;
            }
          }
        }
        if (best.equals(at)) break;
        at = best;
        room = bestRoom;
        if (room >= Tolerances.LEAST_ROOM_M) return Optional.of(at);
      }
    }
    return Optional.empty();
  }

  private GatePose turned(GatePose p, Vec3 axis, double by, Vec3 pivot) {
    Quat turn = Quat.about(axis, by).times(p.turn()).unit();
    double pivotHeight = p.heightM() + p.turn().rotate(pivot.minus(body.centre())).z();
    return new GatePose(turn, pivotHeight - turn.rotate(pivot.minus(body.centre())).z());
  }

  /** Poses this near to each other are one. */
  private List<Integer> cell(GatePose p) {
    Quat q = p.turn();
    double sign = q.w() < 0 || q.w() == 0 && (q.x() < 0 || q.x() == 0 && (q.y() < 0 || q.y() == 0 && q.z() < 0)) ? -1 : 1;
    double k = sign * 4 / Tolerances.TURN_STEP_RAD;
    return List.of((int) Math.rint(k * q.w()), (int) Math.rint(k * q.x()), (int) Math.rint(k * q.y()), (int) Math.rint(k * q.z()),
        (int) Math.rint(4 * p.heightM() / stepM));
  }

  // -- under the opening ---------------------------------------------------------------------------------------------

  /** Turns a body that is under the opening upright there, half way between floor and opening. */
  private Optional<List<GateLeg>> upright(GatePose from) {
    for (int k = 0; k < 5; k++) {
      // Straight there, or by way of a turn about the vertical first.
      Quat by = k == 0 ? from.turn() : Quat.about(Vec3.Z, k * Math.PI / 2).times(from.turn()).unit();
      Optional<List<GateLeg>> legs = under(from, by);
      if (legs.isPresent()) return legs;
    }
    return Optional.empty();
  }

  private Optional<List<GateLeg>> under(GatePose from, Quat by) {
    List<Quat> turns = new ArrayList<>();
    double first = by.times(from.turn().conjugate()).angleRad();
    int n = (int) Math.ceil(first / Math.toRadians(15));
    GatePose middle = new GatePose(by, 0);
    GateLeg there = new GateLeg(from, middle, body.centre(), body.centre());
    for (int i = 1; i <= n; i++) turns.add(there.at((double) i / n).turn());
    int m = (int) Math.ceil(by.angleRad() / Math.toRadians(15));
    GateLeg home = new GateLeg(middle, new GatePose(Quat.IDENTITY, 0), body.centre(), body.centre());
    for (int i = 1; i <= m; i++) turns.add(home.at((double) i / m).turn());
    turns.add(0, from.turn());
    if (m == 0) turns.add(Quat.IDENTITY);
    List<GateLeg> legs = new ArrayList<>();
    GatePose at = from;
    for (Quat turn : turns) {
      Optional<GatePose> next = midway(turn);
      if (next.isEmpty()) return Optional.empty();
      GateLeg leg = new GateLeg(at, next.get(), body.centre(), body.centre());
      if (Double.isNaN(leg.proved(fit, 0, 0))) return Optional.empty();
      legs.add(leg);
      at = next.get();
    }
    return Optional.of(legs);
  }

  private Optional<GatePose> midway(Quat turn) {
    fit.room(new GatePose(turn, 0));
    double highest = -fit.gate().thicknessM() - fit.top();
    double lowest = -fit.gate().depthM() - fit.bottom();
    return highest > lowest ? Optional.of(new GatePose(turn, (highest + lowest) / 2)) : Optional.empty();
  }
}
