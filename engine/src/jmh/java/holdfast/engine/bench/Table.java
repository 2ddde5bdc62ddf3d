package holdfast.engine.bench;

import holdfast.engine.SceneBuilders.Family;
import holdfast.engine.check.Questions;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.heap.SceneHeap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;

/** Runs every benchmark and writes the table. Arguments: the file to write, and {@code true} for a quick run. */
public final class Table {
  /** Newtons up to which push margins are asked for. */
  static final double CAP_N = 1000;

  private static final List<String> SMALL = List.of("contacts", "stands", "stays", "push");
  private static final List<String> COLUMNS = List.of("contacts", "stands", "stays", "push", "verdict", "weakest", "roses");
  private static final String PILE = "pile 30";
  static final int VARIATIONS = 200;

  /** Seconds; margins that are expected to take longer are not begun. */
  private static final double ROSES_S = 60;

  private final boolean quick;
  private final int[] sizes;
  private final Measured measured;
  private final StringBuilder out = new StringBuilder();
  /** Questions that ended at the first no: what they took says nothing of the whole. */
  private final Set<String> refused = new HashSet<>();
  private final Map<String, Layout> layouts = new LinkedHashMap<>();

  private Table(boolean quick) {
    this.quick = quick;
    // Of the piles those up to 45 rocks bear the tier: what a whole yes takes has an exponent of its own.
    sizes = quick ? new int[] {5, 10, 30} : new int[] {10, 30, 45, 100, 150};
    measured = new Measured(quick);
  }

  public static void main(String[] args) throws IOException {
    Table table = new Table(args.length > 1 && args[1].equals("true"));
    long start = System.nanoTime();
    table.measure();
    table.write((System.nanoTime() - start) / 60e9);
    Files.writeString(Path.of(args[0]), table.out.toString());
  }

  private Layout layout(String name) {
    return layouts.computeIfAbsent(name, Layout::of);
  }

  // -- measuring ----------------------------------------------------------------------------------------------------

  private void measure() {
    List<String> all = new ArrayList<>();
    for (Family f : Family.values()) all.addAll(family(f));
    all.addAll(shipped());
    measured.run(HeapBenchmark.class, SMALL, all);
    for (Family f : Family.values()) {
      for (int k = 0; k < sizes.length; k++) {
        grown("verdict", Layout.of(f, sizes[k]), expected("verdict", f, k), Measured.TOO_LONG_S, Questions::verdict);
        grown("weakest", Layout.of(f, sizes[k]), expected("weakest", f, k), ROSES_S, Questions::weakest);
        grown("roses", Layout.of(f, sizes[k]), expected("roses", f, k), ROSES_S, Questions::roses);
      }
    }
    for (String s : shipped()) {
      Layout l = layout(s);
      SceneHeap heap = l.heap();
      measured.carefully(HeapBenchmark.class, "verdict", s, 0, () -> Questions.verdict(heap));
      measured.carefully(HeapBenchmark.class, "weakest", s, 0, () -> Questions.weakest(heap));
      measured.carefully(HeapBenchmark.class, "roses", s, 0, () -> Questions.roses(heap));
      measured.carefully(HeapBenchmark.class, "check", s, 0, () -> Questions.check(l.scene(), l.shapes()));
    }
    // What follows is expected to take as long as what it consists of.
    for (String s : List.of(PILE, "towers 30", "cube")) {
      Layout l = layout(s);
      measured.carefully(HeapBenchmark.class, "recheck", s, expected("verdict", s, 1),
          () -> Questions.recheck(l.scene(), l.placed(), new Recall()));
    }
    Layout cube = layout("cube");
    measured.carefully(HeapBenchmark.class, "vary", "cube", expected("verdict", "cube", VARIATIONS / 20.0),
        () -> Questions.vary(cube.heap(), VARIATIONS));
    for (String s : rivals()) {
      SceneHeap heap = layout(s).heap();
      measured.carefully(HeapBenchmark.class, "margins", s,
          expected("push", s, 16.0 * heap.rocks().size() / Questions.THREADS), () -> Questions.centreMargins(heap, CAP_N));
      measured.run(RivalBenchmark.class, List.of("linear8", "linear16", "engine"), List.of(s));
    }
    measured.run(MotionBenchmark.class, List.of("simulatedSecond"), List.of());
  }

  private double expected(String part, String layout, double times) {
    return measured.ms(part, layout).orElse(Double.NaN) * times;
  }

