package holdfast.app.report;

import holdfast.engine.motion.SettleResult;
import holdfast.engine.motion.SteadyRest;
import holdfast.model.geom.Vec3;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where one rock came to lie, and its other rests near there, as text and as JSON. */
public final class DropText {
  /** Millimetres: a rock moved by less was left alone. */
  private static final double ALONE_MM = 2;

  private static final int PAGE = 100;

  /** Rests shown at most; more are of no use to anybody. */
  private static final int MOST = 6;

  /** Newtons, metres, radians: two rests this close in rank, place and turn are one. */
  private static final double ALIKE_N = 0.05;

  private static final double ALIKE_M = 1e-3;

  private static final double ALIKE_RAD = 0.02;

  private final String rock;
  private final List<SteadyRest.Candidate> rests;
  private final Units units;

  /** The rests found, the one taken first; a margin that is no number was not asked for. */
  public DropText(String rock, List<SteadyRest.Candidate> rests, Units units) {
    this.rock = rock;
    this.rests = distinct(rests);
    this.units = units;
  }

  private static List<SteadyRest.Candidate> distinct(List<SteadyRest.Candidate> all) {
    List<SteadyRest.Candidate> kept = new ArrayList<>();
    for (SteadyRest.Candidate c : all) {
      boolean known = kept.stream().anyMatch(k -> Math.abs(k.marginN() - c.marginN()) < ALIKE_N
          && k.pose().at().distanceTo(c.pose().at()) < ALIKE_M
          && k.pose().turn().times(c.pose().turn().conjugate()).angleRad() < ALIKE_RAD);
      if (!known && kept.size() < MOST) kept.add(c);
    }
    return List.copyOf(kept);
  }

  private SteadyRest.Candidate best() {
    return rests.get(0);
  }

  private static SettleResult.Move move(SteadyRest.Candidate c, String name) {
    return c.heap().moves().stream().filter(m -> m.rock().equals(name)).findFirst().orElseThrow();
  }

  /** Others that the rock shifts where it lies. */
  private List<SettleResult.Move> shifted() {
    return best().heap().moves().stream().filter(m -> !m.rock().equals(rock) && m.shiftM() * 1e3 > ALONE_MM).toList();
  }

  public boolean leavesOthersAlone() {
    return shifted().isEmpty() && best().heap().atRest();
  }

  /** The line of verdict. */
  public String verdict() {
    List<String> on = touches(best());
    String lies = rock + " comes to lie on " + (on.isEmpty() ? "nothing" : String.join(" and ", on)) + ", "
        + length(best().rolledM()) + " from the spot";
    if (!best().heap().atRest()) return lies + "; the heap did not come to rest.\n";
    if (shifted().isEmpty()) return lies + "; the others stay.\n";
    List<String> moved = shifted().stream().map(m -> m.rock() + " by " + length(m.shiftM())).toList();
    return lies + "; it shifts " + String.join(", ", moved) + ".\n";
  }

  private String length(double metres) {
    return units.text(Quantity.LENGTH, metres * 1e3, RoundingMode.UP);
  }

  private List<String> touches(SteadyRest.Candidate c) {
    List<String> names = new ArrayList<>();
    for (SettleResult.Touch t : c.heap().touches()) {
      if (t.gapM() > 2e-4) continue;
      if (t.a().equals(rock)) names.add(t.b());
      if (t.b().equals(rock)) names.add(t.a());
    }
    return names;
  }

  /** Verdict and a line for each rest. */
  public String full() {
    StringBuilder b = new StringBuilder(verdict());
    boolean ranked = !Double.isNaN(best().marginN());
    String mm = units.sign(Quantity.LENGTH);
    Table table = new Table();
    if (ranked) table.figures("tips at\n" + units.sign(Quantity.FORCE) + " or less");
    table.figures("x\n" + mm).figures("y").figures("z").figures("rolled\n" + mm).figures("others\nmoved " + mm).words("touches");
    for (SteadyRest.Candidate c : rests) {
      Vec3 at = c.pose().at().times(1e3);
      List<String> cells = new ArrayList<>();
      if (ranked) cells.add(units.number(Quantity.FORCE, c.marginN(), RoundingMode.DOWN));
      cells.add(units.number(Quantity.LENGTH, at.x(), RoundingMode.HALF_EVEN));
      cells.add(units.number(Quantity.LENGTH, at.y(), RoundingMode.HALF_EVEN));
      cells.add(units.number(Quantity.LENGTH, at.z(), RoundingMode.HALF_EVEN));
      cells.add(units.number(Quantity.LENGTH, c.rolledM() * 1e3, RoundingMode.UP));
      cells.add(units.number(Quantity.LENGTH, c.disturbedM() * 1e3, RoundingMode.UP));
      cells.add(String.join(", ", touches(c)));
      table.row(cells.toArray(String[]::new));
    }
    b.append('\n').append(table.render(PAGE));
    if (ranked) {
      b.append("\nRanked by the level push, in air, that tips it over the rim of what it touches, the others taken as\n"
          + "fixed: a quick rank of poses and no margin. The first is taken.\n");
    }
    b.append("\nAt rest is not safe: holdfast check says whether the heap stands.\n");
    return b.toString();
  }

  /** The same as JSON. */
  public String json(String in, double xMm, double yMm, Optional<String> out) {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("format", "holdfast-drop/1");
    root.put("scene", in);
    root.put("rock", rock);
    root.put("spot_mm", List.of(xMm, yMm));
    root.put("written", out.orElse(null));
    root.put("others_stay", leavesOthersAlone());
    List<Object> all = new ArrayList<>();
    for (SteadyRest.Candidate c : rests) {
      Map<String, Object> m = new LinkedHashMap<>();
      SettleResult.Move own = move(c, rock);
      m.put("at_mm", List.of(own.pose().at().x() * 1e3, own.pose().at().y() * 1e3, own.pose().at().z() * 1e3));
      m.put("turn", List.of(own.pose().turn().w(), own.pose().turn().x(), own.pose().turn().y(), own.pose().turn().z()));
      m.put("tips_at_most_n", Double.isNaN(c.marginN()) ? null : c.marginN());
      m.put("rolled_mm", c.rolledM() * 1e3);
      m.put("others_moved_mm", c.disturbedM() * 1e3);
      m.put("touches", touches(c));
      all.add(m);
    }
    root.put("rests", all);
    return Json.text(root);
  }
}
