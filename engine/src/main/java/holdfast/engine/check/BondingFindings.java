package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.bonding.JointDemands;
import holdfast.engine.bonding.JointSearch;
import holdfast.engine.bonding.Slides;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Where joints need fixing, and which. */
final class BondingFindings {
  private static final Set<Code> MENDED_BY_BONDS =
      EnumSet.of(Code.FALLS, Code.SQUEEZED, Code.TOPPLES, Code.PRESSED, Code.SLIDES, Code.SHAKES, Code.BOND_OVERLOADED);

  private BondingFindings() {}

  static List<Finding> of(HeapStudy study, List<Finding> sofar, int threads, CheckWatch watch) {
    List<Finding> out = new ArrayList<>(weakRock(study.scene().scene()));
    boolean wanted = sofar.stream().anyMatch(f -> f.severity() == Severity.FAIL && MENDED_BY_BONDS.contains(f.code()));
    if (!wanted) return out;
    JointSearch.Watch searching = (asked, of, joints) -> {
      watch.best(joints);
      watch.at(CheckWatch.Stage.JOINTS, asked, of);
    };
    Slides slides = new SlideQuestion(threads, study.recall());
    for (JointSearch.Found found : JointSearch.search(study.scene(), threads, slides, searching)) {
      if (found instanceof JointSearch.Found.Enough e) e.joints().forEach(j -> out.add(needed(e, j)));
      // A rock that touches no other has no joint: what it needs its own finding says.
      if (found instanceof JointSearch.Found.NotEnough n && (n.joints() > 0 || n.rocks().size() > 1)) out.add(notEnough(n));
    }
    return out;
  }

  /** Where the paste is credited with more than the rock that it holds on to. */
  static List<Finding> weakRock(Scene scene) {
    double rock = JointDemands.TENSILE_SHARE * scene.settings().get(Setting.ROCK_STRENGTH_N_MM2);
    List<Finding> out = new ArrayList<>();
    for (JointSpec j : scene.joints()) {
      Setting strength = switch (j.bond()) {
        case MORTAR -> Setting.BOND_MORTAR_N_MM2;
        case PUTTY -> Setting.BOND_PUTTY_N_MM2;
        case GEL -> Setting.BOND_GEL_N_MM2;
        case NONE, ROD -> null;
      };
      if (strength == null) continue;
      double bond = scene.settings().get(strength);
      if (bond <= rock * (1 + 1e-9)) continue;
      out.add(Draft.warn(Code.ROCK_WEAKER).about(j.a(), j.b()).figure(bond, rock, "N/mm2").say(
          text("The %s between %s and %s is credited with %.2f N/mm2, more than the %.2f that such rock bears in tension.",
              j.bond().word(), j.a(), j.b(), bond, rock),
          text("Set %s to %.2f or less, or bond.rock_n_mm2 to what your rock was seen to bear.", strength.key(), rock)));
    }
    return out;
  }

  private static Finding notEnough(JointSearch.Found.NotEnough n) {
    String tried = switch (n.joints()) {
      case 0 -> n.reason();
      case 1 -> "with its one open joint in mortar, " + n.reason();
      default -> text("with all %d open joints in mortar, %s", n.joints(), n.reason());
    };
    String does = (n.proven() ? "Fixing joints alone does not mend " : "Fixing every open joint does not mend ")
        + (n.rest() ? "a slide in " : "");
    String open = n.proven() ? "" : " Not every choice of fewer was asked.";
    return Draft.note(Code.NEEDS_BOND).about(n.rocks()).say(
        text("%sthe heap of %s: %s.%s", does, Draft.names(n.rocks()), tried, open),
        n.slides()
            ? "Change the layout first: move what slides in over what carries it, so that a slide leaves all of it carried."
            : "Change the layout first: lower it, or give it broader feet.");
  }

  private static Finding needed(JointSearch.Found.Enough set, JointSpec j) {
    String rest = set.joints().stream().filter(o -> o != j).map(o -> o.a() + " to " + o.b()).collect(Collectors.joining("; "));
    String with = (rest.isEmpty() ? "this joint alone meets the tier" : "together with " + rest + " it meets the tier")
        + (set.butSlides() ? " but for a slide that ends in a fall" : "");
    String least = set.least() ? "no cheaper set does" : "the set is good but not proven least: a cheaper one was not ruled out";
    return Draft.fail(Code.NEEDS_BOND).about(j.a(), j.b()).say(
        text("The joint between %s and %s needs fixing; %s, and %s.%s", j.a(), j.b(), with, least,
            set.all().map(why -> " Leave the other joints open: with every joint in mortar, " + why + ".").orElse("")),
        text("Tie %s to %s with %.0f ml of mortar.", j.a(), j.b(), j.amountMl()));
  }
}