  private List<String> shipped() {
    return quick ? List.of("nano", "cube") : Layout.SHIPPED;
  }

  private static List<String> rivals() {
    return List.of("towers 30", "wall 30", PILE);
  }

  private List<String> family(Family f) {
    return Arrays.stream(sizes).mapToObj(n -> Layout.of(f, n)).toList();
  }

  /**
   * What the smaller sizes took says whether the next is begun; not a number where they were not. One that ended at the first
   * no says nothing.
   */
  private double expected(String question, Family family, int size) {
    int last = size - 1;
    while (last > 0 && refused.contains(question + Layout.of(family, sizes[last]))) last--;
    if (last < 0) return 0;
    return expected(question, Layout.of(family, sizes[last]), Math.pow((double) sizes[size] / sizes[last], 2));
  }

  private void grown(String question, String name, double expected, double mostS, Function<SceneHeap, ?> ask) {
    SceneHeap heap = layout(name).heap();
    Supplier<?> once = () -> {
      Object answer = ask.apply(heap);
      if (Boolean.FALSE.equals(answer)) refused.add(question + name);
      return answer;
    };
    measured.carefully(HeapBenchmark.class, question, name, expected, mostS, once);
  }

  // -- writing ------------------------------------------------------------------------------------------------------

  private void line(String format, Object... values) {
    out.append(values.length == 0 ? format : String.format(Locale.ROOT, format, values)).append('\n');
  }

  private void write(double minutes) {
    line("# How fast");
    line("");
    line("Written by `mvn -Pjmh -pl engine -am -DskipTests verify`%s.", quick ? " with `-Dquick`: too short to go by" : "");
    line("On: %s. It took %.0f minutes; anything else that runs on the machine meanwhile spoils the figures.",
        Machine.words(), minutes);
    line("");
    line("Medians in milliseconds, warm, each in a Java machine of its own; *: one cold run, since it takes long; †: the"
        + " answer is no, and the question ended there; -: not begun,"
        + " since it would take over %.0f s, margins over %.0f s. Layouts are those of `SceneBuilders`: towers of five stones, a"
        + " wall in running bond, a pile in which every stone touches its neighbours on all sides. The tier is 5 N there, what the"
        + " scene says in the shipped ones. Questions over many rocks use all cores.", Measured.TOO_LONG_S, ROSES_S);
    line("");
    goals();
    bySize();
    scenes();
    profile();
    rest();
    sideBySide();
  }

  private void goals() {
    line("## What is asked for");
    line("");
    line("| figure | goal | found |");
    line("|---|---|---|");
    goal("verdict at the tier, pile of 30, all directions, lines and states", 150, measured.ms("verdict", PILE));
    goal("480 centre-line margins of one state, pile of 30, to 2 %", 250, measured.ms("margins", PILE));
    goal("verdict after an edit, pile of 30, contacts included", 33, measured.ms("recheck", PILE));
    goal("the same, towers of 30", 33, measured.ms("recheck", "towers 30"));
    goal("verdict, pile of 100" + (refused.contains("verdictpile 100") ? ", which does not bear it: ended at the first no" : ""),
        1000, measured.ms("verdict", "pile 100"));
    ratio("linear programs of 8 facets over the 480 margins here, pile of 30", 50, linear8());
    ratio("3D engine, every rock pushed once from 16 sides, over the verdict here, pile of 30", 500, engine());
    List<String> bear = family(Family.PILE).stream().filter(this::yes).toList();
    OptionalDouble exponent = exponent("verdict", bear);
    line("| exponent of the verdict's time over rocks, piles that bear the tier: %s | under 2.2 | %s |", String.join(", ", bear),
        exponent.isPresent() ? String.format(Locale.ROOT, "%.2f", exponent.getAsDouble()) : "-");
    line("");
  }

  private boolean yes(String layout) {
    return measured.cell("verdict", layout) != null && !refused.contains("verdict" + layout);
  }

  private void goal(String what, double most, OptionalDouble found) {
    line("| %s | at most %.0f ms | %s |", what, most, ms(found));
  }

  private void ratio(String what, double least, OptionalDouble found) {
    line("| %s | at least %.0f times | %s |", what, least,
        found.isPresent() ? String.format(Locale.ROOT, "%.0f times", found.getAsDouble()) : "-");
  }

  /** Both sides on all cores: the programs are independent of each other, so their time is divided by the cores. */
  private OptionalDouble linear8() {
    return over("linear8", "margins");
  }

