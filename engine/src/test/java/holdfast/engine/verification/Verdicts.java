package holdfast.engine.verification;

import holdfast.engine.verification.EngineJudge.Reason;
import holdfast.engine.verification.EngineJudge.Says;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What statics and engine said of two families of heaps; kept as a table beside the tests so that the page can show it. */
record Verdicts(List<Line> lines) {
  private static final String NAME = "judge.csv";
  static final int MOST_ROCKS = 12;

  /** How a heap came about: laid stone by stone, or settled. */
  enum Family {
    LAID, SETTLED;

    RandomHeap heap(long seed) {
      return this == LAID ? RandomHeap.of(seed, MOST_ROCKS) : RandomHeap.settled(seed, MOST_ROCKS);
    }

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * One heap: family and seed make it again.
   *
   * @param engine as the engine comes
   * @param onCorners the engine, given every corner of every contact, at a finer step
   * @param reason where one of these lets it fall and ours does not
   * @param margin the tilt that ours bears, degrees, where a reason is given that is no proof
   */
  record Line(Family family, long seed, int rocks, Says ours, Says engine, Says onCorners, Optional<Reason> reason, String margin) {
    static Line of(Family family, long seed) {
      RandomHeap heap = family.heap(seed);
      int rocks = heap.rocks().size();
      Says ours = EngineJudge.ours(heap);
      Says engine = EngineJudge.engine(heap);
      Says onCorners = EngineJudge.onCorners(heap);
      if (ours != Says.STAYS || engine == Says.STAYS && onCorners == Says.STAYS) {
        return new Line(family, seed, rocks, ours, engine, onCorners, Optional.empty(), "");
      }
      Reason why = EngineJudge.explain(heap, onCorners);
      String margin = onCorners == Says.STAYS ? "" : String.format(Locale.ROOT, "%.2f", EngineJudge.tiltMarginDegrees(heap));
      return new Line(family, seed, rocks, ours, engine, onCorners, Optional.of(why), margin);
    }

    boolean disagrees() {
      return ours == Says.STAYS && (engine == Says.FALLS || onCorners == Says.FALLS);
    }

    boolean falseSafe() {
      return disagrees() && reason.filter(r -> r != Reason.UNEXPLAINED).isEmpty();
    }
  }

  static Verdicts judge(int laid, int settled) {
    List<Line> lines = new ArrayList<>();
    for (long seed = 1; seed <= laid; seed++) lines.add(Line.of(Family.LAID, seed));
    for (long seed = 1; seed <= settled; seed++) lines.add(Line.of(Family.SETTLED, seed));
    return new Verdicts(lines);
  }

  List<Line> of(Family family) {
    return lines.stream().filter(l -> l.family == family).toList();
  }

  static long count(List<Line> of, Says ours, Says engine) {
    return of.stream().filter(l -> l.ours == ours && l.engine == engine).count();
  }

  static long countOnCorners(List<Line> of, Says ours, Says engine) {
    return of.stream().filter(l -> l.ours == ours && l.onCorners == engine).count();
  }

  List<Line> falseSafe() {
    return lines.stream().filter(Line::falseSafe).toList();
  }

  static Path file() {
    return Page.file().resolveSibling("src/test/resources/holdfast/engine/verification/" + NAME);
  }

  void write() throws IOException {
    StringBuilder s = new StringBuilder("family,seed,rocks,ours,engine,onCorners,reason,margin\n");
    for (Line l : lines) {
      s.append(l.family).append(',').append(l.seed).append(',').append(l.rocks).append(',').append(l.ours).append(',')
          .append(l.engine).append(',').append(l.onCorners).append(',').append(l.reason.map(Reason::name).orElse(""))
          .append(',').append(l.margin).append('\n');
    }
    Files.createDirectories(file().getParent());
    Files.writeString(file(), s);
  }

  static Verdicts read() throws IOException {
    try (InputStream in = Verdicts.class.getResourceAsStream(NAME)) {
      List<Line> lines = new ArrayList<>();
      for (String text : new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().skip(1).toList()) {
        String[] c = text.split(",", -1);
        lines.add(new Line(Family.valueOf(c[0]), Long.parseLong(c[1]), Integer.parseInt(c[2]), Says.valueOf(c[3]),
            Says.valueOf(c[4]), Says.valueOf(c[5]), c[6].isEmpty() ? Optional.empty() : Optional.of(Reason.valueOf(c[6])), c[7]));
      }
      return new Verdicts(lines);
    }
  }
}
