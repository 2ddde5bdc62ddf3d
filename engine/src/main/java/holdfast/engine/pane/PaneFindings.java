package holdfast.engine.pane;

import holdfast.engine.pane.PaneFinding.Kind;
import holdfast.engine.pane.PaneFinding.Weight;
import holdfast.engine.pane.PaneReport.CaseStress;
import holdfast.engine.pane.PaneReport.FootBearing;
import holdfast.engine.pane.PaneReport.Remedy;
import holdfast.engine.pane.PaneReport.Slip;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Tank;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Figures into judgements, in plain sentences. */
final class PaneFindings {
  private final Scene scene;
  private final PaneLoad load;
  private final GlassStrength strength;

  PaneFindings(Scene scene, PaneLoad load, GlassStrength strength) {
    this.scene = scene;
    this.load = load;
    this.strength = strength;
  }

  List<PaneFinding> list(List<FootBearing> feet, List<CaseStress> cases, CaseStress governing, Optional<Slip> slip,
      List<Remedy> remedies, double usualMm) {
    List<PaneFinding> all = new ArrayList<>();
    ranges(all);
    stress(all, cases, governing, remedies);
    feet.forEach(f -> foot(all, f));
    slip.ifPresent(s -> slip(all, s));
    glass(all, usualMm);
    all.sort(Comparator.comparing(PaneFinding::weight));
    return all;
  }

  /** Feet without a bound, and sums that do not add up to the weight: then nothing here is decided. */
  private void ranges(List<PaneFinding> all) {
    load.cases().forEach((c, given) -> {
      List<String> wedged = given.feet().stream().filter(f -> !f.bounded()).map(FootLoad::rock).distinct().toList();
      if (!wedged.isEmpty()) {
        all.add(new PaneFinding(Kind.WEDGED, Weight.FAIL, wedged.get(0), Double.NaN, Double.NaN, "", Optional.of(c),
            text("Nothing that was found bounds the force under %s (%s): it is wedged between panes or stones, or stands on an "
                + "edge, and the pane is not decided.", String.join(", ", wedged), c.word()),
            "Loosen it, or lay it on a broad side, so that it rests by its weight alone."));
      }
      double least = given.feet().stream().mapToDouble(FootLoad::leastN).sum();
      double most = given.feet().stream().filter(FootLoad::bounded).mapToDouble(FootLoad::mostN).sum();
      double slack = Tolerances.WEIGHT_SHARE * given.weightN() + 1e-6;
      boolean tooMuch = least > given.weightN() + slack;
      boolean tooLittle = given.allOnFloor() && wedged.isEmpty() && most < given.weightN() - slack;
      if (tooMuch || tooLittle) {
        all.add(new PaneFinding(Kind.UNDECIDED, Weight.FAIL, "bottom pane", tooMuch ? least : most, given.weightN(), "N",
            Optional.of(c),
            text("The forces on the feet (%s) add up to %s %.1f N against a weight of %.1f N: the pane is not decided.",
                c.word(), tooMuch ? "at least" : "at most", tooMuch ? least : most, given.weightN()), ""));
      }
    });
  }

