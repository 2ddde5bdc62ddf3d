package holdfast.engine.check;

import holdfast.engine.check.HeapStudy.PushFound;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.Mechanism;
import holdfast.engine.statics.SceneHeap;
import holdfast.engine.statics.State;
import holdfast.engine.statics.Twist;
import holdfast.engine.statics.Wrench;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;

/**
 * What a slide leads to: the rocks are moved on along the movement that was found, the pushed one by the distance of the
 * settings, and the heap is judged again in every state. What no longer bears after the move counts as fallen.
 */
final class SlideTest {
  private SlideTest() {}

  static boolean falls(HeapStudy study, int rock, PushFound slide) {
    SceneHeap scene = study.scene();
    if (slide.mechanism().isEmpty()) return true;
    Mechanism m = slide.mechanism().get();
    double speed = m.twists().get(rock).velocity().norm();
    if (!(speed > 0)) return true;
    double far = scene.scene().settings().get(Setting.SLIDE_TEST_MM) * 1e-3 / speed;
    List<PlacedRock> moved = new ArrayList<>();
    for (int i = 0; i < scene.rocks().size(); i++) {
      PlacedRock r = scene.rocks().get(i);
      if (m.twists().get(i).equals(Twist.ZERO)) {
        moved.add(r);
        continue;
      }
      Vec3 shift = m.twists().get(i).velocity().times(far);
      Quat turn = Quat.ofRotationVector(m.twists().get(i).spin().times(far));
      Vec3 at = r.centre().plus(shift).plus(turn.rotate(r.pose().at().minus(r.centre())));
      moved.add(r.at(new Pose(at, turn.times(r.pose().turn()).unit())));
    }
    SceneHeap after = SceneHeap.of(scene.scene(), moved);
    for (State s : after.weights().states()) {
      List<Wrench> loads = after.weights().loads(s);
      for (Heap.Part p : after.heap().separate()) {
        if (!study.judged(p, s, loads).safe()) return true;
      }
    }
    return false;
  }
}
