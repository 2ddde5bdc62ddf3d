package holdfast.app.report;

import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckReport.PushLine;
import holdfast.engine.check.CheckReport.RockLine;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.statics.State;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A check for programs, format {@code holdfast-report/1}: metric, every unit in the name of its figure, the same names in
 * the same order on every run. A figure that is not known or has no bound is {@code null}. Directions are degrees, 0 to
 * the right and 90 to the back.
 */
public final class JsonReport {
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
    root.put("cautions", r.cautions());
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
    m.put("title", f.code().title());
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
    m.put("at_most_n", p.atMostN());
    m.put("unlimited", p.unlimited());
    m.put("movement", p.movement().word());
    m.put("state", word(p.state()));
    return m;
  }

  private static String word(State s) {
    return s.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Double boxed(OptionalDouble d) {
    return d.isPresent() ? (Double) d.getAsDouble() : null;
  }
}
