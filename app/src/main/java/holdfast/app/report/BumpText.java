package holdfast.app.report;

import holdfast.engine.motion.LeastBlow;
import holdfast.engine.motion.PaneBlow;
import holdfast.engine.motion.PlayResult;
import holdfast.model.geom.Pose;
import holdfast.model.scene.Settings;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a bump did, as text, as JSON, and its frames. */
public final class BumpText {
  private static final int PAGE = 110;

  private BumpText() {}

  /** The line of verdict. */
  public static String verdict(PlayResult.Played p, Units units) {
    List<String> fell = named(p, PlayResult.Fate.FELL);
    List<String> shifted = named(p, PlayResult.Fate.SHIFTED);
    String end = p.rested() ? "" : " It was still moving when the time was up.";
    if (!fell.isEmpty()) {
      PlayResult.PaneHit hardest = null;
      for (PlayResult.PaneHit h : p.hits()) if (hardest == null || h.energyJ() > hardest.energyJ()) hardest = h;
      String hits = hardest == null ? "; no pane is hit"
          : "; " + hardest.rock() + " hits the " + hardest.side().word() + " pane at "
          + Units.fixed(hardest.speedMS(), 2, RoundingMode.UP) + " m/s with "
          + units.text(Quantity.ENERGY, hardest.energyJ(), RoundingMode.UP);
      return list(fell) + (fell.size() == 1 ? " falls" : " fall") + hits + "." + end + "\n";
    }
    if (!shifted.isEmpty()) {
      double most = p.outcomes().stream().mapToDouble(PlayResult.Outcome::shiftM).max().orElse(0);
      return "Nothing falls; " + list(shifted) + (shifted.size() == 1 ? " shifts" : " shift") + " by up to "
          + units.text(Quantity.LENGTH, most * 1e3, RoundingMode.UP) + "." + end + "\n";
    }
    boolean rocked = !named(p, PlayResult.Fate.ROCKED).isEmpty();
    return (rocked ? "Nothing falls or shifts: what rocked came back." : "Nothing moves.") + end + "\n";
  }

  /** Verdict, what was done, a line for each rock that moved, panes that were hit, cautions. */
  public static String of(PlayResult.Played p, String what, Settings settings, Optional<LeastBlow.Found.Between> least,
      Units units) {
    StringBuilder b = new StringBuilder(verdict(p, units));
    b.append(what).append("\n");
    least.ifPresent(l -> b.append(least(l, units)));
    Table table = new Table().words("rock").words("what it does").figures("moved " + units.sign(Quantity.LENGTH))
        .figures("turned °").figures("sank " + units.sign(Quantity.LENGTH)).words("lies on");
    int still = 0;
    for (PlayResult.Outcome o : p.outcomes()) {
      if (o.fate() == PlayResult.Fate.STAYED) {
        still++;
        continue;
      }
      boolean gone = o.fate() == PlayResult.Fate.REMOVED;
      table.row(o.rock(), o.fate().words(),
          gone ? "" : units.number(Quantity.LENGTH, o.shiftM() * 1e3, RoundingMode.HALF_EVEN),
          gone ? "" : Units.fixed(Math.toDegrees(o.turnRad()), 0, RoundingMode.HALF_EVEN),
          gone ? "" : units.number(Quantity.LENGTH, o.dropM() * 1e3, RoundingMode.HALF_EVEN),
          String.join(", ", o.restsOn()));
    }
    if (!table.isEmpty()) b.append('\n').append(table.render(PAGE));
    if (still > 0) b.append('\n').append(still == 1 ? "One rock stays." : still + " rocks stay.").append('\n');
    falls(b, p, units);
    hits(b, p, settings, units);
    if (!p.broken().isEmpty()) b.append('\n');
    for (PlayResult.Broken x : p.broken()) {
      b.append("The bond of ").append(x.a()).append(" and ").append(x.b()).append(x.timeS() < 0.005 ? " breaks at once.\n"
          : " breaks after " + Units.fixed(x.timeS(), 2, RoundingMode.HALF_EVEN) + " s.\n");
    }
    b.append("\nA picture of what could happen, from a motion engine: not a verdict. holdfast check judges.\n");
    if (!p.hits().isEmpty()) {
      b.append("Glass can fail suddenly, and later, after a blow. Keep hands and pets away, and ask the tank's maker.\n");
    }
    return b.toString();
  }

