package holdfast.engine.check;

import holdfast.engine.check.HeapStudy.PushFound;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.Mechanism;
import holdfast.engine.statics.SceneHeap;
import holdfast.engine.statics.State;
import holdfast.engine.statics.Twist;
import holdfast.engine.statics.Weights;
import holdfast.engine.statics.Wrench;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What a slide leads to: the rocks are moved on along the movement that was found, the pushed one by the distance of the
 * settings, and the heap is judged again in every state. What no longer bears after the move counts as fallen.
 *
 * <p>A push beside the centre turns the rock while it slides. How far it turns on its way is anybody's guess, so the rocks are
 * moved without turning; {@link #fallsTurning} asks about the whole turn that the first movement tells.
 */
final class SlideTest {
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
    return new SlideTest(study).fallsAfter(m, far, turning);
  }

  private boolean fallsAfter(Mechanism m, double far, boolean turning) {
    List<PlacedRock> moved = moved(m, far, turning);
    List<Heap.Part> parts = SceneHeap.of(study.scene().scene(), moved).heap().separate();
    Set<List<Wrench>> asked = new HashSet<>();
    for (State s : study.states()) {
      List<Wrench> loads = loads(s, moved);
      // Equal states are asked once.
      if (!asked.add(loads)) continue;
      for (Heap.Part p : parts) if (!study.judged(p, s, loads).safe()) return true;
    }
    return false;
  }

  /** The weights after the move: those of the rocks that stay are known. */
  private List<Wrench> loads(State s, List<PlacedRock> moved) {
    List<Wrench> out = new ArrayList<>(study.loads(s));
    for (int i = 0; i < moved.size(); i++) {
      PlacedRock r = moved.get(i);
      if (r != study.scene().rocks().get(i)) out.set(i, new Weights(study.scene().scene(), List.of(r)).loads(s).get(0));
    }
    return out;
  }

  private List<PlacedRock> moved(Mechanism m, double far, boolean turning) {
    List<PlacedRock> moved = new ArrayList<>();
    for (int i = 0; i < m.twists().size(); i++) {
      PlacedRock r = study.scene().rocks().get(i);
      Twist t = m.twists().get(i);
      if (t.equals(Twist.ZERO)) {
        moved.add(r);
        continue;
      }
      Quat turn = turning ? Quat.ofRotationVector(t.spin().times(far)) : Quat.IDENTITY;
      Vec3 at = r.centre().plus(t.velocity().times(far)).plus(turn.rotate(r.pose().at().minus(r.centre())));
      moved.add(r.at(new Pose(at, turn.times(r.pose().turn()).unit())));
    }
    return moved;
  }
}
