package holdfast.engine.check;

import holdfast.engine.pane.PaneReport;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.State;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Everything that the check of one scene found, worst first. The same scene and options give the same report on every
 * run and any number of threads.
 *
 * @param scene what was checked
 * @param verdict the one word
 * @param headline one line of verdict for people
 * @param findings worst first; within a severity in the order of {@link Code}
 * @param states how the heap fares in each state
 * @param rocks one line a rock, in the order of the placements
 * @param joints every pair of rocks that bear on each other
 * @param feet every foot
 * @param gaps least distances to panes and devices
 * @param pane the bottom pane
 * @param variations how it fares when friction, masses and contacts are guessed otherwise, when that was asked
 * @param cautions what every reader must be told
 */
public record CheckReport(
    Scene scene, Verdict verdict, String headline, List<Finding> findings,
    List<StateLine> states, List<RockLine> rocks, List<JointLine> joints, List<FootLine> feet, List<GapLine> gaps,
    Optional<PaneReport> pane, Optional<VariationsResult> variations, List<String> cautions) {

  public CheckReport {
    findings = List.copyOf(findings);
    states = List.copyOf(states);
    rocks = List.copyOf(rocks);
    joints = List.copyOf(joints);
    feet = List.copyOf(feet);
    gaps = List.copyOf(gaps);
    cautions = List.copyOf(cautions);
  }

  /** A report without variations. */
  public CheckReport(
      Scene scene, Verdict verdict, String headline, List<Finding> findings,
      List<StateLine> states, List<RockLine> rocks, List<JointLine> joints, List<FootLine> feet, List<GapLine> gaps,
      Optional<PaneReport> pane, List<String> cautions) {
    this(scene, verdict, headline, findings, states, rocks, joints, feet, gaps, pane, Optional.empty(), cautions);
  }

  /** The whole in a word. */
  public enum Verdict {
    PASSES("passes"), FAILS("fails"), UNDECIDED("undecided"),
    /** No rock has a place, and nothing is wrong with the tank alone. */
    NOTHING("nothing to judge");

    private final String word;

    Verdict(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** What the heap does under its own weight. */
  public enum Standing {
    STAYS("stays"), SQUEEZED("held only by squeeze"), FALLS("falls"), UNDECIDED("undecided");

    private final String word;

    Standing(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /**
   * One state.
   *
   * @param shakeG sideways acceleration in g that starts the first collapse, confirmed by staying
   * @param shakeAtMostG what the force balance alone allows
   * @param shakeDegrees the weakest direction
   * @param collapse how it first moves, a twist for each rock: by its weight where it does not stay, else when shaken past
   *     its margin; empty where that was not seen or there is no margin
   */
  public record StateLine(
      State state, Standing standing, double shakeG, double shakeAtMostG, double shakeDegrees, Optional<Mechanism> collapse) {}

  /**
   * The push margin from one side: the least over the push lines and the states.
   *
   * @param degrees direction of the push: 0 to the right, 90 to the back
   * @param marginN newtons; never above what staying confirmed
   * @param atMostN what the force balance alone allows: nothing above it stays; of a rock's weakest direction
   * @param unlimited the margin is at least {@code marginN}; no limit was found below the cap
   */
  public record PushLine(
      double degrees, double marginN, OptionalDouble atMostN, boolean unlimited, Movement movement, State state) {}

  /**
   * One rock.
   *
   * @param submergedN its weight in the filled tank, newtons
   * @param topMm height of its highest point above the inner bottom
   * @param rose its push margins round the compass; empty where they were not asked for
   * @param weakest the least of them
   * @param pressN the least downward press at its outermost points that tips something, capped; never above what staying
   *     confirmed
   */
  public record RockLine(
      String name, String kind, double dryKg, double submergedN, double topMm,
      List<PushLine> rose, Optional<PushLine> weakest, double pressN) {
    public RockLine {
      rose = List.copyOf(rose);
    }
  }

  /**
   * Two rocks that bear on each other.
   *
   * @param patches number of contact patches
   * @param areaMm2 their area before drawing in
   * @param distanceMm above zero they hover, below zero they overlap
   * @param bond what fixes them in the scene
   * @param use the largest part of the bond's strength that is called on in any state, 1 = all; 0 without a bond
   */
  public record JointLine(String a, String b, int patches, double areaMm2, double distanceMm, JointSpec.Bond bond, double use) {}

  /**
   * A foot: where a rock bears on the floor.
   *
   * @param on what it stands on, in words
   * @param leastN least force that it can carry with the heap in balance, in the governing state
   * @param mostN most force
   * @param bounded the most is a real bound; when false the rock is wedged
   */
  public record FootLine(String rock, String on, double areaMm2, double leastN, double mostN, boolean bounded, State state) {}

  /** Least distance of a rock to a pane or a device, against its limit. */
  public record GapLine(String rock, String to, double gapMm, double limitMm) {}

  public boolean fails() {
    return findings.stream().anyMatch(f -> f.severity() == Severity.FAIL);
  }
}