  private static String least(LeastBlow.Found.Between l, Units units) {
    String closed = l.closedFormNs().isPresent()
        ? "; Housner's closed form for a single block: " + impulse(l.closedFormNs().getAsDouble(), units)
        : "";
    return "Least blow that makes something fall here: " + impulse(l.fallsNs(), units)
        + " (" + impulse(l.standsNs(), units) + " does not" + closed + ").\n";
  }

  private static String impulse(double ns, Units units) {
    return units.text(Quantity.IMPULSE, ns, RoundingMode.DOWN);
  }

  private static void falls(StringBuilder b, PlayResult.Played p, Units units) {
    Table table = new Table().words("falling rock").figures("fastest m/s").figures("energy " + units.sign(Quantity.ENERGY))
        .figures("x " + units.sign(Quantity.LENGTH)).figures("y").figures("z");
    for (PlayResult.Outcome o : p.outcomes()) {
      if (o.landing().isEmpty()) continue;
      table.row(o.rock(), Units.fixed(o.landing().get().speedMS(), 2, RoundingMode.UP),
          units.number(Quantity.ENERGY, o.landing().get().energyJ(), RoundingMode.UP),
          units.number(Quantity.LENGTH, o.landedAtM().x() * 1e3, RoundingMode.HALF_EVEN),
          units.number(Quantity.LENGTH, o.landedAtM().y() * 1e3, RoundingMode.HALF_EVEN),
          units.number(Quantity.LENGTH, o.landedAtM().z() * 1e3, RoundingMode.HALF_EVEN));
    }
    if (!table.isEmpty()) b.append('\n').append(table.render(PAGE));
  }

  private static void hits(StringBuilder b, PlayResult.Played p, Settings settings, Units units) {
    Table table = new Table().words("pane").words("hit by").figures("after s").figures("speed m/s")
        .figures("energy " + units.sign(Quantity.ENERGY)).figures("up to " + units.sign(Quantity.FORCE))
        .figures("ring tension " + units.sign(Quantity.STRESS));
    double strength = 0;
    for (PlayResult.PaneHit h : p.hits()) {
      PaneBlow blow = PaneBlow.of(h, settings);
      strength = blow.strengthNmm2();
      table.row(h.side().word(), h.rock(), Units.fixed(h.timeS(), 2, RoundingMode.HALF_EVEN),
          Units.fixed(h.speedMS(), 2, RoundingMode.UP), units.number(Quantity.ENERGY, h.energyJ(), RoundingMode.UP),
          units.number(Quantity.FORCE, blow.peakN(), RoundingMode.UP),
          units.number(Quantity.STRESS, blow.ringNmm2(), RoundingMode.UP));
    }
    if (table.isEmpty()) return;
    b.append('\n').append(table.render(PAGE));
    b.append("  Force and tension: a stone's round point on glass that does not give; the glass's bending strength is ")
        .append(units.text(Quantity.STRESS, strength, RoundingMode.DOWN)).append(".\n");
  }

  private static List<String> named(PlayResult.Played p, PlayResult.Fate fate) {
    List<String> names = new ArrayList<>();
    for (PlayResult.Outcome o : p.outcomes()) if (o.fate() == fate) names.add(o.rock());
    return names;
  }

  /** Names as one says them: "a, b and c". */
  private static String list(List<String> names) {
    int n = names.size();
    return n == 1 ? names.get(0) : String.join(", ", names.subList(0, n - 1)) + " and " + names.get(n - 1);
  }

