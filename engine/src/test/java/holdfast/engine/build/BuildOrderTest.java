package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.build.BuildOrder.Help;
import holdfast.engine.build.BuildOrder.Joint;
import holdfast.engine.build.BuildOrder.Order;
import holdfast.engine.build.BuildOrder.Stage;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class BuildOrderTest {

  private static Supports supports(List<Set<Integer>> below) {
    Set<Integer> base = new TreeSet<>();
    List<Double> bottom = new ArrayList<>();
    for (int i = 0; i < below.size(); i++) {
      if (below.get(i).isEmpty()) base.add(i);
      bottom.add(below.get(i).isEmpty() ? 0.0 : 0.1);
    }
    return new Supports(below, base, bottom);
  }

  private static Order search(List<Set<Integer>> below, List<Joint> joints, Set<Integer> living, Stander stander) {
    List<Boolean> live = new ArrayList<>();
    List<Integer> module = new ArrayList<>();
    for (int i = 0; i < below.size(); i++) {
      live.add(living.contains(i));
      module.add(i);
    }
    return BuildOrder.search(supports(below), joints, live, module, stander, 100_000);
  }

  private static List<Integer> rocks(Order order) {
    return order.stages().stream().map(Stage::rock).toList();
  }

  @Test
  void aPlainHeapIsAskedOncePerStage() {
    Order order = search(List.of(Set.of(2), Set.of(2), Set.of(), Set.of(0, 1)), List.of(), Set.of(), (p, c) -> true);
    assertThat(rocks(order)).containsExactly(2, 0, 1, 3);
    assertThat(order.unaided()).isTrue();
    assertThat(order.least()).isTrue();
    assertThat(order.questions()).isEqualTo(4);
  }

  @Test
  void livingRockComesLast() {
    Order order = search(List.of(Set.of(), Set.of(), Set.of(0)), List.of(), Set.of(0), (p, c) -> true);
    assertThat(rocks(order)).containsExactly(1, 0, 2);
    Order apart = search(List.of(Set.of(), Set.of(), Set.of(1)), List.of(), Set.of(0), (p, c) -> true);
    assertThat(rocks(apart)).containsExactly(1, 2, 0);
  }

  /** A counterweight: the shelf (1) tips off its base (0) until the weight (2) lies on its tail: a hand for one stage. */
  @Test
  void aHandHoldsWhatTheNextRockHolds() {
    Stander s = (p, c) -> !p.contains(1) || p.contains(2);
    Order order = search(List.of(Set.of(), Set.of(0), Set.of(1)), List.of(), Set.of(), s);
    assertThat(order.complete()).isTrue();
    assertThat(order.unaided()).isFalse();
    assertThat(order.stages()).extracting(Stage::help).containsExactly(Help.NONE, Help.HAND, Help.NONE);
    assertThat(order.stages().get(1).until()).isEqualTo(2);
  }

  /** The same with nothing to come: the joint must set under a prop. */
  @Test
  void aPropHoldsUntilTheJointHasSet() {
    Stander s = (p, c) -> !p.contains(1) || c.contains(7);
    Order order = search(List.of(Set.of(), Set.of(0)), List.of(new Joint(7, 0, 1)), Set.of(), s);
    assertThat(order.complete()).isTrue();
    assertThat(order.stages().get(1).help()).isEqualTo(Help.PROP);
    assertThat(order.stages().get(1).joints()).containsExactly(7);
    assertThat(order.stages().get(1).curedHere()).isTrue();
  }

  /** Two shelves that both need their joints set: one wait serves both, and both are propped, not held by hand. */
  @Test
  void whatNoRockRelievesIsProppedFromTheStart() {
    Stander s = (p, c) -> (!p.contains(1) || c.contains(0)) && (!p.contains(2) || c.contains(1));
    Order order = search(List.of(Set.of(), Set.of(0), Set.of(0)), List.of(new Joint(0, 0, 1), new Joint(1, 0, 2)), Set.of(), s);
    assertThat(order.stages()).extracting(Stage::help).containsExactly(Help.NONE, Help.PROP, Help.PROP);
    assertThat(order.stages()).extracting(Stage::curedHere).containsExactly(false, false, true);
    assertThat(order.stages().get(1).until()).isEqualTo(2);
  }

  /** An order that goes round the trouble is found although the plain one walks into it. */
  @Test
  void itTurnsBack() {
    // Rock 0 alone falls unless 1 stands by it.
    Stander s = (p, c) -> !p.contains(0) || p.contains(1);
    Order order = search(List.of(Set.of(), Set.of()), List.of(), Set.of(), s);
    assertThat(rocks(order)).containsExactly(1, 0);
    assertThat(order.unaided()).isTrue();
  }

  @Test
  void whatNeverStandsIsSaid() {
    Stander s = (p, c) -> !p.contains(1);
    Order order = search(List.of(Set.of(), Set.of(0)), List.of(new Joint(0, 0, 1)), Set.of(), s);
    assertThat(order.complete()).isFalse();
    assertThat(order.unaided()).isFalse();
    assertThat(order.stages()).hasSize(2);
    assertThat(order.stages().get(1).stands()).isFalse();
    assertThat(order.stages().get(1).until()).isEqualTo(-1);
  }

  @Test
  void anEndToTheQuestionsIsSaid() {
    Order order = BuildOrder.search(supports(List.of(Set.of(), Set.of(), Set.of())), List.of(),
        List.of(false, false, false), List.of(0, 1, 2), (p, c) -> true, 1);
    assertThat(order.stages()).hasSize(3);
    assertThat(order.least()).isFalse();
  }

  /** The least help, against every order and every choice of help, for heaps drawn by chance. */
  @Test
  void asksForTheLeastHelp() {
    long seed = 11;
    Random random = new Random(seed);
    for (int run = 0; run < 150; run++) {
      int n = 3 + random.nextInt(3);
      List<Set<Integer>> below = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        Set<Integer> b = new TreeSet<>();
        for (int k = 0; k < i; k++) if (random.nextInt(4) == 0) b.add(k);
        below.add(b);
      }
      List<Joint> joints = new ArrayList<>();
      for (int i = 1; i < n; i++) if (random.nextBoolean()) joints.add(new Joint(joints.size(), random.nextInt(i), i));
      Map<String, Boolean> answers = new HashMap<>();
      Stander stander = (p, c) -> answers.computeIfAbsent(p + "|" + c, k -> random.nextInt(100) < 45 + 12 * c.size());
      Order order = search(below, joints, Set.of(), stander);
      int least = leastHelp(below, joints, stander, new TreeSet<>(), new TreeSet<>(), 0);
      if (least == Integer.MAX_VALUE) {
        assertThat(order.complete()).as("seed %d run %d", seed, run).isFalse();
        continue;
      }
      assertThat(order.complete()).as("seed %d run %d", seed, run).isTrue();
      int cost = order.stages().stream().mapToInt(s -> s.curedHere() ? 1000 : s.stands() ? 0 : 1).sum();
      assertThat(cost).as("seed %d run %d", seed, run).isEqualTo(least);
      recheck(order, joints, stander);
    }
  }

  private static void recheck(Order order, List<Joint> joints, Stander stander) {
    Set<Integer> placed = new TreeSet<>();
    Set<Integer> cured = new TreeSet<>();
    Set<Integer> made = new TreeSet<>();
    for (Stage s : order.stages()) {
      placed.add(s.rock());
      made.addAll(s.joints());
      assertThat(s.bearing()).isEqualTo(cured);
      assertThat(stander.stays(placed, cured)).isEqualTo(s.stands());
      if (s.curedHere()) {
        cured.addAll(made);
        assertThat(stander.stays(placed, cured)).isTrue();
      }
    }
    assertThat(made).hasSize(joints.size());
  }

  private static int leastHelp(
      List<Set<Integer>> below, List<Joint> joints, Stander s, Set<Integer> placed, Set<Integer> cured, int held) {
    if (placed.size() == below.size()) return held == 0 ? 0 : Integer.MAX_VALUE;
    int best = Integer.MAX_VALUE;
    for (int i = 0; i < below.size(); i++) {
      if (placed.contains(i) || !placed.containsAll(below.get(i))) continue;
      Set<Integer> now = new TreeSet<>(placed);
      now.add(i);
      if (s.stays(Collections.unmodifiableSet(now), cured)) {
        best = Math.min(best, leastHelp(below, joints, s, now, cured, 0));
        continue;
      }
      if (held < BuildOrder.MOST_HELD) best = Math.min(best, plus(1, leastHelp(below, joints, s, now, cured, held + 1)));
      Set<Integer> set = new TreeSet<>();
      for (Joint j : joints) if (now.contains(j.a()) && now.contains(j.b())) set.add(j.number());
      if (s.stays(now, set)) best = Math.min(best, plus(1000, leastHelp(below, joints, s, now, set, 0)));
    }
    return best;
  }

  private static int plus(int a, int b) {
    return b == Integer.MAX_VALUE ? b : a + b;
  }
}
