package holdfast.engine.bench;

import holdfast.engine.check.Questions;
import holdfast.engine.motion.PlayJob;
import holdfast.engine.motion.SceneBodies;
import holdfast.engine.motion.SlowPush;
import holdfast.model.scene.Setting;
import java.util.OptionalDouble;

/** A layout in the 3D engine, in air as the engine's slow push is calibrated, pushed slowly. */
final class EnginePlay {
  private final Layout layout;
  private final PlayJob job;

  EnginePlay(Layout layout) {
    this.layout = layout;
    var bodies = SceneBodies.of(layout.scene(), layout.shapes().bodies().values());
    job = PlayJob.dry(bodies, SceneBodies.tank(layout.scene(), bodies), SceneBodies.friction(layout.scene().settings()))
        .withStepHz(240);
  }

  /** One play at the tier. */
  boolean moves(Questions.OnePush push) {
    double tier = layout.scene().settings().get(Setting.PUSH_TIER_N);
    return least(push, tier, 1).isPresent();
  }

  /** The least push that moves anything, to {@code share} of itself; empty above {@code most}. */
  OptionalDouble least(Questions.OnePush push, double most, double share) {
    String rock = layout.placed().get(push.rock()).rock().name();
    return SlowPush.leastN(job, rock, push.push().at(), push.push().direction(), 0, most, share);
  }
}