  // -- JSON ---------------------------------------------------------------------------------------------------------

  /** The same as JSON. */
  public static String json(
      PlayResult.Played p, Map<String, Object> disturbance, Settings settings, Optional<LeastBlow.Found.Between> least) {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("format", "holdfast-bump/1");
    root.put("disturbance", disturbance);
    root.put("falls", p.anyFell());
    root.put("rested", p.rested());
    root.put("seconds", p.seconds());
    least.ifPresent(l -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("falls_ns", l.fallsNs());
      m.put("stands_ns", l.standsNs());
      OptionalDouble c = l.closedFormNs();
      m.put("closed_form_ns", c.isPresent() ? (Object) c.getAsDouble() : null);
      root.put("least_blow", m);
    });
    List<Object> rocks = new ArrayList<>();
    for (PlayResult.Outcome o : p.outcomes()) {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("rock", o.rock());
      m.put("outcome", o.fate().words());
      m.put("moved_mm", o.shiftM() * 1e3);
      m.put("turned_deg", Math.toDegrees(o.turnRad()));
      m.put("sank_mm", o.dropM() * 1e3);
      m.put("strayed_mm", o.mostM() * 1e3);
      m.put("lies_at_mm", List.of(o.landedAtM().x() * 1e3, o.landedAtM().y() * 1e3, o.landedAtM().z() * 1e3));
      m.put("lies_on", o.restsOn());
      o.landing().ifPresent(l -> {
        m.put("fastest_m_s", l.speedMS());
        m.put("energy_j", l.energyJ());
      });
      rocks.add(m);
    }
    root.put("rocks", rocks);
    List<Object> hits = new ArrayList<>();
    for (PlayResult.PaneHit h : p.hits()) {
      PaneBlow blow = PaneBlow.of(h, settings);
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("pane", h.side().word());
      m.put("rock", h.rock());
      m.put("after_s", h.timeS());
      m.put("speed_m_s", h.speedMS());
      m.put("energy_j", h.energyJ());
      m.put("rock_energy_j", h.rockEnergyJ());
      m.put("peak_n", blow.peakN());
      m.put("ring_n_mm2", blow.ringNmm2());
      hits.add(m);
    }
    root.put("panes_hit", hits);
    List<Object> broken = new ArrayList<>();
    for (PlayResult.Broken x : p.broken()) {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("a", x.a());
      m.put("b", x.b());
      m.put("after_s", x.timeS());
      broken.add(m);
    }
    root.put("bonds_broken", broken);
    return Json.text(root);
  }

  /** The search for the least blow when nothing fell, as JSON. */
  public static String jsonNoneFalls(Map<String, Object> disturbance, double mostNs) {
    Map<String, Object> least = new LinkedHashMap<>();
    least.put("falls_ns", null);
    least.put("stands_ns", mostNs);
    least.put("closed_form_ns", null);
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("format", "holdfast-bump/1");
    root.put("disturbance", disturbance);
    root.put("falls", false);
    root.put("least_blow", least);
    return Json.text(root);
  }

  /** Every kept frame: where each rock's own origin is and how it is turned, as a scene's placements have it. */
  public static String frames(PlayResult.Played p, String scene) {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("format", "holdfast-frames/1");
    root.put("scene", scene);
    root.put("rocks", p.outcomes().stream().map(PlayResult.Outcome::rock).toList());
    List<Object> frames = new ArrayList<>();
    for (PlayResult.Frame f : p.frames()) {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("time_s", f.timeS());
      List<Object> poses = new ArrayList<>();
      for (Pose q : f.poses()) {
        poses.add(List.of(q.at().x() * 1e3, q.at().y() * 1e3, q.at().z() * 1e3,
            q.turn().w(), q.turn().x(), q.turn().y(), q.turn().z()));
      }
      m.put("at_mm_and_turn", poses);
      frames.add(m);
    }
    root.put("frames", frames);
    return Json.text(root);
  }
}