  private void stress(List<PaneFinding> all, List<CaseStress> cases, CaseStress governing, List<Remedy> remedies) {
    CaseStress water = cases.stream().max(Comparator.comparingDouble(CaseStress::waterUtilisation)).orElseThrow();
    if (water.waterUtilisation() > 1) {
      double limit = water.designNmm2() / strength.loadFactor();
      all.add(new PaneFinding(Kind.WATER, Weight.WARN, "bottom pane", water.waterNmm2(), limit, "N/mm2",
          Optional.of(water.load()),
          text("Water and sand alone bend the bottom pane on %s to %.1f N/mm2, over the %.1f N/mm2 that its design strength "
              + "allows; many tanks are sold so. The rocks alone make %.1f N/mm2.",
              water.bed(), up(water.waterNmm2()), down(limit), up(water.rocksNmm2())),
          "Ask the tank's maker what the bottom is made of (toughened glass bears about ten times as much for good) and "
              + "whether rock may be added."));
    }
    Optional<CaseStress> over = cases.stream().filter(PaneFindings::rocksOver)
        .max(Comparator.comparingDouble(CaseStress::utilisation));
    if (over.isPresent()) {
      CaseStress s = over.get();
      double limit = s.designNmm2() / strength.loadFactor();
      all.add(new PaneFinding(Kind.STRESS, Weight.FAIL, s.rock(), s.totalNmm2(), limit, "N/mm2", Optional.of(s.load()),
          text("With the rocks the bottom pane on %s (%s) reaches %.1f N/mm2 against %.1f N/mm2 allowed; the foot of "
                  + "%s, with up to %.0f N, adds %.0f %% of it. The trade's rule allows %.2f N/mm2.",
              s.bed(), s.load().word(), up(s.totalNmm2()), down(limit), s.rock(), Math.ceil(s.rockN()), 100 * s.rockShare(),
              strength.tradeLimitNmm2()),
          advice(remedies)));
      return;
    }
    cases.stream().filter(s -> s.waterUtilisation() <= 1 && s.oneSpotNmm2() * strength.loadFactor() > s.designNmm2())
        .max(Comparator.comparingDouble(s -> s.oneSpotNmm2() / s.designNmm2()))
        .ifPresent(s -> all.add(new PaneFinding(Kind.STRESS, Weight.WARN, s.rock(), s.oneSpotNmm2(),
            s.designNmm2() / strength.loadFactor(), "N/mm2", Optional.of(s.load()),
            text("If %s bore on one high spot of its foot, the bottom pane on %s (%s) would reach %.1f N/mm2 against %.1f "
                    + "N/mm2 allowed; spread over the foot it is %.1f N/mm2.",
                s.rock(), s.bed(), s.load().word(), up(s.oneSpotNmm2()), down(s.designNmm2() / strength.loadFactor()),
                up(s.totalNmm2())),
            "Seat it so that it bears all round, or bed it in putty.")));
    if (governing.utilisation() <= 1 && governing.tradeUtilisation() > 1) {
      all.add(new PaneFinding(Kind.STRESS, Weight.NOTE, governing.rock(), governing.totalNmm2(), strength.tradeLimitNmm2(),
          "N/mm2", Optional.of(governing.load()),
          text("The bottom pane's %.1f N/mm2 passes the standard's route but not the trade's rule of %.2f (common practice).",
              up(governing.totalNmm2()), strength.tradeLimitNmm2()), ""));
    }
  }

  /**
   * The rocks take the pane over its limit: they alone do, or water alone does not and both together do.
   */
  static boolean rocksOver(CaseStress s) {
    return s.rocksUtilisation() > 1 || (s.waterUtilisation() <= 1 && s.utilisation() > 1);
  }

  /** What is enough, each with what it leaves; where nothing is, how far the best comes and how much rock would do. */
  private static String advice(List<Remedy> remedies) {
    List<String> good = remedies.stream().filter(r -> r.utilisation() <= 1)
        .map(r -> text("%s (%.0f %% of what is allowed)", r.act(), Math.ceil(100 * r.utilisation()))).toList();
    if (good.isEmpty()) return "Carry less rock on this pane, spread it over more feet, or ask the tank's maker.";
    String joined = String.join("; or ", good);
    boolean onlyLess = remedies.stream().noneMatch(r -> r.utilisation() <= 1 && r.kind() != Remedy.Kind.LESS_ROCK);
    return (onlyLess ? "No grid, wider foot, shim or move is enough by itself: l" + joined.substring(1)
        : Character.toUpperCase(joined.charAt(0)) + joined.substring(1)) + ".";
  }

