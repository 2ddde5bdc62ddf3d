package holdfast.engine.pane;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was found about the bottom pane. Places are in the tank's axes, millimetres from the inner front-left corner.
 *
 * @param plate the pane as computed: inside size and half a side pane more on each side, where it is carried
 * @param strength what its glass may bear
 * @param usualGlassMm thickness that is usual for the tank's size (common practice)
 * @param feet every foot and how it presses, in the order they came
 * @param cases stress in each load case on each bed that was tried
 * @param governing the one of {@code cases} with the highest utilisation on the standard's route; where rocks take any over
 *     its limit, the highest of those
 * @param map stress over the pane in the governing case
 * @param slip what a rock let slip would do
 * @param remedies what was tried to bring the pane under its limit; empty where nothing need be mended
 * @param findings worst first
 * @param assumptions what the figures rest on, plain sentences
 * @param cautions what every reader must be told
 * @param load what was put on the floor, so that a finer map can be had
 */
public record PaneReport(
    Plate plate, GlassStrength strength, double usualGlassMm, List<FootBearing> feet, List<CaseStress> cases,
    CaseStress governing, StressMap map, Optional<Slip> slip, List<Remedy> remedies, List<PaneFinding> findings,
    List<String> assumptions, List<String> cautions, PaneLoad load) {

  public PaneReport {
    feet = List.copyOf(feet);
    cases = List.copyOf(cases);
    remedies = List.copyOf(remedies);
    findings = List.copyOf(findings);
    assumptions = List.copyOf(assumptions);
    cautions = List.copyOf(cautions);
  }

  /**
   * One foot on the floor, at the most force that any load case puts on it.
   *
   * @param xMm centre of the contact
   * @param yMm centre of the contact
   * @param outline corners of the contact in metres, tank axes
   * @param contactMm2 area of the contact as found
   * @param pressureNmm2 pressure where it meets the glass, through the floor as it is
   * @param pressureBareNmm2 the same on bare glass, on one spot
   * @param pressureGridNmm2 the same under the walls of a louvre grid: the scene's own, or the usual one
   * @param bare nothing lies between foot and glass
   * @param onSand it bears on sand, which is not counted on
   * @param ring ring tension about a stone's point on bare glass, N/mm2; absent where something lies between
   */
  public record FootBearing(
      String rock, double xMm, double yMm, List<Point2> outline, double mostN, LoadCase load, double contactMm2,
      double pressureNmm2, double pressureBareNmm2, double pressureGridNmm2, boolean bare, boolean onSand,
      OptionalDouble ring) {
    public FootBearing {
      outline = List.copyOf(outline);
    }
  }

  /**
   * Stress in one load case on one bed; the greatest surface tension anywhere on the pane, N/mm2, loads as they are.
   *
   * @param bed what carries the pane, in words
   * @param foamNm3 stiffness of the foam; absent for four edges
   * @param waterNmm2 the water's (and sand's) own
   * @param rocksNmm2 the rocks' alone
   * @param totalNmm2 both
   * @param xMm where the total is greatest
   * @param yMm where the total is greatest
   * @param rock whose foot adds most there; empty without feet
   * @param rockShare its share of the total
   * @param rockN the force on that foot then
   * @param oneSpotNmm2 the total if that foot bore on a single spot of the floor
   * @param designNmm2 design strength for the duration
   * @param utilisation load factor x total / design strength
   * @param waterUtilisation the same for the water alone
   * @param rocksUtilisation the same for the rocks alone
   * @param tradeUtilisation total / the trade's allowable (common practice)
   * @param deflectionMm greatest deflection, downward; on foam the even sinking under water is left out
   */
  public record CaseStress(
      LoadCase load, String bed, OptionalDouble foamNm3, double waterNmm2, double rocksNmm2, double totalNmm2,
      double xMm, double yMm, String rock, double rockShare, double rockN, double oneSpotNmm2, double designNmm2,
      double utilisation, double waterUtilisation, double rocksUtilisation, double tradeUtilisation, double deflectionMm) {}

  /**
   * Greatest surface tension at points of a grid, row by row from the front, each row from the left, and the deflection
   * under the forces that make the greatest stress.
   *
   * @param columns points along x; the first on the plate's left edge, the last on its right
   * @param rows points along y
   */
  public record StressMap(
      LoadCase load, String bed, int columns, int rows, double firstXMm, double stepXMm, double firstYMm, double stepYMm,
      List<Double> stressNmm2, List<Double> deflectionMm) {
    public StressMap {
      stressNmm2 = List.copyOf(stressNmm2);
      deflectionMm = List.copyOf(deflectionMm);
      if (stressNmm2.size() != columns * rows || deflectionMm.size() != columns * rows) {
        throw new IllegalArgumentException("a map of " + columns + " x " + rows + " had " + stressNmm2.size() + " values");
      }
    }

    public double stressNmm2(int column, int row) {
      return stressNmm2.get(row * columns + column);
    }

    public double deflectionMm(int column, int row) {
      return deflectionMm.get(row * columns + column);
    }
  }

  /** A rock let slip over the middle of the pane: on bare glass and on the floor named, to compare them. */
  public record Slip(
      String rock, double massKg, double heightMm, Strike bare, Strike covered, String cover, boolean coveredNow) {}

  /**
   * One blow.
   *
   * @param rigidN peak force if the pane did not give; the upper bound
   * @param peakN peak force with the pane's and the cover's spring
   * @param bendingNmm2 surface stress of the pane under that force
   * @param ringNmm2 ring tension about the point of contact; 0 where stone does not touch glass
   */
  public record Strike(double rigidN, double peakN, double bendingNmm2, double ringNmm2) {}

  /**
   * Something that can be done.
   *
   * @param act what to do, with the rocks named, to stand after "either" or "or"
   * @param utilisation the highest that is left of any case on any bed, of what the rocks are judged by; over 1 where it is
   *     not enough
   * @param shift the move that the act tells of, where it is nothing but that
   */
  public record Remedy(Kind kind, String act, double utilisation, Optional<Shift> shift) {
    /** Without a move. */
    public Remedy(Kind kind, String act, double utilisation) {
      this(kind, act, utilisation, Optional.empty());
    }

    /** A rock moved over the bottom with what it carries, to the right and back, metres. */
    public record Shift(String rock, double rightM, double backM) {}

    /** Ways to mend. */
    public enum Kind { GRID, WIDER_FOOT, MOVE, SHIM, LESS_ROCK }
  }
}
