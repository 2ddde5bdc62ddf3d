package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.build.Modules;
import holdfast.engine.build.OpeningFit;
import holdfast.engine.statics.SceneHeap;
import holdfast.engine.supply.Supply;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;

/** Lifting, passing the opening, floating, and how much rock there is. */
final class HandlingFindings {
  private HandlingFindings() {}

  static List<Finding> of(SceneHeap scene) {
    List<Finding> out = new ArrayList<>();
    List<RockBody> bodies = scene.rocks().stream().map(PlacedRock::body).toList();
    for (int i = 0; i < scene.rocks().size(); i++) {
      double n = scene.weights().submergedN(i);
      if (n < 0) {
        out.add(Draft.fail(Code.FLOATS).about(scene.name(i)).figure(n, 0, "N").say(
            text("%s floats: its sealed voids lift more than its stone weighs.", scene.name(i)),
            "Fix it down, or take out foam; nothing else holds it."));
      }
    }
    for (Modules.Module m : Modules.of(scene.scene(), bodies)) module(scene.scene(), m, out);
    amount(scene.scene(), bodies, out);
    return out;
  }

  private static void module(Scene scene, Modules.Module m, List<Finding> out) {
    String what = Draft.names(m.rocks()) + (m.rocks().size() > 1 ? ", fixed together," : "");
    String split = m.split()
        .map(s -> text(" Or make the joint %s to %s in the tank.", scene.joints().get(s.joint()).a(),
            scene.joints().get(s.joint()).b()))
        .orElse("");
    if (m.lift() == Modules.Lift.TOO_HEAVY) {
      out.add(Draft.fail(Code.HEAVY_LIFT).about(m.rocks())
          .figure(m.drainedKg(), scene.settings().get(Setting.LIFT_TWO_KG), "kg").say(
          text("%s weighs %.1f kg lifted out wet: too heavy for two people.", what, m.drainedKg()),
          "Build it in smaller pieces." + split));
    } else if (m.lift() == Modules.Lift.TWO) {
      out.add(Draft.warn(Code.HEAVY_LIFT).about(m.rocks())
          .figure(m.drainedKg(), scene.settings().get(Setting.LIFT_ONE_KG), "kg").say(
          text("%s weighs %.1f kg lifted out wet: a lift for two.", what, m.drainedKg()), "Lift it with two people." + split));
    }
    if (m.passes()) return;
    boolean stuck = m.passage().answer() == OpeningFit.Answer.STUCK;
    Draft d = stuck ? Draft.fail(Code.OPENING) : Draft.warn(Code.OPENING);
    out.add(d.about(m.rocks()).say(
        stuck ? text("%s does not pass the opening on a straight lift, whichever way it is turned and tilted before: at best it"
                + " is %.0f mm too large. Turning it while it is half way through was not tried.",
                what, Draft.wholeUp(-1e3 * m.passage().slackM()))
            : text("Whether %s passes the opening on a straight lift is within half a millimetre: not settled.", what),
        (m.rocks().size() > 1 ? "Build it in smaller pieces." : "Choose a smaller rock.") + split));
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