  private void foot(List<PaneFinding> all, FootBearing f) {
    double limit = scene.settings().get(Setting.FOOT_PRESSURE_N_MM2);
    if (f.pressureNmm2() > limit) {
      String sand = f.onSand() ? " The sand under it is not counted: it is dug away." : "";
      String sentence = f.bare()
          ? text("The foot of %s presses on bare glass with up to %.0f N (%s), on one spot %.1f N/mm2; the walls of a louvre "
                  + "grid would take it at %.2f N/mm2.%s",
              f.rock(), Math.ceil(f.mostN()), f.load().word(), up(f.pressureNmm2()), f.pressureGridNmm2(), sand)
          : text("The foot of %s presses through the %s with up to %.0f N (%s), %.1f N/mm2 on the glass.%s",
              f.rock(), scene.floor().kind() == Floor.Kind.SHEET ? "sheet" : "walls of the grid", Math.ceil(f.mostN()),
              f.load().word(), up(f.pressureNmm2()), sand);
      all.add(new PaneFinding(Kind.POINT_LOAD, f.bare() ? Weight.FAIL : Weight.WARN, f.rock(), f.pressureNmm2(), limit, "N/mm2",
          Optional.of(f.load()), sentence,
          f.bare() ? "Lay a louvre grid or a clean sheet under it, or stand it on a broad foot." : "Turn a broader face down."));
    }
    if (f.ring().isPresent() && f.ring().getAsDouble() > strength.characteristicNmm2()) {
      all.add(new PaneFinding(Kind.POINT_LOAD, Weight.WARN, f.rock(), f.ring().getAsDouble(), strength.characteristicNmm2(),
          "N/mm2", Optional.of(f.load()),
          text("If %s stood on a point of %.0f mm radius, bare glass would see %.0f N/mm2 round the point: enough to start a "
                  + "crack at a scratch. The figure is good to a factor of two, for comparing with a grid, where no stone "
                  + "touches glass.",
              f.rock(), scene.settings().get(Setting.POINT_RADIUS_MM), f.ring().getAsDouble()),
          "Keep stone off bare glass."));
    }
  }

  private void slip(List<PaneFinding> all, Slip s) {
    double design = strength.designNmm2(LoadDuration.BLOW);
    PaneReport.Strike now = s.coveredNow() ? s.covered() : s.bare();
    boolean bad = now.bendingNmm2() > design || now.ringNmm2() > strength.characteristicNmm2();
    String where = s.coveredNow() ? "the " + s.cover() : "bare glass";
    all.add(new PaneFinding(Kind.STRIKE, bad ? Weight.WARN : Weight.NOTE, s.rock(), now.bendingNmm2(), design, "N/mm2",
        Optional.empty(),
        text("%s, %.1f kg, let slip from %.0f mm onto %s would strike with about %.0f N and bend the pane to %.0f N/mm2; "
                + "on %s %.0f N and %.0f N/mm2%s. Good to a factor of two: it compares floors and shows no safety.",
            s.rock(), s.massKg(), s.heightMm(), where, now.peakN(), now.bendingNmm2(),
            s.coveredNow() ? "bare glass" : "a " + s.cover(), other(s).peakN(), other(s).bendingNmm2(),
            s.coveredNow() ? text(", with %.0f N/mm2 round the point", s.bare().ringNmm2()) : ""),
        bad ? "Lower rocks with both hands, with a folded towel on the bottom, before any water is in." : ""));
  }

  private static PaneReport.Strike other(Slip s) {
    return s.coveredNow() ? s.bare() : s.covered();
  }

  private void glass(List<PaneFinding> all, double usualMm) {
    Tank tank = scene.tank();
    if (tank.bottomGlassMm() < usualMm - 0.05) {
      all.add(new PaneFinding(Kind.THICKNESS, Weight.WARN, "bottom pane", tank.bottomGlassMm(), usualMm, "mm", Optional.empty(),
          text("The bottom pane of %s mm is thinner than the %.0f mm%s that is common for a tank of this size.",
              text("%.1f", tank.bottomGlassMm()).replaceFirst("\\.0$", ""), usualMm, usualMm >= 12 ? " or more" : ""),
          "Measure it again, and ask the tank's maker."));
    }
    if (tank.bottomSupport() == Tank.BottomSupport.UNKNOWN) {
      all.add(new PaneFinding(Kind.SUPPORT, Weight.WARN, "bottom pane", Double.NaN, Double.NaN, "", Optional.empty(),
          "What carries the bottom pane is not known; the worst of four edges, soft foam and stiff foam was taken.",
          "Look under the tank: a rim or frame carries the edges and wants no foam; a rimless tank wants a flat deck and foam "
              + "all over."));
    }
    if (tank.drilledBottom()) {
      all.add(new PaneFinding(Kind.DRILLED, Weight.WARN, "bottom pane", Double.NaN, Double.NaN, "", Optional.empty(),
          "The bottom pane is drilled; glass by a hole sees two to three times"
              + " the stress worked out here, which leaves holes out.",
          "Keep feet well away from the holes and ask the tank's maker what the bottom may carry."));
    }
  }

