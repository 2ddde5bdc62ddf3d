package holdfast.app.report;

import static java.math.RoundingMode.CEILING;

import holdfast.engine.pane.PaneReport;
import holdfast.engine.pane.PaneReport.CaseStress;
import holdfast.engine.pane.PaneReport.FootBearing;
import holdfast.engine.pane.PaneReport.Slip;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The bottom pane, for people: loads and stresses rounded up. */
final class PaneText {
  private PaneText() {}

  /** The table of load cases. */
  static Table cases(PaneReport pane, Units units) {
    String stress = units.sign(Quantity.STRESS);
    Table t = new Table().words("loaded").words("carried on").figures("water\n" + stress).figures("rocks\n" + stress)
        .figures("both\n" + stress).figures("of design\nstrength").figures("of trade's\nrule")
        .figures("sag\n" + units.sign(Quantity.LENGTH)).words("");
    for (CaseStress c : pane.cases()) {
      t.row(c.load().word(), c.bed(), units.number(Quantity.STRESS, c.waterNmm2(), CEILING),
          units.number(Quantity.STRESS, c.rocksNmm2(), CEILING), units.number(Quantity.STRESS, c.totalNmm2(), CEILING),
          percent(c.utilisation()), percent(c.tradeUtilisation()),
          Units.fixed(Quantity.LENGTH.in(units, c.deflectionMm()), units == Units.US ? 3 : 2, CEILING),
          c.equals(pane.governing()) ? "governs" : "");
    }
    return t;
  }

  /** What stands under the table: one sentence each. */
  static List<String> notes(PaneReport pane, Units units) {
    List<String> notes = new ArrayList<>();
    notes.add(units.brief(Quantity.LENGTH, pane.plate().thicknessM() * 1e3) + " of glass; "
        + units.brief(Quantity.LENGTH, pane.usualGlassMm()) + " is usual for a tank of this size.");
    CaseStress g = pane.governing();
    if (!g.rock().isEmpty() && g.rockShare() > 0) {
      notes.add("Where the stress is highest, the foot of " + g.rock() + " adds " + percent(g.rockShare()) + " of it with "
          + units.text(Quantity.FORCE, g.rockN(), CEILING) + ".");
    }
    pane.feet().stream().max(Comparator.comparingDouble(FootBearing::pressureNmm2)).ifPresent(f -> notes.add(
        "Highest pressure on the glass: " + units.text(Quantity.STRESS, f.pressureNmm2(), CEILING) + " under " + f.rock()
            + (f.bare() ? ", on bare glass." : "; on bare glass it would be "
            + units.text(Quantity.STRESS, f.pressureBareNmm2(), CEILING) + ".")));
    pane.slip().ifPresent(s -> notes.add(slip(s, units)));
    pane.assumptions().forEach(a -> notes.add(units.prose(a)));
    return notes;
  }

  private static String slip(Slip s, Units units) {
    String bare = "strikes bare glass with about " + newtons(s.bare().peakN(), units);
    String covered = "the " + s.cover() + " with " + newtons(s.covered().peakN(), units);
    return "Let slip from " + units.brief(Quantity.LENGTH, s.heightMm()) + ", " + s.rock() + " ("
        + units.text(Quantity.MASS, s.massKg(), CEILING) + ") " + bare + ", " + covered + ".";
  }

  private static String newtons(double n, Units units) {
    return Units.fixed(Quantity.FORCE.in(units, n), 0, CEILING) + " " + units.sign(Quantity.FORCE);
  }

  private static String percent(double share) {
    return Units.fixed(100 * share, 0, CEILING) + " %";
  }
}
