package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.bonding.JointSearch;
import holdfast.model.scene.JointSpec;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Where joints need fixing, and which. */
final class BondingFindings {
  private static final Set<Code> MENDED_BY_BONDS =
      EnumSet.of(Code.FALLS, Code.SQUEEZED, Code.TOPPLES, Code.PRESSED, Code.SHAKES, Code.BOND_OVERLOADED);

  private BondingFindings() {}

  static List<Finding> of(HeapStudy study, List<Finding> sofar) {
    boolean wanted = sofar.stream().anyMatch(f -> f.severity() == Severity.FAIL && MENDED_BY_BONDS.contains(f.code()));
    if (!wanted) return List.of();
    JointSearch.Found found = JointSearch.search(study.scene());
    if (found instanceof JointSearch.Found.Enough e) return e.joints().stream().map(j -> needed(e, j)).toList();
    if (found instanceof JointSearch.Found.NotEnough n) {
      return List.of(Draft.note(Code.NEEDS_BOND).about("the heap").say(
          text("Fixing joints alone does not mend this layout: with all %d open joints in mortar, %s.", n.joints(), n.reason()),
          "Change the layout first: lower it, or give it broader feet."));
    }
    return List.of();
  }

  private static Finding needed(JointSearch.Found.Enough set, JointSpec j) {
    String rest = set.joints().stream().filter(o -> o != j).map(o -> o.a() + " to " + o.b()).collect(Collectors.joining("; "));
    String with = rest.isEmpty() ? "this joint alone meets the tier" : "together with " + rest + " it meets the tier";
    return Draft.fail(Code.NEEDS_BOND).about(j.a(), j.b()).say(
        text("The joint between %s and %s needs fixing; %s.", j.a(), j.b(), with),
        text("Tie %s to %s with %.0f ml of mortar.", j.a(), j.b(), j.amountMl()));
  }
}