  private OptionalDouble engine() {
    return over("engine", "verdict");
  }

  private OptionalDouble over(String rival, String question) {
    OptionalDouble one = measured.ms(rival, PILE);
    OptionalDouble ours = measured.ms(question, PILE);
    if (one.isEmpty() || ours.isEmpty()) return OptionalDouble.empty();
    return OptionalDouble.of(one.getAsDouble() * 480 / Questions.THREADS / ours.getAsDouble());
  }

  private OptionalDouble exponent(String question, List<String> layouts) {
    List<double[]> points = new ArrayList<>();
    for (String l : layouts) {
      if (refused.contains(question + l)) continue;
      measured.ms(question, l).ifPresent(t -> points.add(new double[] {layout(l).rocks(), t}));
    }
    return Measured.exponent(points);
  }

  private static String ms(OptionalDouble ms) {
    return ms.isPresent() ? number(ms.getAsDouble()) + " ms" : "-";
  }

  private static String number(double v) {
    return String.format(Locale.ROOT, v < 0.1 ? "%.3f" : v < 10 ? "%.2f" : v < 100 ? "%.1f" : "%.0f", v);
  }

  private String cell(String question, String layout) {
    Measured.Cell c = measured.cell(question, layout);
    return c == null ? "-" : number(c.ms()) + (c.once() ? "*" : "")
        + (refused.contains(question + layout) ? "†" : "");
  }

  private void bySize() {
    line("## By number of rocks");
    line("");
    line("Contacts; stands and stays: filled; push: what the force balance allows one push, enclosed to 2 %; verdict: every"
        + " margin above the tier, every state; weakest: the least margin of every rock; roses: all margins to 2 %.");
    line("");
    line("| layout | contacts | stands | stays | one push | verdict | weakest | all roses |");
    line("|---|---:|---:|---:|---:|---:|---:|---:|");
    for (Family f : Family.values()) {
      for (String l : family(f)) row(l);
      StringBuilder row = new StringBuilder("| *exponent* |");
      for (String q : COLUMNS) {
        OptionalDouble e = exponent(q, family(f));
        row.append(e.isPresent() ? String.format(Locale.ROOT, " *%.2f* |", e.getAsDouble()) : " |");
      }
      line(row.toString());
    }
    line("");
  }

  private void row(String layout) {
    StringBuilder row = new StringBuilder("| " + layout + " |");
    for (String q : COLUMNS) row.append(' ').append(cell(q, layout)).append(" |");
    line(row.toString());
  }

  private void scenes() {
    line("## Shipped scenes");
    line("");
    line("| scene | rocks | contacts | stands | stays | one push | verdict | weakest | all roses | whole check |");
    line("|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|");
    for (String s : shipped()) {
      StringBuilder row = new StringBuilder("| " + s + " | " + layout(s).rocks() + " |");
      for (String q : COLUMNS) row.append(' ').append(cell(q, s)).append(" |");
      line(row + " " + cell("check", s) + " |");
    }
    line("");
  }

  private void profile() {
    line("## Where the time of a verdict goes");
    line("");
    line("On one thread. Judges: the heaps under their own weight in every state, with contacts of other stiffnesses where one has"
        + " slipped. Questions: pushes at the tier and on the way to it, presses. A glance at staying is some steps of Newton's"
        + " method with one linear solve each; what a glance leaves open is followed in time. No push is left out for what"
        + " another one bears: staying has no order that would allow it (`BoundIsNoVerdictTest`). So one solve a question is the"
        + " least that this way of deciding can come to; the last column is the verdict then.");
    line("");
    line("| layout | verdict | judges | questions | one question | one linear solve | solves' time a question | at one solve each |");
    line("|---|---:|---:|---:|---:|---:|---:|---:|");
    for (String l : rivals()) {
      Questions.Profile p = Questions.profile(layout(l).heap());
      line("| %s | %s | %s | %d | %s | %s | %.1f | %s |", l, number(p.verdictMs()), number(p.judgesMs()), p.questions(),
          number(p.questionMs()), number(p.solveMs()), p.questionMs() / p.solveMs(),
          number(p.judgesMs() + p.questions() * p.solveMs()));
    }
    line("");
  }

