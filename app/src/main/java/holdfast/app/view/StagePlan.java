package holdfast.app.view;

import holdfast.app.report.JointNumbers;
import holdfast.app.report.Quantity;
import holdfast.app.report.SeverityLook;
import holdfast.app.report.Units;
import holdfast.engine.build.Batches;
import holdfast.engine.build.BuildOrder;
import holdfast.engine.build.BuildPlan;
import holdfast.engine.build.StageJudge;
import holdfast.engine.build.Stander;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * The judged order of building of one scene, in the words and shapes of the window: the stages on the bench, where there
 * are any, and then those in the tank, in one row.
 *
 * @param revision of the scene
 */
record StagePlan(long revision, Scene scene, BuildPlan plan, List<Step> steps) {

  /**
   * One stage.
   *
   * @param number in its own order, from 1, of {@code of}
   * @param bench it is made on the bench and carried in later
   * @param rocks what comes now: one rock, or a piece of several
   * @param there everything in place after it, on the bench or in the tank
   */
  record Step(
      int number, int of, boolean bench, List<String> rocks, Set<String> there, BuildOrder.Stage stage, double waitH,
      String note) {
    Step {
      rocks = List.copyOf(rocks);
      there = Set.copyOf(there);
    }
  }

  StagePlan {
    steps = List.copyOf(steps);
  }

  /** Answers as the judge behind it does, until nobody wants to know any more. */
  private record Watched(Stander judge, BooleanSupplier stale) implements Stander {
    @Override
    public boolean stays(Set<Integer> placed, Set<Integer> cured) {
      if (stale.getAsBoolean()) throw new CancellationException("the scene has changed");
      return judge.stays(placed, cured);
    }

    @Override
    public Stander withSand() {
      return new Watched(judge.withSand(), stale);
    }

    @Override
    public Stander filled() {
      return new Watched(judge.filled(), stale);
    }

    @Override
    public Stander filling() {
      return new Watched(judge.filling(), stale);
    }
  }

  /** Works the order out; ends with a {@link CancellationException} once {@code stale} says that it is not wanted any more. */
  static StagePlan of(Scene scene, Shapes shapes, long revision, BooleanSupplier stale) {
    if (!shapes.sound()) throw new IllegalStateException("'" + shapes.problems().get(0).rock() + "' has no shape");
    BuildPlan plan = BuildPlan.of(scene, shapes, new Watched(new StageJudge(scene, shapes.placed()), stale));
    return new StagePlan(revision, scene, plan, steps(plan));
  }

  private static List<Step> steps(BuildPlan plan) {
    List<Step> out = new ArrayList<>();
    if (plan.carry().isPresent()) {
      Set<String> there = new LinkedHashSet<>();
      List<BuildOrder.Stage> bench = plan.order().stages();
      for (int i = 0; i < bench.size(); i++) {
        List<String> now = List.of(plan.rocks().get(bench.get(i).rock()));
        there.addAll(now);
        out.add(new Step(i + 1, bench.size(), true, now, there, bench.get(i), wait(plan.batches(), i), ""));
      }
    }
    Set<String> there = new LinkedHashSet<>();
    List<BuildOrder.Stage> tank = plan.tankOrder().stages();
    for (int i = 0; i < tank.size(); i++) {
      List<String> now = plan.tankRocks(i);
      there.addAll(now);
      String note = i == plan.sandBefore() ? "Lay the sand before it." : i >= plan.wetFrom() ? "Can be set after filling." : "";
      out.add(new Step(i + 1, tank.size(), false, now, there, tank.get(i), wait(plan.tankBatches(), i), note));
    }
    return out;
  }

  private static double wait(Batches b, int stage) {
    return b.waits().get(stage);
  }

  int stages() {
    return steps.size();
  }

  /** The step by its number, from 1. */
  Step step(int number) {
    return steps.get(number - 1);
  }

