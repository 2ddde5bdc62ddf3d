package holdfast.app.report;

import static java.math.RoundingMode.CEILING;
import static java.math.RoundingMode.FLOOR;
import static java.math.RoundingMode.HALF_EVEN;

import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckReport.FootLine;
import holdfast.engine.check.CheckReport.GapLine;
import holdfast.engine.check.CheckReport.JointLine;
import holdfast.engine.check.CheckReport.PushLine;
import holdfast.engine.check.CheckReport.RockLine;
import holdfast.engine.check.CheckReport.StateLine;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.pane.PaneReport;
import holdfast.engine.statics.heap.State;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A check as a person reads it: the verdict on one line, findings worst first with figure, limit and remedy, then tables,
 * then cautions. No line is longer than {@value #WIDTH} columns. Figures are rounded to the safe side: margins and gaps
 * down, loads and stresses up.
 */
public final class TextReport {
  static final int WIDTH = 100;
  /** Findings stand this far in, right of their shape and word. */
  private static final String INDENT = " ".repeat(8);

  /** A space at which no line ends. */
  private static final char HOLDS = '\u00a0';

  private final CheckReport report;
  private final Units units;
  private final boolean colour;
  private final StringBuilder text = new StringBuilder();

  private TextReport(CheckReport report, Units units, boolean colour) {
    this.report = report;
    this.units = units;
    this.colour = colour;
  }

  /** The whole report, ending in a newline. */
  public static String of(CheckReport report, Units units, boolean colour) {
    TextReport t = new TextReport(report, units, colour);
    t.write();
    return t.text.toString();
  }

  /** The verdict alone, one line. */
  public static String verdict(CheckReport report, Units units, boolean colour) {
    TextReport t = new TextReport(report, units, colour);
    t.verdictLine();
    return t.text.toString();
  }

  private void write() {
    verdictLine();
    facts();
    findings();
    states();
    rocks();
    joints();
    feet();
    gaps();
    report.pane().ifPresent(this::pane);
    ownFigures();
    cautions();
  }

  // -- verdict ------------------------------------------------------------------------------------------------------

  private void verdictLine() {
    SeverityLook look = SeverityLook.of(report.verdict());
    String word = look.shape() + " " + report.verdict().word().toUpperCase(java.util.Locale.ROOT);
    List<String> lines = Words.wrap(said(report.headline()), WIDTH - word.length() - 2);
    text.append(look.paint(word, colour)).append("  ").append(lines.get(0)).append('\n');
    lines.stream().skip(1).forEach(l -> text.append(" ".repeat(word.length() + 2)).append(l).append('\n'));
  }

  private void facts() {
    Scene s = report.scene();
    double dryKg = report.rocks().stream().mapToDouble(RockLine::dryKg).sum();
    List<String> facts = new ArrayList<>();
    facts.add(Words.clean(s.name()));
    facts.add(count(report.rocks().size(), "rock") + ", " + units.text(Quantity.MASS, dryKg, CEILING) + " dry");
    facts.add("tank " + size(s.tank().lengthMm()) + " × " + size(s.tank().widthMm()) + " × " + size(s.tank().heightMm())
        + " " + units.sign(Quantity.LENGTH) + " inside");
    // A figure is not parted from its unit at the end of a line.
    facts.add("each rock to bear " + units.brief(Quantity.FORCE, s.settings().get(Setting.PUSH_TIER_N)).replace(' ', HOLDS));
    List<OwnFigures.Own> own = OwnFigures.of(s.settings());
    if (!own.isEmpty()) facts.add(OwnFigures.count(own).replace(' ', HOLDS));
    Words.wrap(String.join(" · ", facts), WIDTH - 2)
        .forEach(l -> text.append("  ").append(l.replace(HOLDS, ' ')).append('\n'));
  }

  private String size(double mm) {
    return units.briefNumber(Quantity.LENGTH, mm);
  }

  // -- findings -----------------------------------------------------------------------------------------------------

  private void findings() {
    text.append('\n');
    if (report.findings().isEmpty()) {
      text.append("No finding.\n");
      return;
    }
    text.append(Arrays.stream(Severity.values())
        .map(s -> Map.entry(s, report.findings().stream().filter(f -> f.severity() == s).count()))
        .filter(e -> e.getValue() > 0)
        .map(e -> SeverityLook.of(e.getKey()).shape() + " " + e.getValue() + " " + e.getKey().word())
        .collect(Collectors.joining("   "))).append('\n');
    for (Finding f : report.findings()) finding(f);
  }

  private void finding(Finding f) {
    SeverityLook look = SeverityLook.of(f.severity());
    String tag = Words.padded(look.shape() + " " + f.severity().word(), INDENT.length(), false);
    String about = String.join(", ", f.about());
    String title = f.title() + (about.isEmpty() || saidByTitle(f, about) ? "" : ": " + Words.clean(about));
    text.append('\n').append(look.paint(tag, colour));
    List<String> lines = Words.wrap(title, WIDTH - INDENT.length());
    text.append(lines.get(0)).append('\n');
    lines.stream().skip(1).forEach(l -> text.append(INDENT).append(l).append('\n'));
    paragraph(INDENT, INDENT, Words.clean(FigureText.sentence(f, units)));
    String figures = figures(f);
    if (!figures.isEmpty()) paragraph(INDENT, INDENT, figures);
    if (!f.remedy().isBlank()) paragraph(INDENT.substring(2) + "→ ", INDENT, said(f.remedy()));
  }

  /** The title names the bottom pane itself; a rock's name may happen to be a part of any title, and is told all the same. */
  private boolean saidByTitle(Finding f, String about) {
    return f.title().contains(about) && report.scene().rocks().stream().noneMatch(r -> r.name().equals(about));
  }

  /** Figure against limit, and the state that governs. */
  private String figures(Finding f) {
    List<String> parts = new ArrayList<>();
    if (f.figure().isPresent()) {
      double figure = f.figure().getAsDouble();
      parts.add(f.limit().isPresent()
          ? FigureText.against(figure, f.limit().getAsDouble(), f.unit(), f.severity(), units)
          : FigureText.alone(figure, f.unit(), units));
    }
    f.state().ifPresent(s -> parts.add("worst state: " + s.words()));
    return String.join(" · ", parts);
  }

  // -- tables -------------------------------------------------------------------------------------------------------

  private void states() {
    if (report.rocks().isEmpty()) return;
    Table t = new Table().words("state").words("under its own weight").figures("bears\nshake g").figures("at most\ng")
        .words("weakest toward");
    for (StateLine s : report.states()) {
      t.row(s.state().words(), s.standing().word(), units.number(Quantity.SHAKE, s.shakeG(), FLOOR),
          units.number(Quantity.SHAKE, s.shakeAtMostG(), CEILING), Words.toward(s.shakeDegrees()));
    }
    table("States of the tank", t,
        "At most: what a balance of forces alone allows; the heap is only trusted with the first figure.");
  }

  private void rocks() {
    String n = units.sign(Quantity.FORCE);
    Table t = new Table().words("rock").words("kind").figures("dry\n" + units.sign(Quantity.MASS))
        .figures("under water\n" + n).figures("top at\n" + units.sign(Quantity.LENGTH))
        .figures("weakest\npush " + n).words("toward").words("then it").words("worst\nstate").figures("press\n" + n);
    for (RockLine r : report.rocks()) {
      String[] push = r.weakest().map(this::push).orElse(new String[] {"", "", "", ""});
      t.row(r.name(), r.kind(), units.number(Quantity.MASS, r.dryKg(), HALF_EVEN),
          units.number(Quantity.FORCE, r.submergedN(), HALF_EVEN), size(r.topMm()),
          push[0], push[1], push[2], push[3], units.number(Quantity.FORCE, r.pressN(), FLOOR));
    }
    table("Rocks", t, "Push: the least sideways force, high on the rock, that starts a movement. "
        + "Press: the same straight down at its rim. ≥ means that no limit was found up to there.");
  }

  private String[] push(PushLine p) {
    String number = units.number(Quantity.FORCE, p.marginN(), FLOOR);
    if (p.unlimited()) return new String[] {"≥ " + number, "any side", "", ""};
    return new String[] {number, Words.toward(p.degrees()), switch (p.movement()) {
      case TOPPLES, SLIDES -> p.movement().word();
      case NONE -> "";
    }, shortly(p.state())};
  }

  /** A state in a narrow column. */
  private static String shortly(State state) {
    return state.words().replaceFirst("^water at (a )?", "");
  }

  private void joints() {
    Table t = new Table().words("joint between").words("and").figures("patches")
        .figures("area\n" + units.sign(Quantity.AREA)).figures("apart\n" + units.sign(Quantity.LENGTH))
        .words("fixed with").figures("used");
    for (JointLine j : report.joints()) {
      t.row(j.a(), j.b(), Integer.toString(j.patches()), units.number(Quantity.AREA, j.areaMm2(), FLOOR),
          Units.fixed(Quantity.LENGTH.in(units, j.distanceMm()), units == Units.US ? 3 : 2, HALF_EVEN), fixedWith(j),
          j.bond() == JointSpec.Bond.NONE ? "" : Units.fixed(100 * j.use(), 0, CEILING) + " %");
    }
    List<String> notes = new ArrayList<>();
    if (report.joints().stream().anyMatch(j -> j.distanceMm() < -0.005)) notes.add("Apart below zero: they overlap by so much.");
    if (report.joints().stream().anyMatch(j -> j.bond() != JointSpec.Bond.NONE)) {
      notes.add("Used: the share of the bond's design strength that weight alone calls on in the worst state; the sheet "
          + "tells of pushes and lifting.");
    }
    table("Joints", t, String.join(" ", notes));
  }

  private String fixedWith(JointLine j) {
    return switch (j.bond()) {
      case NONE -> "nothing";
      case ROD -> report.scene().joint(j.a(), j.b())
          .map(s -> units.brief(Quantity.LENGTH, s.rodDiameterMm()) + (s.rodGlued() ? " rod, glued" : " rod")).orElse("rod");
      case MORTAR, PUTTY, GEL -> j.bond().word() + report.scene().joint(j.a(), j.b())
          .map(s -> ", " + units.brief(Quantity.SMALL_VOLUME, s.amountMl())).orElse("");
    };
  }

  private void feet() {
    Table t = new Table().words("foot of").words("on").figures("area\n" + units.sign(Quantity.AREA))
        .figures("least\n" + units.sign(Quantity.FORCE)).figures("most\n" + units.sign(Quantity.FORCE)).words("worst state");
    for (FootLine f : report.feet()) {
      t.row(f.rock(), f.on(), units.number(Quantity.AREA, f.areaMm2(), FLOOR),
          units.number(Quantity.FORCE, f.leastN(), FLOOR),
          f.bounded() ? units.number(Quantity.FORCE, f.mostN(), CEILING) : "no limit", shortly(f.state()));
    }
    table("Feet", t, "Least and most force that the foot can carry with the heap in balance.");
  }

  /** The least gap to each pane and device, and every gap under its limit. */
  private void gaps() {
    Map<String, GapLine> nearest = new LinkedHashMap<>();
    for (GapLine g : report.gaps()) {
      nearest.merge(g.to(), g, (a, b) -> b.gapMm() < a.gapMm() ? b : a);
    }
    Table t = new Table().words("from").words("to").figures("gap\n" + units.sign(Quantity.LENGTH))
        .figures("wanted\n" + units.sign(Quantity.LENGTH)).words("");
    for (GapLine g : report.gaps()) {
      boolean under = g.gapMm() < g.limitMm();
      if (!under && nearest.get(g.to()) != g) continue;
      List<String> room = FigureText.room(g.gapMm(), g.limitMm(), units);
      t.row(g.rock(), g.to(), room.get(0), room.get(1), under ? "too little" : "");
    }
    table("Gaps", t, "");
  }

  private void pane(PaneReport pane) {
    text.append("\nBottom pane\n").append(PaneText.cases(pane, units).render(WIDTH));
    PaneText.notes(pane, units).forEach(n -> paragraph("  - ", "    ", Words.clean(n)));
  }

  private void ownFigures() {
    Table t = new Table().words("figure").figures("here").figures("usual").words("unit").words("what it is");
    for (OwnFigures.Own o : OwnFigures.of(report.scene().settings())) {
      Setting s = o.setting();
      t.row(s.key(), SettingUnits.shown(s, o.value(), units), SettingUnits.shown(s, s.initial(), units),
          s.unit().isEmpty() ? "" : SettingUnits.sign(s, units), said(o.about()));
    }
    table("Figures of its own", t, "Set in the scene, instead of what is usual: the verdict is worth what they are.");
  }

  private void table(String title, Table t, String note) {
    if (t.isEmpty()) return;
    text.append('\n').append(title).append('\n').append(t.render(WIDTH));
    if (!note.isEmpty()) paragraph("  ", "  ", note);
  }

  // -- end ----------------------------------------------------------------------------------------------------------

  private void cautions() {
    Set<String> cautions = new LinkedHashSet<>(report.cautions());
    report.pane().ifPresent(p -> cautions.addAll(p.cautions()));
    if (cautions.isEmpty()) return;
    text.append("\nCautions\n");
    for (String c : cautions) paragraph("  - ", "    ", said(c));
  }

  private String said(String sentence) {
    return units.prose(Words.clean(sentence));
  }

  private void paragraph(String first, String rest, String words) {
    String lead = first;
    for (String line : Words.wrap(words, WIDTH - rest.length())) {
      text.append(lead).append(line).append('\n');
      lead = rest;
    }
  }

  private static String count(int n, String one) {
    return n + " " + one + (n == 1 ? "" : "s");
  }
}
