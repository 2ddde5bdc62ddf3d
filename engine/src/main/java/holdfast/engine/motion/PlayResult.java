package holdfast.engine.motion;

import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Side;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What came of playing a disturbance. */
public sealed interface PlayResult {

  /**
   * Played out.
   *
   * @param outcomes one a rock, in the order given
   * @param hits blows on panes, in the order of time
   * @param broken bonds that broke, in the order of time
   * @param frames poses over time, every rock in the order given
   * @param seconds time from the disturbance to rest
   * @param rested everything lay still within the time allowed
   */
  record Played(
      List<Outcome> outcomes, List<PaneHit> hits, List<Broken> broken, List<Frame> frames, double seconds, boolean rested)
      implements PlayResult {
    public Played {
      outcomes = List.copyOf(outcomes);
      hits = List.copyOf(hits);
      broken = List.copyOf(broken);
      frames = List.copyOf(frames);
    }

    /** Whether any rock fell. */
    public boolean anyFell() {
      return outcomes.stream().anyMatch(o -> o.fate() == Fate.FELL);
    }
  }

  /** Nothing was played; {@code reason} is a sentence for people. */
  record NotPlayed(String reason) implements PlayResult {}

  /** How it ended for one rock. */
  enum Fate {
    STAYED("stayed"), ROCKED("rocked and came back"), SHIFTED("shifted"), FELL("fell"), REMOVED("was taken out");

    private final String words;

    Fate(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * How it ended for one rock.
   *
   * @param shiftM distance of its centre of mass from where it was
   * @param turnRad by how much it is turned
   * @param dropM how much lower its centre of mass is
   * @param mostM the farthest that any of its points strayed on the way (an upper bound)
   * @param landedAtM where its centre of mass came to rest
   * @param restsOn what it touches in the end, in order
   * @param landing the hardest landing on the way, if it fell
   */
  record Outcome(
      String rock, Fate fate, double shiftM, double turnRad, double dropM, double mostM,
      Vec3 landedAtM, List<String> restsOn, Optional<Landing> landing) {
    public Outcome {
      restsOn = List.copyOf(restsOn);
    }
  }

  /** The most energy that a falling rock had, joules, and its speed then: what a landing can spend. */
  record Landing(double energyJ, double speedMS) {}

  /**
   * A blow on a side pane.
   *
   * @param timeS after the disturbance
   * @param speedMS speed of the touching corner toward the pane
   * @param energyJ energy of that approach: half the mass that the pane feels at that corner times the speed squared
   * @param rockEnergyJ all of the rock's energy of motion
   * @param atM the corner that touched
   */
  record PaneHit(String rock, Side side, double timeS, double speedMS, double energyJ, double rockEnergyJ, Vec3 atM) {}

  /** A bond that broke. */
  record Broken(String a, String b, double timeS) {}

  /** Poses of all rocks at one time. */
  record Frame(double timeS, List<Pose> poses) {
    public Frame {
      poses = List.copyOf(poses);
    }
  }

  /** Both cases, exhaustively. */
  default <T> T match(Function<Played, T> played, Function<NotPlayed, T> notPlayed) {
    if (this instanceof Played p) return played.apply(p);
    return notPlayed.apply((NotPlayed) this);
  }
}
