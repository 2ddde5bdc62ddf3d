package holdfast.app.report.sheet;

import holdfast.app.report.sheet.Flow.Column;
import holdfast.engine.bonding.JointDemand;
import holdfast.engine.bonding.JointDemand.Demand;
import holdfast.engine.bonding.JointDemands;
import holdfast.engine.bonding.PieceLift;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What each joint is asked for, in place and in the hands, beside what it takes, and by which rocks pieces are lifted. */
final class DemandTable {
  private final Flow flow;
  private final SheetContent content;
  private final Figures f;

  DemandTable(Flow flow, SheetContent content, Figures f) {
    this.flow = flow;
    this.content = content;
    this.f = f;
  }

  void draw() {
    JointDemands.Result r = content.demands();
    if (r.joints().isEmpty()) return;
    flow.heading("What the joints are asked for", 40);
    List<List<List<String>>> groups = new ArrayList<>();
    for (JointDemand d : r.joints()) {
      List<List<String>> rows = new ArrayList<>();
      String number = String.valueOf(content.number(d.index()));
      rows.add(d.place().map(k -> row(number, "in place: " + k.load(), k))
          .orElse(List.of(number, "in place: not told, the heap does not stay", "", "", "", "", "")));
      d.lift().ifPresent(k -> rows.add(row("", "in the hands: " + k.load(), k)));
      JointDemand.Offer o = d.offer();
      rows.add(List.of("", "takes, each alone", f.newtonsAtMost(o.pullN()) + " pull", f.newtonsAtMost(o.shearN()),
          f.momentAtMost(o.momentNm()), f.momentAtMost(o.twistNm()), o.rockFirst() ? "rock first" : "100 %"));
      groups.add(rows);
    }
    flow.grouped(List.of(Column.right("Joint", 13), Column.left("Worst of what was tried", 100),
        Column.right("Across the patch", 38), Column.right("Shear", 26), Column.right("Bending", 28), Column.right("Twist", 28),
        Column.right("Strength used", 28)), groups);
    strengths();
    lifts();
  }

  private List<String> row(String number, String load, Demand d) {
    String across = d.tensionN() > 0.05 ? f.newtons(d.tensionN()) + " pull" : f.newtons(d.pressN()) + " press";
    return List.of(number, load, across, f.newtons(d.shearN()), f.moment(d.momentNm()), f.moment(d.twistNm()),
        Figures.use(d.use()) + (d.use() > 1 ? " !" : ""));
  }

  /** Design strengths with their factors and sources, and the rock. */
  private void strengths() {
    Set<Setting> used = new LinkedHashSet<>();
    boolean paste = false;
    for (JointDemand d : content.demands().joints()) {
      used.add(switch (d.spec().bond()) {
        case MORTAR -> Setting.BOND_MORTAR_N_MM2;
        case PUTTY -> Setting.BOND_PUTTY_N_MM2;
        case GEL -> Setting.BOND_GEL_N_MM2;
        case ROD, NONE -> Setting.ROD_STRENGTH_N_MM2;
      });
      paste |= d.spec().bond() != JointSpec.Bond.ROD;
    }
    List<String> words = new ArrayList<>();
    for (Setting s : used) {
      double now = content.scene().settings().get(s);
      String name = s.key().substring(s.key().indexOf('.') + 1).replace("_n_mm2", "");
      String about = s.about().startsWith(name + ", ") ? s.about().substring(name.length() + 2) : s.about();
      words.add(name + " " + f.strength(now * 1e6)
          + (now == s.initial() ? " (" + f.units().prose(about) + "; " + s.grade().word() + ")" : " (set in the scene)"));
    }
    double rock = content.scene().settings().get(Setting.ROCK_STRENGTH_N_MM2) * 1e6;
    flow.paragraph("Design strengths: " + String.join("; ", words) + ". Rock: crushes at " + f.strength(rock)
        + ", and is credited with a tenth of that in tension (common practice)."
        + (content.demands().joints().stream().anyMatch(d -> d.offer().rockFirst())
            ? " Where it says rock first, the rock may tear before the paste lets go." : "")
        + (paste ? " Paste fills " + f.mm(content.scene().settings().get(Setting.BOND_REACH_MM))
            + " of joint; stress is taken as even in shear and linear in bending." : "")
        + " In place: weight in every state, the push and press of the tier on every rock, and the shaking asked for.");
  }

  private void lifts() {
    for (int p = 0; p < content.plan().modules().size(); p++) {
      String words = holding(content, p);
      if (words.isEmpty()) continue;
      String line = String.join(" + ", content.plan().modules().get(p).rocks()) + ": " + words;
      if (careful(content, p)) flow.caution(line);
      else flow.paragraph(line);
    }
  }

  /** A piece that must not be lifted by some of its rocks. */
  static boolean careful(SheetContent content, int piece) {
    return content.demands().lifts().stream().anyMatch(l -> l.piece() == piece && !l.holds());
  }

  /** Where a piece of several rocks may be held, in words; empty for a single rock or when it was not worked out. */
  static String holding(SheetContent content, int piece) {
    List<String> good = new ArrayList<>();
    List<String> bad = new ArrayList<>();
    for (PieceLift l : content.demands().lifts()) {
      if (l.piece() != piece) continue;
      String name = content.plan().rocks().get(l.rock());
      if (l.holds()) good.add(name);
      else {
        bad.add(name + (Double.isInfinite(l.use()) ? " (it comes apart)" : Double.isNaN(l.use()) ? " (not settled)"
            : " (joint " + content.number(l.joint()) + " would need " + Figures.use(l.use()) + " of its strength)"));
      }
    }
    if (good.isEmpty() && bad.isEmpty()) return "";
    if (good.isEmpty()) return "do not lift it by any single rock: " + String.join(", ", bad) + ". Carry it on a board.";
    return "hold it by " + String.join(" or ", good) + (bad.isEmpty() ? "." : ", never by " + String.join(" or ", bad) + ".");
  }
}