  /** What comes at this step, in words. */
  String rocks(int number) {
    List<String> r = step(number).rocks;
    return r.size() == 1 ? r.get(0) : String.join(", ", r.subList(0, r.size() - 1)) + " and " + r.get(r.size() - 1);
  }

  /** The head of a step. */
  String title(int number) {
    Step s = step(number);
    String where = s.bench ? "On the bench, " : plan.carry().isPresent() ? "Into the tank, " : "Stage ";
    return where + s.number + " of " + s.of + ": " + (s.bench || s.rocks.size() == 1 ? "set down " : "lower ") + rocks(number);
  }

  SeverityLook look(int number) {
    BuildOrder.Stage s = step(number).stage;
    return s.stands() ? SeverityLook.FINE : s.until() < 0 ? SeverityLook.FAIL : SeverityLook.WARN;
  }

  /** Whether the stage stands, and what holds it when it does not. */
  String help(int number) {
    BuildOrder.Stage s = step(number).stage;
    if (s.until() < 0) return "Does not stand, and nothing was found that would hold it: do not build this.";
    int until = number - step(number).number + s.until() + 1;
    return switch (s.help()) {
      case NONE -> "Stands by itself.";
      case HAND -> "Does not stand yet: hold it by hand until " + rocks(until) + " is on.";
      case PROP -> s.curedHere()
          ? "Does not stand: prop it for " + hours(step(number).waitH) + ", until its joints have set."
          : "Does not stand: prop it until the joints of stage " + (s.until() + 1) + " have set.";
    };
  }

  /** The same in a word or two, for a tag on the rock; empty when it stands. */
  Optional<String> tag(int number) {
    BuildOrder.Stage s = step(number).stage;
    if (s.stands()) return Optional.empty();
    if (s.until() < 0) return Optional.of("falls");
    return Optional.of(s.help() == BuildOrder.Help.PROP ? "prop it" : "hold it");
  }

  private static String hours(double h) {
    return h < 1 ? Math.round(h * 60) + " minutes" : h < 48 ? Math.round(h) + " hours" : Math.round(h / 24) + " days";
  }

  /** The joints that are made at this step, with what; empty when there are none. */
  String joints(int number, Units units) {
    Step s = step(number);
    List<String> parts = new ArrayList<>();
    JointNumbers numbers = JointNumbers.of(scene);
    String before = "";
    for (int j : s.stage.joints()) {
      JointSpec spec = scene.joints().get(j);
      boolean first = s.rocks.contains(spec.a());
      String own = s.rocks.size() == 1 ? "it" : first ? spec.a() : spec.b();
      // "Fix it to one with this, and to another with that."
      parts.add((own.equals(before) ? "to " : own + " to ") + (first ? spec.b() : spec.a())
          + (spec.bond() == JointSpec.Bond.ROD ? " with a rod"
          : " with " + units.brief(Quantity.SMALL_VOLUME, spec.amountMl()) + " of " + spec.bond().word())
          + numbers.number(spec.a(), spec.b()).map(n -> " (joint " + n + ")").orElse(""));
      before = own;
    }
    return parts.isEmpty() ? "" : "Fix " + String.join(", and ", parts) + ".";
  }

  /** The whole order in a line. */
  String words() {
    List<BuildOrder.Order> orders = new ArrayList<>(List.of(plan.order()));
    plan.carry().ifPresent(c -> orders.add(c.order()));
    if (orders.stream().anyMatch(o -> !o.complete())) {
      return "No order was found in which everything stands, even with joints set.";
    }
    if (orders.stream().allMatch(BuildOrder.Order::unaided)) {
      return plan.wetFrom() < plan.tankOrder().stages().size()
          ? "Every stage stands by itself, dry or after filling as it says, with fresh joints bearing nothing."
          : "Every stage stands by itself, dry, with fresh joints bearing nothing.";
    }
    return orders.stream().allMatch(BuildOrder.Order::least)
        ? "No order stands unaided at every stage; this one asks for the least help."
        : "This order needs help where marked; the search for a better one was cut short.";
  }
}
