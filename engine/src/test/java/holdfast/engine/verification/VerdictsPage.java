package holdfast.engine.verification;

import holdfast.engine.verification.EngineJudge.Reason;
import holdfast.engine.verification.EngineJudge.Says;
import holdfast.engine.verification.Verdicts.Family;
import holdfast.engine.verification.Verdicts.Line;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/** The confusion tables, and what statics and engine disagree on, for {@code engine/VERIFICATION.md}. */
final class VerdictsPage {
  private static final int NAMED = 12;

  private VerdictsPage() {}

  static String of(Verdicts v) {
    List<Line> all = v.lines();
    StringBuilder s = new StringBuilder("\n## An independent judge\n\n");
    s.append(v.of(Family.LAID).size()).append(" heaps laid stone by stone, level or tilted by up to 22 degrees, and ")
        .append(v.of(Family.SETTLED).size()).append(" heaps of stones of every look that were let down until they\nlay, "
            + "then tilted by up to 15 degrees or not, of ")
        .append(all.stream().mapToInt(Line::rocks).min().orElse(0)).append(" to ")
        .append(all.stream().mapToInt(Line::rocks).max().orElse(0))
        .append(" stones, were also played from rest in a 3D engine (1.5 s, in air; a\nstone whose centre moves 3 mm falls), "
            + "twice: as the engine comes (240 steps a second, 16 rounds), and with every corner\nof every contact as a contact "
            + "point (1000 steps, 16 rounds). Written by `JudgeTest`.\n\n"
            + "| ours | engine: stays | engine: falls | given every corner: stays | falls |\n|---|---|---|---|---|\n");
    for (Family f : Family.values()) {
      for (Says ours : Says.values()) {
        s.append("| ").append(f.word()).append(", ").append(ours.name().toLowerCase(Locale.ROOT));
        for (Says e : List.of(Says.STAYS, Says.FALLS)) s.append(" | ").append(Verdicts.count(v.of(f), ours, e));
        for (Says e : List.of(Says.STAYS, Says.FALLS)) s.append(" | ").append(Verdicts.countOnCorners(v.of(f), ours, e));
        s.append(" |\n");
      }
    }
    s.append("\nThe engine thins the points of a contact out to four or so, whatever corners the contact has; a heap whose weight\n"
        + "comes down between those it keeps and those it drops then tips. Given all corners (each a ball in the one stone, that\n"
        + "touches the other's face at the corner) the same solver, step by step, lets most of them stay.\n"
        + "\nOurs stays and one of the two falls: every such heap was looked into.\n\n");
    for (Reason r : Reason.values()) line(s, all, r);
    List<Line> proven = all.stream().filter(l -> l.disagrees() && l.onCorners() == Says.FALLS).toList();
    s.append("\nThose that fall even given every corner, at 1000 steps a second, with the tilt that each bears by ours:\n\n"
        + "| heap | stones | tilt, degrees | reason |\n|---|---|---|---|\n");
    for (Line l : proven) {
      s.append("| ").append(l.family().word()).append(' ').append(l.seed()).append(" | ").append(l.rocks()).append(" | ")
          .append(l.margin()).append(" | ").append(l.reason().orElseThrow().name().toLowerCase(Locale.ROOT).replace('_', ' ')).append(" |\n");
    }
    s.append("\nEngine and springs are apart from each other and from the statics, but corners of settled heaps are those of the contact\n"
        + "finder. The closed form, and upright forces on a level heap, prove staying. The rest is shown by playing the heap; where\n"
        + "only the springs keep it, two judges of three do, and no proof is had: with friction at its limit, rigid bodies in steps\n"
        + "from no force at all can have more than one answer.\n");
    s.append("\nOurs falls and the engine lets it stay: as it comes ").append(named(all, l -> l.ours() == Says.FALLS && l.engine() == Says.STAYS))
        .append(";\ngiven every corner ").append(named(all, l -> l.ours() == Says.FALLS && l.onCorners() == Says.STAYS)).append(".\n");
    long undecided = all.stream().filter(l -> l.ours() == Says.UNDECIDED).count();
    s.append("\nWhere a contact has slipped, ours lets the heap come to rest again with contacts of other stiffnesses, drawn at random; one\n"
        + "that then falls is undecided: ").append(named(all, l -> l.ours() == Says.UNDECIDED))
        .append(". The engine, given every\ncorner, lets fall ")
        .append(all.stream().filter(l -> l.ours() == Says.UNDECIDED && l.onCorners() == Says.FALLS).count()).append(" of these.\n");
    s.append("\nFalse safe that nothing explains: ").append(v.falseSafe().size()).append(". Undecided: ").append(undecided).append(" of ")
        .append(all.size()).append(".\n");
    s.append("""

        ## Known limits

        Where joints twist, the factor of the force balance ("at most") is borne for sure, by forces that come with it, but need
        not be the largest: a patch bears twist by its mean distance from the centre of pressure, which is a convex function of
        that centre, so the problem is not convex. Of 136 random heaps 4 also stood 1.2 % above it, one of them 5 %. Margins are
        confirmed by staying. `BoundUnderTwistTest`.

        The *stays* margin is not proved to grow with friction, since friction may also let a stone hang on another and press it
        aside. Of 411 margins of laid heaps none fell by 2 % when friction rose by a fifth; still nothing is left out by an order
        in it.

        Contacts reach out to where the gap is the contact tolerance, up to some hundredths of a millimetre past the rim of two
        faces: a heap within 0.02 degrees of its fall was called standing by that alone. Scenes draw contacts in by 5 mm.
        `NamedHeapsTest`.

        The ellipse of shear and twist is an approximation that can grant more than any pressure gives. Its arm is therefore
        drawn in, contact by contact, to what some pressure with the same sum and centre gives together with the shear: just
        under every margin of a push forces at the corners balance (`NamedHeapsTest`, by linear programs of a general library;
        before, 14 of 108 pushes on laid heaps were more than half a percent too high, the worst a tenth, and 6 of 60 on settled
        heaps, the worst a fifth). What stands under its own weight is asked corner by corner too, with the pushes that it rests
        on (two of 300 settled heaps did not hold).
        """);
    return s.toString();
  }

  private static void line(StringBuilder s, List<Line> all, Reason r) {
    s.append("* ").append(named(all, l -> l.reason().filter(x -> x == r).isPresent())).append(": ").append(r.words()).append('\n');
  }

  private static String named(List<Line> all, Predicate<Line> which) {
    List<Line> of = all.stream().filter(which).toList();
    if (of.isEmpty()) return "0";
    StringBuilder s = new StringBuilder().append(of.size()).append(" (");
    for (Family f : Family.values()) {
      List<String> seeds = of.stream().filter(l -> l.family() == f).map(l -> "" + l.seed()).toList();
      if (seeds.isEmpty()) continue;
      if (s.charAt(s.length() - 1) != '(') s.append("; ");
      s.append(f.word()).append(' ').append(String.join(", ", seeds.subList(0, Math.min(NAMED, seeds.size()))));
      if (seeds.size() > NAMED) s.append(" and more");
    }
    return s.append(')').toString();
  }
}
