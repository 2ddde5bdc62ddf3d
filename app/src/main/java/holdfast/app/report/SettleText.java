package holdfast.app.report;

import holdfast.engine.motion.SettleResult;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What settling did, as text and as JSON. */
public final class SettleText {
  /** Millimetres: gaps below this count as closed; what settling promises. */
  private static final double CLOSED_MM = 0.2;

  /** Millimetres: a rock that moved farther was sketched far from where it can lie. */
  private static final double FAR_MM = 20;

  private static final int PAGE = 100;

  private SettleText() {}

  /** Whether the heap rests and every gap is closed. */
  public static boolean rests(SettleResult.Settled s) {
    return s.atRest() && s.worstOverlapM() * 1e3 < CLOSED_MM && s.worstHoverM() * 1e3 < CLOSED_MM;
  }

  /** The line of verdict. */
  public static String verdict(SettleResult.Settled s, Units units) {
    int n = s.moves().size();
    if (n == 0) return "Nothing to settle: no rock is placed.\n";
    String rocks = n == 1 ? "The rock" : n == 2 ? "Both rocks" : "All " + n + " rocks";
    if (!rests(s)) {
      return "Not settled: " + (s.atRest() ? "" : "the heap did not come to rest; ") + "deepest overlap "
          + units.text(Quantity.LENGTH, s.worstOverlapM() * 1e3, RoundingMode.UP) + ", widest hover "
          + (Double.isInfinite(s.worstHoverM())
              ? "beyond reach" : units.text(Quantity.LENGTH, s.worstHoverM() * 1e3, RoundingMode.UP))
          + ".\n";
    }
    SettleResult.Move most = s.moves().stream().max(Comparator.comparingDouble(SettleResult.Move::shiftM)).orElseThrow();
    boolean moved = most.shiftM() > 5e-5;
    return rocks + (n == 1 ? " rests" : " rest") + " on real contacts; " + (moved
        ? "the largest move was " + units.text(Quantity.LENGTH, most.shiftM() * 1e3, RoundingMode.UP) + " ("
        + most.rock() + ").\n"
        : "nothing had to move.\n");
  }

  /** Verdict, a line for each rock, and what to look at. */
  public static String of(SettleResult.Settled s, Units units) {
    StringBuilder b = new StringBuilder(verdict(s, units));
    if (s.moves().isEmpty()) return b.toString();
    Table table = new Table().words("rock").figures("moved " + units.sign(Quantity.LENGTH)).figures("turned °").words("touches");
    for (SettleResult.Move m : s.moves()) {
      table.row(m.rock() + (m.locked() ? " (stays)" : ""),
          units.number(Quantity.LENGTH, m.shiftM() * 1e3, RoundingMode.HALF_EVEN),
          Units.fixed(Math.toDegrees(m.turnRad()), 1, RoundingMode.HALF_EVEN),
          String.join(", ", touches(s, m.rock())));
    }
    b.append('\n').append(table.render(PAGE));
    List<String> far = new ArrayList<>();
    for (SettleResult.Move m : s.moves()) if (m.shiftM() * 1e3 > FAR_MM || m.turnRad() > Math.toRadians(10)) far.add(m.rock());
    if (!far.isEmpty()) {
      b.append("\nLook at ").append(String.join(", ", far)).append(far.size() == 1
          ? ": it came to lie far from where it was sketched. It hovered or overlapped there, or slid or tipped on its way.\n"
          : ": they came to lie far from where they were sketched. They hovered or overlapped there, or slid or tipped.\n");
    }
    b.append("\nAt rest is not safe: holdfast check says whether the heap stands.\n");
    return b.toString();
  }

  /** The same as JSON. */
  public static String json(SettleResult.Settled s, String in, Optional<String> out) {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("format", "holdfast-settle/1");
    root.put("scene", in);
    root.put("written", out.orElse(null));
    root.put("rests", rests(s));
    root.put("deepest_overlap_mm", s.worstOverlapM() * 1e3);
    root.put("widest_hover_mm", s.worstHoverM() * 1e3);
    List<Object> rocks = new ArrayList<>();
    for (SettleResult.Move m : s.moves()) {
      Map<String, Object> r = new LinkedHashMap<>();
      r.put("rock", m.rock());
      r.put("locked", m.locked());
      r.put("moved_mm", m.shiftM() * 1e3);
      r.put("turned_deg", Math.toDegrees(m.turnRad()));
      r.put("hover_mm", Double.isInfinite(m.hoverM()) ? null : m.hoverM() * 1e3);
      rocks.add(r);
    }
    root.put("rocks", rocks);
    List<Object> pairs = new ArrayList<>();
    for (SettleResult.Touch t : s.touches()) {
      if (Math.abs(t.gapM()) * 1e3 >= CLOSED_MM && t.gapM() > 0) continue;
      Map<String, Object> p = new LinkedHashMap<>();
      p.put("a", t.a());
      p.put("b", t.b());
      p.put("gap_mm", t.gapM() * 1e3);
      pairs.add(p);
    }
    root.put("touching", pairs);
    return Json.text(root);
  }

  private static List<String> touches(SettleResult.Settled s, String rock) {
    List<String> names = new ArrayList<>();
    for (SettleResult.Touch t : s.touches()) {
      if (t.gapM() * 1e3 >= CLOSED_MM) continue;
      if (t.a().equals(rock)) names.add(t.b());
      if (t.b().equals(rock)) names.add(t.a());
    }
    return names;
  }
}
