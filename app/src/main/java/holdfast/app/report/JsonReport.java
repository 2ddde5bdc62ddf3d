package holdfast.app.report;

import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckReport.PushLine;
import holdfast.engine.check.CheckReport.RockLine;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.pane.PaneReport;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Twist;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A check for programs, format {@code holdfast-report/1}: metric, every unit in the name of its figure, the same names in
 * the same order on every run. A figure that is not known or has no bound is {@code null}. Directions are degrees, 0 to
 * the right and 90 to the back.
 */
public final class JsonReport {
  /** Of a movement whose fastest point goes at 1 m/s: what is slower than this is not told. */
  private static final double STILL = 1e-3;

  public static final String FORMAT = "holdfast-report/1";

  private JsonReport() {}

  public static String of(CheckReport r) {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("format", FORMAT);
    root.put("scene", r.scene().name());
    root.put("verdict", r.verdict().word());
    root.put("headline", r.headline());
    root.put("counts", counts(r));
    root.put("findings", r.findings().stream().map(JsonReport::finding).toList());
    root.put("states", r.states().stream().map(s -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("state", word(s.state()));
      m.put("standing", s.standing().word());
      m.put("shake_g", s.shakeG());
      m.put("shake_at_most_g", s.shakeAtMostG());
      m.put("shake_toward_deg", s.shakeDegrees());
      s.collapse().ifPresent(c -> m.put("first_movement", movement(r, c)));
      return m;
    }).toList());
    root.put("rocks", r.rocks().stream().map(JsonReport::rock).toList());
    root.put("joints", r.joints().stream().map(j -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("between", List.of(j.a(), j.b()));
      m.put("patches", j.patches());
      m.put("area_mm2", j.areaMm2());
      m.put("distance_mm", j.distanceMm());
      m.put("bond", j.bond().word());
      m.put("bond_use", j.use());
      return m;
    }).toList());
    root.put("feet", r.feet().stream().map(f -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("rock", f.rock());
      m.put("on", f.on());
      m.put("area_mm2", f.areaMm2());
      m.put("least_n", f.leastN());
      m.put("most_n", f.bounded() ? f.mostN() : null);
      m.put("state", word(f.state()));
      return m;
    }).toList());
    root.put("gaps", r.gaps().stream().map(g -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("rock", g.rock());
      m.put("to", g.to());
      m.put("gap_mm", g.gapMm());
      m.put("limit_mm", g.limitMm());
      return m;
    }).toList());
    root.put("bottom_pane", r.pane().map(JsonReport::pane).orElse(null));
    r.variations().ifPresent(v -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("count", v.count());
      m.put("seed", v.seed());
      m.put("stands", v.stands());
      m.put("passes", v.passes());
      Map<String, Object> weak = new LinkedHashMap<>();
      v.weak().forEach(w -> weak.put(w.rock(), w.times()));
      m.put("gave_way_first", weak);
      root.put("variations", m);
    });
    root.put("own_figures", OwnFigures.of(r.scene().settings()).stream().map(o -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("setting", o.setting().key());
      m.put("value", o.value());
      m.put("usual", o.setting().initial());
      m.put("unit", o.setting().unit());
      return m;
    }).toList());
    Set<String> cautions = new LinkedHashSet<>(r.cautions());
    r.pane().ifPresent(p -> cautions.addAll(p.cautions()));
    root.put("cautions", cautions);
    return Json.text(root);
  }

  private static Map<String, Object> counts(CheckReport r) {
    Map<String, Object> m = new LinkedHashMap<>();
    for (Severity s : Severity.values()) {
      m.put(s.word(), r.findings().stream().filter(f -> f.severity() == s).count());
    }
    return m;
  }

  private static Map<String, Object> finding(Finding f) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("code", f.code().word());
    m.put("severity", f.severity().word());
    m.put("title", f.title());
    m.put("about", f.about());
    m.put("figure", boxed(f.figure()));
    m.put("limit", boxed(f.limit()));
    m.put("unit", f.unit());
    m.put("state", f.state().map(JsonReport::word).orElse(null));
    m.put("sentence", f.sentence());
    m.put("remedy", f.remedy());
    return m;
  }

  private static Map<String, Object> rock(RockLine r) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("name", r.name());
    m.put("kind", r.kind());
    m.put("dry_kg", r.dryKg());
    m.put("submerged_n", r.submergedN());
    m.put("top_mm", r.topMm());
    m.put("press_n", r.pressN());
    m.put("weakest_push", r.weakest().map(JsonReport::push).orElse(null));
    m.put("push_rose", r.rose().stream().map(JsonReport::push).toList());
    return m;
  }

  private static Map<String, Object> push(PushLine p) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("toward_deg", p.degrees());
    m.put("margin_n", p.marginN());
    p.atMostN().ifPresent(n -> m.put("at_most_n", n));
    m.put("unlimited", p.unlimited());
    m.put("movement", p.movement().word());
    m.put("state", word(p.state()));
    return m;
  }

  private static Map<String, Object> pane(PaneReport p) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("glass_mm", p.plate().thicknessM() * 1e3);
    m.put("usual_glass_mm", p.usualGlassMm());
    m.put("trade_allowable_n_mm2", p.strength().tradeLimitNmm2());
    m.put("load_factor", p.strength().loadFactor());
    m.put("cases", p.cases().stream().map(c -> {
      Map<String, Object> s = new LinkedHashMap<>();
      s.put("loaded", c.load().word());
      s.put("carried_on", c.bed());
      s.put("foam_n_m3", boxed(c.foamNm3()));
      s.put("water_n_mm2", c.waterNmm2());
      s.put("rocks_n_mm2", c.rocksNmm2());
      s.put("total_n_mm2", c.totalNmm2());
      s.put("at_mm", List.of(c.xMm(), c.yMm()));
      s.put("design_n_mm2", c.designNmm2());
      s.put("of_design", c.utilisation());
      s.put("of_design_water_alone", c.waterUtilisation());
      s.put("of_trade", c.tradeUtilisation());
      s.put("deflection_mm", c.deflectionMm());
      s.put("governs", c.equals(p.governing()));
      return s;
    }).toList());
    m.put("feet", p.feet().stream().map(f -> {
      Map<String, Object> s = new LinkedHashMap<>();
      s.put("rock", f.rock());
      s.put("at_mm", List.of(f.xMm(), f.yMm()));
      s.put("most_n", f.mostN());
      s.put("area_mm2", f.contactMm2());
      s.put("pressure_n_mm2", f.pressureNmm2());
      s.put("pressure_bare_n_mm2", f.pressureBareNmm2());
      s.put("pressure_grid_n_mm2", f.pressureGridNmm2());
      s.put("ring_tension_n_mm2", boxed(f.ring()));
      return s;
    }).toList());
    m.put("stress_map", stressMap(p.map()));
    m.put("remedies", p.remedies().stream().map(r -> {
      Map<String, Object> s = new LinkedHashMap<>();
      s.put("kind", r.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
      s.put("act", r.act());
      s.put("of_design_after", r.utilisation());
      return s;
    }).toList());
    m.put("slip", p.slip().map(JsonReport::slip).orElse(null));
    m.put("assumptions", p.assumptions());
    return m;
  }

  /** A coarse net over the pane in the governing case: rows from the front, each from the left. */
  private static Map<String, Object> stressMap(PaneReport.StressMap map) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("loaded", map.load().word());
    m.put("carried_on", map.bed());
    m.put("first_at_mm", List.of(map.firstXMm(), map.firstYMm()));
    m.put("step_mm", List.of(map.stepXMm(), map.stepYMm()));
    m.put("stress_n_mm2", rows(map, map.stressNmm2()));
    m.put("deflection_mm", rows(map, map.deflectionMm()));
    return m;
  }

  private static List<List<Double>> rows(PaneReport.StressMap map, List<Double> values) {
    return IntStream.range(0, map.rows()).mapToObj(r -> values.subList(r * map.columns(), (r + 1) * map.columns())).toList();
  }

  private static Map<String, Object> slip(PaneReport.Slip slip) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("rock", slip.rock());
    m.put("mass_kg", slip.massKg());
    m.put("height_mm", slip.heightMm());
    m.put("bare_peak_n", slip.bare().peakN());
    m.put("covered_peak_n", slip.covered().peakN());
    m.put("cover", slip.cover());
    return m;
  }

  /**
   * The rocks that move, with the velocity of their centre of mass in m/s and their spin in rad/s; the fastest point goes at
   * 1 m/s.
   */
  private static List<Map<String, Object>> movement(CheckReport r, Mechanism how) {
    List<Map<String, Object>> out = new ArrayList<>();
    for (int i = 0; i < how.twists().size(); i++) {
      Twist t = how.twists().get(i);
      if (t.velocity().norm() < STILL && t.spin().norm() < STILL) continue;
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("rock", r.rocks().get(i).name());
      m.put("velocity_m_s", List.of(t.velocity().x(), t.velocity().y(), t.velocity().z()));
      m.put("spin_rad_s", List.of(t.spin().x(), t.spin().y(), t.spin().z()));
      out.add(m);
    }
    return out;
  }

  private static String word(State s) {
    return s.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Double boxed(OptionalDouble d) {
    return d.isPresent() ? (Double) d.getAsDouble() : null;
  }
}
