package holdfast.engine.bonding;

import holdfast.engine.statics.Gravity;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.Margin;
import holdfast.engine.statics.Movement;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Push;
import holdfast.engine.statics.Rest;
import holdfast.engine.statics.SceneHeap;
import holdfast.engine.statics.State;
import holdfast.engine.statics.Wrench;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The tier question: does a heap stay in every state, and does every rock bear the tier's push from every side on every
 * line, the tier's press on its rim, and the shaking asked for, without anything going over? It stops at the first no.
 * A rock that only slides is no reason for a bond.
 */
public final class TierQuestion {
  /** A bound is passed by this factor to see how the heap gives way. */
  private static final double JUST_BEYOND = 1.02;

  private final SceneHeap scene;
  private final Settings settings;

  private TierQuestion(SceneHeap scene) {
    this.scene = scene;
    settings = scene.scene().settings();
  }

  /** The first reason why the tier is not met, in words; empty when it is met. */
  public static Optional<String> unmet(SceneHeap scene) {
    return new TierQuestion(scene).unmet();
  }

  private Optional<String> unmet() {
    List<Heap.Part> parts = scene.heap().separate();
    List<PartJudge> judges = new ArrayList<>();
    List<State> states = new ArrayList<>();
    for (State s : scene.weights().states()) {
      List<Wrench> loads = scene.weights().loads(s);
      for (Heap.Part p : parts) {
        PartJudge j = new PartJudge(p, loads);
        if (!j.safe()) return Optional.of(p.heap().bodies().get(0).name() + " and what it bears on do not stay, " + s.words());
        judges.add(j);
        states.add(s);
      }
    }
    for (int k = 0; k < judges.size(); k++) {
      Optional<String> no = shaken(states.get(k), judges.get(k));
      if (no.isPresent()) return no;
    }
    for (int k = 0; k < judges.size(); k++) {
      Optional<String> no = pushed(states.get(k), judges.get(k));
      if (no.isPresent()) return no;
    }
    return Optional.empty();
  }

  private Optional<String> pushed(State state, PartJudge judge) {
    double tier = settings.get(Setting.PUSH_TIER_N);
    int directions = (int) Math.round(settings.get(Setting.PUSH_DIRECTIONS));
    for (int rock : judge.part().bodies()) {
      PlacedRock r = scene.rocks().get(rock);
      for (int d = 0; d < directions; d++) {
        for (Push p : Push.lines(rock, r.lobes(), r.centre(), 360.0 * d / directions, settings)) {
          if (goesOver(judge, judge.part().of(p.unit(scene.heap())), tier)) {
            return Optional.of(scene.name(rock) + " topples when pushed, " + state.words());
          }
        }
      }
      for (Push p : Push.presses(rock, r.lobes())) {
        if (goesOver(judge, judge.part().of(p.unit(scene.heap())), tier)) {
          return Optional.of(scene.name(rock) + " tips when pressed down, " + state.words());
        }
      }
    }
    return Optional.empty();
  }

  private Optional<String> shaken(State state, PartJudge judge) {
    int directions = (int) Math.round(settings.get(Setting.PUSH_DIRECTIONS));
    List<Double> kg = scene.weights().shakingKg(state);
    double limit = settings.get(Setting.SHAKE_G);
    if (limit == 0) return Optional.empty();
    for (int d = 0; d < directions; d++) {
      Vec3 along = Vec3.heading(360.0 * d / directions);
      List<Wrench> live = judge.part().bodies().stream()
          .map(b -> new Wrench(along.times(kg.get(b) * Gravity.G), Vec3.ZERO)).toList();
      if (!judge.under(live, limit).stays()) {
        return Optional.of("the heap of " + judge.heap().bodies().get(0).name() + " gives way when shaken, " + state.words());
      }
    }
    return Optional.empty();
  }

  /** Whether {@code factor} times {@code live} is not borne, in any way but by sliding. */
  private static boolean goesOver(PartJudge judge, List<Wrench> live, double factor) {
    if (judge.under(live, factor).stays()) return false;
    Margin margin = judge.atMost(live, factor);
    double first = margin.match(l -> l.factor(), b -> b.cap(), f -> 0.0, u -> 0.0);
    Rest rest = judge.under(live, Math.min(factor, first * JUST_BEYOND));
    return !(rest instanceof Rest.Moves m) || Movement.of(judge.heap(), m.mechanism()) != Movement.SLIDES;
  }
}