  private void rest() {
    line("## Edits, variations, memory, motion");
    line("");
    line("| what | ms |");
    line("|---|---:|");
    line("| one rock moved by a fraction of a millimetre: contacts and verdict, pile of 30 | %s |", cell("recheck", PILE));
    line("| the same, thirty rocks in six towers | %s |", cell("recheck", "towers 30"));
    line("| the same, cube scene | %s |", cell("recheck", "cube"));
    line("| `--vary 200`, cube scene | %s |", cell("vary", "cube"));
    line("| one simulated second of 30 rounded stones at rest in a pit, 3D engine, 240 steps | %s |",
        cell("simulatedSecond", ""));
    line("");
    line("On every thread, by the same calls as above.");
    line("");
    line("| allocated by one call, megabytes | verdict | all roses |");
    line("|---|---:|---:|");
    for (Family f : Family.values()) {
      String l = Layout.of(f, 30);
      line("| %s | %s | %s |", l, megabytes("verdict", l), megabytes("roses", l));
    }
    line("");
  }

  private String megabytes(String question, String layout) {
    Measured.Cell c = measured.cell(question, layout);
    return c == null || Double.isNaN(c.bytes()) ? "-" : number(c.bytes() / 1e6);
  }

  private void sideBySide() {
    line("## Beside a linear program and the 3D engine");
    line("");
    line("The same pushes through the centre of every rock from 16 sides, filled, one at a time: here, as a linear program in"
        + " ojAlgo with pyramids of 8 and 16 facets inside the cone, and played in the 3D engine with the tier's push (one play"
        + " says only whether it holds; a margin takes about eight). Here and in the programs it is the same question: friction"
        + " at the corners of every contact, each limited by that corner's push; here with true cones, and to 2 % between what"
        + " forces carry and what a mechanism caps, there to the simplex's end with pyramids. Here all pushes on a heap start"
        + " from the centre of what balances its weight, found when the first is asked, and where all are asked, those of one rock"
        + " between two others from where these came by; each program starts from nothing. All rocks: the"
        + " median of a sample times the number of pushes over the cores; here, measured.");
    line("");
    line("| layout | one push: here | 8 facets | 16 facets | engine | all: here | 8 facets | 16 facets | engine |");
    line("|---|---:|---:|---:|---:|---:|---:|---:|---:|");
    for (String l : rivals()) {
      StringBuilder row = new StringBuilder("| " + l + " |");
      for (String q : List.of("push", "linear8", "linear16", "engine")) row.append(' ').append(cell(q, l)).append(" |");
      row.append(' ').append(cell("margins", l)).append(" |");
      int pushes = 16 * layout(l).rocks();
      for (String q : List.of("linear8", "linear16", "engine")) {
        OptionalDouble one = measured.ms(q, l);
        row.append(' ').append(one.isPresent() ? number(one.getAsDouble() * pushes / Questions.THREADS) : "-").append(" |");
      }
      line(row.toString());
    }
    line("");
    SceneHeap pile = layout(PILE).heap();
    if (measured.ms("margins", PILE).isPresent()) {
      double[] margins = Questions.centreMargins(pile, CAP_N);
      line("Of the %d margins of the pile of 30, %d were left open here.", margins.length,
          Arrays.stream(margins).filter(Double::isNaN).count());
    }
    int asked = Questions.asked(pile);
    OptionalDouble linear = measured.ms("linear8", PILE);
    line("The verdict of the pile of 30 covers %d pushes (lines, states): %s here, %s as linear programs of 8 facets (scaled).",
        asked, ms(measured.ms("verdict", PILE)),
        linear.isPresent() ? ms(OptionalDouble.of(linear.getAsDouble() * asked / Questions.THREADS)) : "-");
    line("");
    line("Margins over those of pyramids of 64 facets, which lack 0.1 % of the friction; least and greatest of a sample. Here: the"
        + " least of what forces carry and the greatest of what mechanisms cap, 2 % apart at most.");
    line("");
    line("| layout | pushes | here | left open here | 8 facets | 16 facets |");
    line("|---|---:|---:|---:|---:|---:|");
    for (Family f : Family.values()) {
      Accuracy a = Accuracy.of(Layout.of(f, 10), quick ? 4 : 24);
      line("| %s | %d | %s | %d | %s | %s |", a.layout(), a.pushes(), range(a.cones()), a.open(), range(a.eight()),
          range(a.sixteen()));
    }
    line("");
  }

  private static String range(double[] r) {
    return Double.isNaN(r[0]) ? "-" : String.format(Locale.ROOT, "%.4f to %.4f", r[0], r[1]);
  }
}
