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

/** What statics and engine said of a family of heaps; kept as a table beside the tests so that the page can show it. */
record Verdicts(List<Line> lines) {
  private static final String NAME = "judge.csv";

  /** One heap: its seed makes it again. */
  record Line(long seed, int rocks, Says ours, Says engine, Optional<Reason> reason, String margins) {
    /** With the tilt that ours bears, and the least lean that upright forces balance, where staying is not proven. */
    static Line of(long seed, RandomHeap heap, Says ours, Says engine) {
      int rocks = heap.rocks().size();
      if (ours != Says.STAYS || engine != Says.FALLS) return new Line(seed, rocks, ours, engine, Optional.empty(), "");
      Reason why = EngineJudge.explain(heap);
      ParallelForces upright = new ParallelForces(heap);
      String margins = why.ordinal() < Reason.TILTED_BALANCE.ordinal() ? ""
          : String.format(Locale.ROOT, "%.1f / %s", EngineJudge.tiltMarginDegrees(heap),
              upright.balanced() ? String.format(Locale.ROOT, "%.1f", upright.leanDegrees()) : "none");
      return new Line(seed, rocks, ours, engine, Optional.of(why), margins);
    }

    boolean falseSafe() {
      return ours == Says.STAYS && engine == Says.FALLS && reason.filter(r -> r != Reason.UNEXPLAINED).isEmpty();
    }
  }

  static Verdicts judge(long first, int count) {
    List<Line> lines = new ArrayList<>();
    for (long seed = first; seed < first + count; seed++) {
      RandomHeap heap = RandomHeap.of(seed, 8);
      Says ours = EngineJudge.ours(heap);
      Says engine = EngineJudge.engine(heap, 240, 16);
      lines.add(Line.of(seed, heap, ours, engine));
    }
    return new Verdicts(lines);
  }

  long count(Says ours, Says engine) {
    return lines.stream().filter(l -> l.ours == ours && l.engine == engine).count();
  }

  List<Line> falseSafe() {
    return lines.stream().filter(Line::falseSafe).toList();
  }

  static Path file() {
    return Page.file().resolveSibling("src/test/resources/holdfast/engine/verification/" + NAME);
  }

  void write() throws IOException {
    StringBuilder s = new StringBuilder("seed,rocks,ours,engine,reason,margins\n");
    for (Line l : lines) {
      s.append(l.seed).append(',').append(l.rocks).append(',').append(l.ours).append(',').append(l.engine).append(',')
          .append(l.reason.map(Reason::name).orElse("")).append(',').append(l.margins).append('\n');
    }
    Files.createDirectories(file().getParent());
    Files.writeString(file(), s);
  }

  static Verdicts read() throws IOException {
    try (InputStream in = Verdicts.class.getResourceAsStream(NAME)) {
      List<Line> lines = new ArrayList<>();
      for (String text : new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().skip(1).toList()) {
        String[] c = text.split(",", -1);
        lines.add(new Line(Long.parseLong(c[0]), Integer.parseInt(c[1]), Says.valueOf(c[2]), Says.valueOf(c[3]),
            c[4].isEmpty() ? Optional.empty() : Optional.of(Reason.valueOf(c[4])), c[5]));
      }
      return new Verdicts(lines);
    }
  }

  /** The confusion table and what the two disagree on, for the page. */
  String page() {
    StringBuilder s = new StringBuilder("\n## An independent judge\n\n");
    s.append(lines.size()).append(" random heaps of ").append(lines.stream().mapToInt(Line::rocks).min().orElse(0)).append(" to ")
        .append(lines.stream().mapToInt(Line::rocks).max().orElse(0))
        .append(" stones, level or tilted by up to 22 degrees, were also played from rest in a 3D engine\n(240 steps a second, "
            + "1.5 s, in air; a stone whose centre moves 3 mm falls). Written by `JudgeTest`.\n\n");
    s.append("| ours \\ engine | stays | falls |\n|---|---|---|\n");
    for (Says ours : Says.values()) {
      s.append("| ").append(ours.name().toLowerCase(Locale.ROOT)).append(" | ").append(count(ours, Says.STAYS)).append(" | ")
          .append(count(ours, Says.FALLS)).append(" |\n");
    }
    s.append("\nOurs stays and the engine lets it fall: every such heap was looked into.\n\n");
    for (Reason r : Reason.values()) {
      List<Line> of = lines.stream().filter(l -> l.reason.filter(x -> x == r).isPresent()).toList();
      s.append("* ").append(of.size()).append(' ').append(r.words());
      if (!of.isEmpty()) s.append("; seeds ").append(String.join(", ", of.stream().limit(12).map(l -> "" + l.seed).toList()));
      s.append(of.size() > 12 ? " and more\n" : "\n");
    }
    List<Line> low = lines.stream().filter(l -> l.ours == Says.FALLS && l.engine == Says.STAYS).toList();
    s.append("\nOurs falls and the engine lets it stay: ").append(low.size()).append(low.isEmpty() ? "" : "; seeds ")
        .append(String.join(", ", low.stream().limit(12).map(l -> "" + l.seed).toList())).append(low.size() > 12 ? " and more.\n" : ".\n");
    s.append("No forces within the friction (pyramids of twelve edges, linear program) balance these: the engine shifts each by 0.7 to\n"
        + "2.5 mm, which is under what counts as a fall there.\n");
    List<Line> open = lines.stream().filter(l -> l.reason.filter(r -> r.ordinal() >= Reason.TILTED_BALANCE.ordinal()).isPresent()).toList();
    s.append("\nThe closed form, and upright forces on a level heap, prove staying. A finer step and unlike sizes show only that the\n"
        + "engine disagrees with itself. On a tilted heap a balance is shown, with contacts cut and forces found apart from the\n"
        + "statics; that friction keeps to it is not proven. ").append(open.size())
        .append(" heaps rest on that alone, or on nothing (by a hair), and are neither "
        + "shown safe nor shown false.\nThe tilt that each bears by ours, and the lean that upright forces still balance, degrees:\n\n"
        + "| seed | stones | ours / upright forces |\n|---|---|---|\n");
    for (Line l : open) {
      s.append("| ").append(l.seed).append(" | ").append(l.rocks).append(" | ").append(l.margins).append(" |\n");
    }
    s.append("\nFalse safe that nothing explains: ").append(falseSafe().size()).append(". Undecided: ")
        .append(count(Says.UNDECIDED, Says.STAYS) + count(Says.UNDECIDED, Says.FALLS)).append(" of ").append(lines.size())
        .append(".\n");
    s.append("\n## Known weakness\n\nWhere joints twist, the largest factor of the force balance (\"at most\") is found as a local maximum over\n"
        + "the centres of pressure. On random heaps it was up to 5 % too low in about one of twenty, so that more friction or a\n"
        + "bond now and then seemed to lower it. It errs to the safe side; margins are confirmed by staying. "
        + "`BoundUnderTwistTest`.\n");
    return s.toString();
  }
}
