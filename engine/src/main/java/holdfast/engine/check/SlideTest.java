package holdfast.engine.check;

import holdfast.engine.check.PushStudy.PushFound;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Twist;
import holdfast.engine.statics.heap.Weights;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;

/**
 * What a slide leads to: the rocks are moved on along the movement that was found, the pushed one by the distance of the
 * settings, and the heap is judged again in every state. What no longer bears after the move counts as fallen.
 *
 * <p>A push beside the centre turns the rock while it slides. How far it turns on its way is anybody's guess, so the rocks are
 * moved without turning; {@link #fallsTurning} asks about the whole turn that the first movement tells. What is fixed to each
 * other moves as one piece.
 */
final class SlideTest {
  /** Metres; a rock that rises or sinks less than this displaces the water that it did. Its rounding, no movement to speak of. */
  private static final double SAME_LEVEL_M = 1e-6;

  private final HeapStudy study;

  private SlideTest(HeapStudy study) {
    this.study = study;
  }

  /** Whether the heap falls once the rocks have moved straight on. */
  static boolean falls(HeapStudy study, int rock, PushFound slide) {
    return falls(study, rock, slide, false);
  }

  /** The same with the rocks turned as far as they turn at the first movement's rates. */
  static boolean fallsTurning(HeapStudy study, int rock, PushFound slide) {
    return falls(study, rock, slide, true);
  }

  private static boolean falls(HeapStudy study, int rock, PushFound slide, boolean turning) {
    if (slide.mechanism().isEmpty()) return true;
    Mechanism m = slide.mechanism().get();
    double speed = m.twists().get(rock).velocity().norm();
    if (!(speed > 0)) return true;
    double far = study.scene().scene().settings().get(Setting.SLIDE_TEST_MM) * 1e-3 / speed;
    return new SlideTest(study).fallsAfter(m, rock, far, turning);
  }

  private boolean fallsAfter(Mechanism m, int pushed, double far, boolean turning) {
    List<PlacedRock> moved = moved(m, pushed, far, turning);
    Map<State, List<Wrench>> loads = new EnumMap<>(State.class);
    for (State s : study.states()) loads.put(s, loads(s, moved));
    for (Heap.Part p : study.scene().withRocks(moved).heap().separate()) {
      List<List<Wrench>> asked = new ArrayList<>();
      for (State s : study.states()) {
        List<Wrench> dead = p.of(loads.get(s));
        if (asked.stream().anyMatch(o -> PartJudge.scales(p.heap(), o, dead))) continue;
        asked.add(dead);
        if (!study.stays(p, s, loads.get(s))) return true;
      }
    }
    return false;
  }

  /** The weights after the move: those of rocks that stay, or keep their level and do not turn, are known. */
  private List<Wrench> loads(State s, List<PlacedRock> moved) {
    List<Wrench> out = new ArrayList<>(study.loads(s));
    for (int i = 0; i < moved.size(); i++) {
      PlacedRock now = moved.get(i);
      PlacedRock before = study.scene().rocks().get(i);
      boolean level = now.pose().turn().equals(before.pose().turn())
          && Math.abs(now.pose().at().z() - before.pose().at().z()) < SAME_LEVEL_M;
      if (!level) out.set(i, new Weights(study.scene().scene(), List.of(now)).loads(s).get(0));
    }
    return out;
  }

  private List<PlacedRock> moved(Mechanism m, int pushed, double far, boolean turning) {
    List<PlacedRock> moved = new ArrayList<>(study.scene().rocks());
    for (List<Integer> piece : pieces()) {
      if (piece.stream().allMatch(i -> m.twists().get(i).equals(Twist.ZERO))) continue;
      Twist t = piece.contains(pushed) ? m.twists().get(pushed) : mean(piece, i -> m.twists().get(i));
      Vec3 about = piece.contains(pushed) ? study.scene().rocks().get(pushed).centre()
          : mean(piece, i -> new Twist(study.scene().rocks().get(i).centre(), Vec3.ZERO)).velocity();
      Quat turn = turning ? Quat.ofRotationVector(t.spin().times(far)) : Quat.IDENTITY;
      for (int i : piece) {
        PlacedRock r = study.scene().rocks().get(i);
        Vec3 at = about.plus(t.velocity().times(far)).plus(turn.rotate(r.pose().at().minus(about)));
        moved.set(i, r.at(new Pose(at, turning ? turn.times(r.pose().turn()).unit() : r.pose().turn())));
      }
    }
    return moved;
  }

  /** Rocks that are fixed to each other, and every other rock by itself. */
  private List<List<Integer>> pieces() {
    Heap heap = study.scene().heap();
    List<Link> fixed = heap.links().stream().filter(l -> !(l instanceof Link.Bearing)).toList();
    return new Heap(heap.bodies(), fixed).separate().stream().map(Heap.Part::bodies).toList();
  }

  /** By mass: about their common centre that is how a rigid piece moves. */
  private Twist mean(List<Integer> piece, IntFunction<Twist> of) {
    double kg = piece.stream().mapToDouble(i -> study.scene().rocks().get(i).body().dryMassKg()).sum();
    Vec3 velocity = Vec3.ZERO;
    Vec3 spin = Vec3.ZERO;
    for (int i : piece) {
      double share = study.scene().rocks().get(i).body().dryMassKg() / kg;
      velocity = velocity.plusTimes(share, of.apply(i).velocity());
      spin = spin.plusTimes(share, of.apply(i).spin());
    }
    return new Twist(velocity, spin);
  }
}
