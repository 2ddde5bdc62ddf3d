package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.bonding.JointDemands;
import holdfast.engine.bonding.PieceLift;
import holdfast.engine.build.Modules;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.model.scene.JointSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Pieces that come apart in the hands: lifted drained by one of their rocks, a joint is asked for more than its design
 * strength. A warning where another rock may be held instead, a fail where none may.
 */
final class LiftFindings {
  private LiftFindings() {}

  static List<Finding> of(SceneHeap scene, List<Modules.Module> modules) {
    List<Finding> out = new ArrayList<>();
    List<List<Integer>> pieces = new ArrayList<>();
    for (Modules.Module m : modules) {
      pieces.add(IntStream.range(0, scene.rocks().size()).filter(i -> m.rocks().contains(scene.name(i))).boxed().toList());
    }
    List<PieceLift> lifts = JointDemands.lifts(scene, pieces);
    for (int p = 0; p < pieces.size(); p++) {
      int piece = p;
      piece(scene, pieces.get(p), lifts.stream().filter(l -> l.piece() == piece).toList(), out);
    }
    return out;
  }

  private static void piece(SceneHeap scene, List<Integer> rocks, List<PieceLift> lifts, List<Finding> out) {
    List<PieceLift> bad =
        lifts.stream().filter(l -> !l.holds()).sorted(Comparator.comparingDouble(LiftFindings::gravity)).toList();
    if (bad.isEmpty()) return;
    List<String> good = lifts.stream().filter(PieceLift::holds).map(l -> scene.name(l.rock())).toList();
    List<String> never = lifts.stream().filter(l -> !l.holds()).map(l -> scene.name(l.rock())).toList();
    String what = "the piece of " + Draft.names(rocks.stream().map(scene::name).toList());
    PieceLift worst = bad.get(0);
    Draft d = good.isEmpty() ? Draft.fail(Code.BREAKS_LIFTED) : Draft.warn(Code.BREAKS_LIFTED);
    d.about(rocks.stream().map(scene::name).toList()).in(State.DRAINED);
    String by = text("Lifted wet by %s, %s", scene.name(worst.rock()), what);
    String sentence;
    if (Double.isNaN(worst.use())) {
      sentence = text("Whether %s holds together lifted wet by %s was not settled.", what, scene.name(worst.rock()));
    } else if (Double.isInfinite(worst.use())) {
      sentence = by + " comes apart.";
    } else {
      JointSpec j = scene.scene().joints().get(worst.joint());
      double percent = Draft.wholeUp(100 * worst.use());
      d.figure(percent, 100, "% of strength");
      sentence = text("%s asks its joint of %s and %s for %.0f %% of its strength.", by, j.a(), j.b(), percent);
    }
    out.add(d.say(sentence, good.isEmpty()
        ? "Do not lift it by any single rock: carry it on a board, or make a joint in the tank."
        : "Hold it by " + either(good) + ", never by " + either(never) + "."));
  }

  /** What comes apart first, then what is not settled, then by the strength it would need. */
  private static double gravity(PieceLift lift) {
    return Double.isInfinite(lift.use()) ? Double.NEGATIVE_INFINITY : Double.isNaN(lift.use()) ? -Double.MAX_VALUE : -lift.use();
  }

  private static String either(List<String> names) {
    int n = names.size();
    return n == 1 ? names.get(0) : String.join(", ", names.subList(0, n - 1)) + " or " + names.get(n - 1);
  }
}
