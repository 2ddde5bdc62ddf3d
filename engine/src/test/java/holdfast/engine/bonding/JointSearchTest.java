package holdfast.engine.bonding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.scene.JointSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/** The cheapest set of joints against trying every set there is (derived: brute force). */
class JointSearchTest {
  private static List<JointSpec> candidates(int n) {
    List<JointSpec> out = new ArrayList<>();
    for (int i = 0; i < n; i++) out.add(JointSpec.paste("rock " + i, "rock " + (i + 1), JointSpec.Bond.MORTAR, 10 + i));
    return out;
  }

  private static double bruteForce(List<JointSpec> all, double[] cost, Predicate<List<JointSpec>> meets) {
    double best = Double.POSITIVE_INFINITY;
    for (int mask = 0; mask < 1 << all.size(); mask++) {
      List<JointSpec> set = new ArrayList<>();
      double sum = 0;
      for (int i = 0; i < all.size(); i++) {
        if ((mask >> i & 1) == 0) continue;
        set.add(all.get(i));
        sum += cost[i];
      }
      if (sum < best && meets.test(set)) best = sum;
    }
    return best;
  }

  @Test
  void isTheCheapestOfAllSetsEvenWhereMoreJointsDoNotHelp() {
    for (long seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      int n = 1 + random.nextInt(8);
      List<JointSpec> all = candidates(n);
      double[] cost = random.doubles(n, 1, 100).toArray();
      // An arbitrary answer for every set, no order assumed; only that all together do.
      boolean[] answer = new boolean[1 << n];
      for (int i = 0; i < answer.length; i++) answer[i] = random.nextInt(4) == 0;
      answer[answer.length - 1] = true;
      Predicate<List<JointSpec>> meets = set -> answer[set.stream().mapToInt(j -> 1 << all.indexOf(j)).sum()];
      JointSearch.Found.Enough found = JointSearch.cheapest(all, cost, meets);
      double total = found.joints().stream().mapToDouble(j -> cost[all.indexOf(j)]).sum();
      assertThat(found.least()).as("seed %d", seed).isTrue();
      assertThat(meets.test(found.joints())).as("seed %d", seed).isTrue();
      assertThat(total).as("seed %d", seed).isCloseTo(bruteForce(all, cost, meets), within(1e-9));
    }
  }

  @Test
  void saysSoWhereTooManySetsWouldHaveToBeAsked() {
    List<JointSpec> all = candidates(14);
    double[] cost = new double[14];
    java.util.Arrays.fill(cost, 1);
    JointSearch.Found.Enough found = JointSearch.cheapest(all, cost, set -> set.size() >= 10);
    assertThat(found.joints()).hasSize(10);
    assertThat(found.least()).isFalse();
  }
}
