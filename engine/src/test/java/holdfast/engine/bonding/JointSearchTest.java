package holdfast.engine.bonding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.bonding.TierQuestion.Kind;
import holdfast.engine.bonding.TierQuestion.Refusal;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Side;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The search on heaps of stones, against asking every set of joints in full (derived: brute force). */
class JointSearchTest {
  /** Which reasons were met, and how often one more joint made what was enough no longer so. */
  private record Seen(Set<Kind> kinds, int compared, int worse) {
    Seen plus(Seen other) {
      Set<Kind> all = new HashSet<>(kinds);
      all.addAll(other.kinds);
      return new Seen(all, compared + other.compared, worse + other.worse);
    }
  }

  private static Seen compare(String what, SceneHeap scene, int most) {
    Seen seen = new Seen(Set.of(), 0, 0);
    for (Heap.Part part : scene.heap().separate()) {
      List<Integer> rocks = part.bodies();
      List<JointSpec> joints = JointSearch.candidates(scene, rocks);
      if (joints.isEmpty() || joints.size() > most || TierQuestion.unmet(scene, rocks, 1).isEmpty()) continue;
      seen = seen.plus(compare(what, scene, rocks, joints));
    }
    return seen;
  }

  private static Seen compare(String what, SceneHeap scene, List<Integer> rocks, List<JointSpec> joints) {
    int n = joints.size();
    JointSearch.Asking asking = new JointSearch.Asking(scene, rocks, joints, 1, Slides.NONE);
    List<BitSet> sets = IntStream.range(0, 1 << n).mapToObj(m -> BitSet.valueOf(new long[] {m})).toList();
    List<Refusal> answers = new ArrayList<>();
    for (BitSet s : sets) answers.add(asking.refusal(s).orElse(null));
    List<JointSearch.Found> found = JointSearch.search(scene, 2).stream().filter(f -> about(f, scene, rocks)).toList();
    reasons(what, asking, sets, answers);
    double[] cost = JointSearch.costs(scene, joints);
    OptionalDouble least = IntStream.range(0, sets.size()).filter(m -> answers.get(m) == null)
        .mapToDouble(m -> total(cost, sets.get(m))).min();
    Refusal all = answers.get(sets.size() - 1);
    if (least.isEmpty()) {
      JointSearch.Found.NotEnough none = (JointSearch.Found.NotEnough) found.get(0);
      assertThat(none.proven()).as(what).isTrue();
      assertThat(none.reason()).as(what).isEqualTo(all.words());
      return new Seen(Set.of(), 0, 0);
    }
    JointSearch.Found.Enough enough = (JointSearch.Found.Enough) found.get(0);
    assertThat(enough.least()).as(what).isTrue();
    assertThat(enough.all()).as(what).isEqualTo(Optional.ofNullable(all).map(Refusal::words));
    assertThat(enough.joints().stream().mapToDouble(j -> cost[joints.indexOf(j)]).sum()).as(what)
        .isCloseTo(least.getAsDouble(), within(1e-9));
    int worse = 0;
    for (int m = 0; m < sets.size(); m++) {
      for (int i = 0; i < n; i++) if (answers.get(m) == null && answers.get(m | 1 << i) != null) worse++;
    }
    Set<Kind> kinds = new HashSet<>();
    answers.stream().filter(a -> a != null).forEach(a -> kinds.add(a.kind()));
    return new Seen(kinds, 1, worse);
  }

  /** What one reason refuses is refused in full, and what it is proved to refuse is refused with any of the joints. */
  private static void reasons(String what, JointSearch.Asking asking, List<BitSet> sets, List<Refusal> answers) {
    Set<Refusal> all = new LinkedHashSet<>(answers);
    all.remove(null);
    for (Refusal r : all) {
      for (int m = 0; m < sets.size(); m++) {
        boolean again = asking.refusedBy(sets.get(m), List.of(r)) == 0;
        assertThat(again && answers.get(m) == null).as("%s: %s, %s", what, r, sets.get(m)).isFalse();
        if (r.equals(answers.get(m))) assertThat(again).as("%s: %s, %s", what, r, sets.get(m)).isTrue();
        if (!asking.refusedWithAny(sets.get(m), r)) continue;
        for (int k = 0; k < sets.size(); k++) {
          if ((k & ~m) == 0) assertThat(answers.get(k)).as("%s: %s, %s in %s", what, r, sets.get(k), sets.get(m)).isNotNull();
        }
      }
    }
  }

