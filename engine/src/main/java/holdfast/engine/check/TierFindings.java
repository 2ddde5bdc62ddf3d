package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.bonding.TierQuestion;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.scene.Setting;
import java.util.List;
import java.util.stream.IntStream;

/** The first load of the tier under which something goes over: for one who moves a rock and cannot wait for margins. */
final class TierFindings {
  private TierFindings() {}

  /** At most one; none either where a heap does not even bear its own weight, which {@link StandingFindings} tells. */
  static List<Finding> of(HeapStudy study, int threads) {
    boolean stands = IntStream.range(0, study.scene().rocks().size()).allMatch(study::safeUnderWeight);
    if (!stands) return List.of();
    return TierQuestion.first(study.scene(), threads, study.recall()).map(no -> told(study.scene(), no)).stream().toList();
  }

  private static Finding told(SceneHeap scene, TierQuestion.Refusal no) {
    String name = scene.name(no.rock());
    double newtons = no.share() * scene.scene().settings().get(Setting.PUSH_TIER_N);
    String toward = Headings.word(no.way());
    return switch (no.kind()) {
      case STAYING -> Draft.fail(Code.UNDECIDED).about(name).in(no.state()).say(
          text("Whether %s and what it bears on stay could not be settled.", name), "Treat it as falling.");
      case SHAKING -> Draft.fail(Code.SHAKES).about("the heap").in(no.state()).say(
          text("The heap of %s does not bear being shaken with %.3f g toward the %s.", name,
              no.share() * scene.scene().settings().get(Setting.SHAKE_G), toward), PushFindings.STEADIER);
      case PUSHING, SLIDING -> no.way().z() < 0
          ? Draft.fail(Code.PRESSED).about(name).in(no.state()).say(
              text("%s does not bear being pressed down on its rim with %.1f N.", name, newtons),
              PushFindings.underItsRim(scene, no.rock()))
          : Draft.fail(Code.TOPPLES).about(name).in(no.state()).say(
              text("%s does not bear a push of %.1f N toward the %s.", name, newtons, toward),
              PushFindings.broaderFoot(scene, no.rock()));
    };
  }
}
