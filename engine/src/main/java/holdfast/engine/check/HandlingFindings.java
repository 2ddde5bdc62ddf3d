package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.build.Modules;
import holdfast.engine.build.OpeningFit;
import holdfast.engine.build.OpeningFit.Passage;
import holdfast.engine.build.Turning;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.supply.Supply;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

/** Lifting, passing the opening, floating, and how much rock there is. */
final class HandlingFindings {
  private HandlingFindings() {}

  /** What goes in as one piece. */
  static List<Modules.Module> modules(SceneHeap scene, Recall recall) {
    return Modules.of(scene.scene(), scene.rocks().stream().map(PlacedRock::body).toList(), (points, first, second) ->
        recall.of(new ThroughAsked(points, first, second), () -> OpeningFit.through(points, first, second)));
  }

  /** A piece at an opening: it passes or does not, whatever else lies in the tank. */
  private record ThroughAsked(List<Vec3> points, double firstM, double secondM) {
    ThroughAsked {
      points = List.copyOf(points);
    }
  }

  /**
   * @param stays whether the heap that holds a rock stays in every state
   */
  static List<Finding> of(SceneHeap scene, IntPredicate stays, List<Modules.Module> modules, Recall recall) {
    List<Finding> out = new ArrayList<>();
    List<RockBody> bodies = scene.rocks().stream().map(PlacedRock::body).toList();
    for (int i = 0; i < scene.rocks().size(); i++) {
      double n = scene.weights().submergedN(i);
      if (n >= 0) continue;
      boolean held = stays.test(i);
      out.add((held ? Draft.warn(Code.FLOATS) : Draft.fail(Code.FLOATS)).about(scene.name(i)).figure(n, 0, "N").say(
          text("%s floats: its sealed voids lift more than its stone weighs%s.", scene.name(i),
              held ? "; what it is fixed to holds it down" : ""),
          held ? "Let its joints set in full before filling, or take out foam."
              : "Fix it down, or take out foam; nothing else holds it."));
    }
    for (Modules.Module m : modules) module(scene.scene(), bodies, m, recall, out);
    amount(scene.scene(), bodies, out);
    return out;
  }

  private static void module(
      Scene scene, List<RockBody> bodies, Modules.Module m, Recall recall, List<Finding> out) {
    String what = (m.rocks().size() > 1 ? "The piece of " : "") + Draft.names(m.rocks());
    String split = m.split()
        .map(s -> text(" Or make the joint %s to %s in the tank.", scene.joints().get(s.joint()).a(),
            scene.joints().get(s.joint()).b()))
        .orElse("");
    if (m.lift() == Modules.Lift.TOO_HEAVY) {
      out.add(Draft.fail(Code.HEAVY_LIFT).about(m.rocks())
          .figure(m.drainedKg(), scene.settings().get(Setting.LIFT_TWO_KG), "kg").say(
          text("%s weighs %.1f kg lifted out wet: too heavy for two people.", what, Draft.up(m.drainedKg())),
          smaller(m) + split));
    } else if (m.lift() == Modules.Lift.TWO) {
      out.add(Draft.warn(Code.HEAVY_LIFT).about(m.rocks())
          .figure(m.drainedKg(), scene.settings().get(Setting.LIFT_ONE_KG), "kg").say(
          text("%s weighs %.1f kg lifted out wet: a lift for two.", what, Draft.up(m.drainedKg())),
          "Lift it with two people." + split));
    }
    if (!m.passes()) opening(scene, bodies, m, what, split, recall, out);
  }

  private static void opening(
      Scene scene, List<RockBody> bodies, Modules.Module m, String what, String split, Recall recall, List<Finding> out) {
    Turning.Question question = Turning.question(scene, bodies, m);
    Optional<Turning.Found> way = recall.of(question, question::answer);
    if (way.isPresent()) {
      double spare = Draft.wholeDown(1e3 * way.get().path().roomM());
      out.add(Draft.warn(Code.OPENING_TURN).about(m.rocks()).say(
          text("%s passes the opening only by turning it part way through. A way was found in an otherwise empty tank, with"
                  + " %.0f mm for fingers on each side%s.", what, scene.settings().get(Setting.OPENING_CLEAR_MM),
              spare < 1 ? " and nothing to spare" : text(" and %.0f mm to spare", spare)),
          "Follow the poses on the sheet, and try them before anything else stands in the tank." + split));
      return;
    }
    Passage p = m.passage();
    String none = " No way of turning it part way through was found, which does not prove that there is none.";
    String sentence = switch (p.answer()) {
      case STUCK -> text("%s does not pass the opening on a straight lift, whichever way it is turned and tilted before: at best"
          + " it is %.0f mm too large.", what, Draft.wholeUp(-1e3 * p.slackM())) + none;
      case PASSES -> text("%s fits the opening only tilted by %.0f degrees, and is then too tall to stand under it.", what,
          Math.toDegrees(p.tiltRad())) + none;
      case UNDECIDED -> text(
          "%s fits the opening on a straight lift, or does not, by less than half a millimetre: not settled.", what);
    };
    Draft d = p.answer() == OpeningFit.Answer.UNDECIDED ? Draft.warn(Code.OPENING) : Draft.fail(Code.OPENING);
    out.add(d.about(m.rocks())
        .say(sentence, smaller(m) + split));
  }

  private static String smaller(Modules.Module m) {
    return m.rocks().size() > 1 ? "Build it in smaller pieces." : "Choose a smaller rock.";
  }

  private static void amount(Scene scene, List<RockBody> bodies, List<Finding> out) {
    if (bodies.isEmpty()) return;
    Supply.RockAmount a = Supply.of(scene, bodies).amount();
    if (a.word().equals("within")) return;
    out.add(Draft.note(Code.ROCK_AMOUNT)
        .figure(a.kgPerL(), a.word().equals("below") ? a.lowKgPerL() : a.highKgPerL(), "kg/L").say(
        text("%.1f kg of rock in %.0f litres is %s the usual range (common practice).", a.dryKg(), a.tankL(), a.word()), ""));
  }
}