  private static boolean about(JointSearch.Found found, SceneHeap scene, List<Integer> rocks) {
    List<String> names = rocks.stream().map(scene::name).toList();
    return found instanceof JointSearch.Found.Enough e ? names.contains(e.joints().get(0).a())
        : names.containsAll(((JointSearch.Found.NotEnough) found).rocks());
  }

  private static double total(double[] cost, BitSet set) {
    return set.stream().mapToDouble(i -> cost[i]).sum();
  }

  @Test
  void isTheLeastOfAllSetsOnAFewHeaps() {
    Seen seen = new Seen(Set.of(), 0, 0);
    for (long seed : new long[] {9, 61, 85, 86, 93, 110, 124, 142}) {
      seen = seen.plus(compare("heap " + seed, JointScenes.laid(4 + (int) (seed % 4), seed, 2, 0.15), 5));
    }
    assertThat(seen.compared).isGreaterThanOrEqualTo(8);
    assertThat(seen.kinds).contains(Kind.STAYING, Kind.SHAKING, Kind.PUSHING);
  }

  /** With every joint fixed these give way, with fewer they don't. */
  @Test
  void fewerJointsAreFoundWhereAllAreNotEnough() {
    for (long seed : new long[] {21, 44, 156}) {
      SceneHeap scene = JointScenes.laid(4 + (int) (seed % 5), seed, seed == 21 ? 2 : 10, 0.15);
      assertThat(compare("heap " + seed, scene, 5).compared).as("heap %d", seed).isPositive();
      assertThat(JointSearch.search(scene, 1)).as("heap %d", seed).anySatisfy(f ->
          assertThat(((JointSearch.Found.Enough) f).all()).isPresent());
    }
  }

  /** Two corbelled sides and a lintel: joints that make it worse are seen here, so no order can be assumed. */
  @Test
  void isTheLeastWhereOneMoreJointMakesItWorse() {
    Seen seen = compare("gate", JointScenes.gate(3, 70, 2, 0.15), 8);
    assertThat(seen.compared).isEqualTo(1);
    assertThat(seen.worse).isPositive();
  }

  @Test
  @Tag("slow")
  void isTheLeastOfAllSetsOnManyHeaps() {
    Seen seen = new Seen(Set.of(), 0, 0);
    for (long seed = 1000; seed < 1400; seed++) {
      seen = seen.plus(compare("heap " + seed, JointScenes.laid(4 + (int) (seed % 5), seed, seed % 3 == 0 ? 10 : 2, 0.15), 8));
    }
    for (double shift : new double[] {50, 60, 80}) {
      seen = seen.plus(compare("gate " + shift, JointScenes.gate(3, shift, 2, 0.15), 8));
      seen = seen.plus(compare("gate " + shift, JointScenes.gate(3, shift, 20, 0.1), 8));
    }
    assertThat(seen.compared).isGreaterThan(100);
  }

  /** A rock that is to come out again is never a candidate; the joint beside it is. */
  @Test
  void removableRocksStayLoose() {
    JointScenes s = new JointScenes();
    s.cube("foot", false, 200, 250, 10);
    s.cube("cap", true, 200, 250, 110);
    s.cube("other foot", false, 400, 250, 10);
    s.cube("other cap", false, 400, 250, 110);
    assertThat(JointSearch.candidates(s.heap(20, 0.1, List.of(Side.FRONT)), List.of(0, 1, 2, 3))).singleElement()
        .satisfies(j -> assertThat(j.joins("other foot", "other cap")).isTrue());
  }

  /** Two joints of the same mortar: the one nearer the pane people look through costs a hair more, less than any millilitre. */
  @Test
  void ofTwoEqualJointsTheHiddenOneIsTaken() {
    JointScenes s = new JointScenes();
    s.cube("front foot", false, 200, 120, 10);
    s.cube("front cap", false, 200, 120, 110);
    s.cube("back foot", false, 200, 380, 10);
    s.cube("back cap", false, 200, 380, 110);
    SceneHeap heap = s.heap(20, 0.1, List.of(Side.FRONT));
    List<JointSpec> all = JointSearch.candidates(heap, List.of(0, 1, 2, 3));
    assertThat(all).hasSize(2);
    double[] cost = JointSearch.costs(heap, all);
    int hidden = all.get(0).joins("back foot", "back cap") ? 0 : 1;
    assertThat(cost[hidden]).isLessThan(cost[1 - hidden]);
    assertThat(Math.abs(cost[0] - cost[1])).isPositive().isLessThan(0.1);
  }
}