  List<String> assumptions(List<FootBearing> feet) {
    Scene s = scene;
    List<String> all = new ArrayList<>();
    all.add(text("The pane is flat and thin, E %.0f N/mm2, Poisson ratio %.2f, without holes, carried at the middle of the side "
            + "panes.",
        s.settings().get(Setting.GLASS_YOUNG_N_MM2), s.settings().get(Setting.GLASS_POISSON)));
    if (s.tank().bottomSupport() != Tank.BottomSupport.FULL) {
      all.add("On four edges the pane may turn at its edges and does not give there; water and sand press evenly.");
    }
    if (s.tank().bottomSupport() != Tank.BottomSupport.EDGES) {
      all.add(text("On a full deck the foam pushes back with %s to %s MN/m3 (memory; the worse counts), the deck is flat and "
              + "stiff, the pane's edges are free, and water bends nothing; the side panes' weight and stiffness are left out.",
          mega(s.settings().get(Setting.FOAM_SOFT_N_M3)), mega(s.settings().get(Setting.FOAM_STIFF_N_M3))));
    }
    all.add(cover(feet));
    if (feet.stream().anyMatch(FootBearing::onSand)) all.add("Sand spreads nothing: it shifts, and animals dig it away.");
    all.add("Each foot carries any force in its range, together no more than the rocks' weight; the worst set is taken at each "
        + "place.");
    all.add(text("Design strength k_e k_mod k_sp %.0f / 1.8%s, in the form of EN 16612, against %.2f times the stress; k_mod %s.",
        strength.characteristicNmm2(), strength.tempered() ? " + 75 / 1.2 for toughening" : "", strength.loadFactor(),
        Arrays.stream(LoadCase.values())
            .map(c -> text("%.2f %s (%s)", c.duration().kMod(), c.word(), c.duration().word()))
            .collect(Collectors.joining(", "))));
    all.add(text("The trade's rule is %.2f N/mm2 on the plain stress (common practice).", strength.tradeLimitNmm2()));
    return all;
  }

  private String cover(List<FootBearing> feet) {
    Floor floor = scene.floor();
    double spot = scene.settings().get(Setting.SPOT_MM);
    String bare = text("On bare glass all of a foot's force acts on one spot %.0f mm wide.", spot);
    String beside = feet.stream().anyMatch(FootBearing::bare) ? " " + bare : "";
    double inset = scene.settings().get(Setting.CONTACT_INSET_MM);
    return switch (floor.kind()) {
      case BARE -> bare;
      case GRID -> text("The grid's walls carry a foot over its contact, drawn in by %.0f mm, and spread it %.1f mm to every "
          + "side (0.76 of the grid's height: a wall bending on its own squeeze); it lies flat on the glass.%s", inset,
          FloorSpread.GRID_SPREAD * floor.thicknessMm(), beside);
      case SHEET -> text("The sheet spreads a foot's contact, drawn in by %.0f mm, by %.1f mm to every side (0.88 of its "
          + "thickness); no grit lies under it.%s", inset, FloorSpread.SHEET_SPREAD * floor.thicknessMm(), beside);
    };
  }

  List<String> cautions() {
    List<String> all = new ArrayList<>();
    all.add("Glass can fail suddenly, long after loading, from a scratch or a grain under the tank that nothing here can see. "
        + "These figures screen a layout; the tank's maker decides what the bottom may carry.");
    all.add("No building or glazing standard governs the glass of an aquarium; the strength used here borrows the form of one.");
    return all;
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  /** To a tenth, a stress never told smaller than it is, nor a limit greater. */
  private static double up(double stress) {
    // Not -0.0 where there is none.
    return Math.ceil(10 * stress - 1e-6) / 10 + 0.0;
  }

  private static double down(double limit) {
    return Math.floor(10 * limit + 1e-6) / 10;
  }

  /** Millions, to three digits. */
  private static String mega(double value) {
    return new BigDecimal(value * 1e-6).round(new MathContext(3)).stripTrailingZeros().toPlainString();
  }
}
