package holdfast.engine.bonding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.SceneHeap;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
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

  /** Answers that a remembered load gives change nothing but the work: as many as it refuses are proven in one go. */
  @Test
  void fourteenJointsAreProvenWhereRememberedLoadsRefuse() {
    List<JointSpec> all = candidates(14);
    double[] cost = new double[14];
    for (int i = 0; i < 14; i++) cost[i] = 40 + 0.01 * i;
    int[] full = {0};
    Predicate<List<JointSpec>> meets = set -> {
      full[0]++;
      return set.size() >= 6 && set.contains(all.get(13));
    };
    JointSearch.Found.Enough found = JointSearch.cheapest(all, cost, set -> set.size() < 6, meets);
    assertThat(found.joints()).hasSize(6).contains(all.get(13));
    assertThat(found.least()).isTrue();
    assertThat(full[0]).isLessThan(200);
    assertThat(found.joints().stream().mapToDouble(j -> cost[all.indexOf(j)]).sum()).isCloseTo(bruteForce(all, cost,
        set -> set.size() >= 6 && set.contains(all.get(13))), within(1e-9));
  }

  /** The quick no of a load that refused before is the no of the full question, joint by joint. */
  @Test
  void aRememberedRefusalIsARefusal() {
    box("foot", false, 200, 250, 10);
    box("cap", false, 270, 250, 110);
    box("other foot", false, 400, 250, 10);
    SceneHeap bare = heap();
    TierQuestion.Refusal no = TierQuestion.refusal(bare, List.of(0, 1, 2), 1).orElseThrow();
    assertThat(TierQuestion.refusedAgain(bare, no)).isTrue();
    SceneHeap fixed = bare.withJoints(List.of(JointSpec.paste("foot", "cap", JointSpec.Bond.MORTAR, 90)));
    boolean met = TierQuestion.unmet(fixed, List.of(0, 1, 2), 1).isEmpty();
    assertThat(TierQuestion.refusedAgain(fixed, no) && met).isFalse();
  }

  private final List<Rock> rocks = new ArrayList<>();
  private final List<Placement> places = new ArrayList<>();

  private void box(String name, boolean removable, double x, double y, double z) {
    rocks.add(new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 100, 100, 100, 1), new Rock.BulkDensity(1.8), 0,
        false, removable, OptionalDouble.empty()));
    places.add(new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false));
  }

  private SceneHeap heap() {
    Tank tank = new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    Scene scene = new Scene("joints", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(450, 35, 25), List.of(), List.of(),
        rocks, places, List.of(), Settings.DEFAULT);
    return SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
  }

  /** A rock that is to come out again is never a candidate; the joint beside it is. */
  @Test
  void removableRocksStayLoose() {
    box("foot", false, 200, 250, 10);
    box("cap", true, 200, 250, 110);
    box("other foot", false, 400, 250, 10);
    box("other cap", false, 400, 250, 110);
    assertThat(JointSearch.candidates(heap(), List.of(0, 1, 2, 3))).singleElement()
        .satisfies(j -> assertThat(j.joins("other foot", "other cap")).isTrue());
  }

  /** Two joints of the same mortar: the one nearer the pane people look through costs a hair more, less than any millilitre. */
  @Test
  void ofTwoEqualJointsTheHiddenOneIsTaken() {
    box("front foot", false, 200, 120, 10);
    box("front cap", false, 200, 120, 110);
    box("back foot", false, 200, 380, 10);
    box("back cap", false, 200, 380, 110);
    SceneHeap heap = heap();
    List<JointSpec> all = JointSearch.candidates(heap, List.of(0, 1, 2, 3));
    assertThat(all).hasSize(2);
    double[] cost = JointSearch.costs(heap, all);
    JointSearch.Found.Enough found = JointSearch.cheapest(all, cost, set -> set.size() == 1 || set.size() == 2);
    assertThat(found.joints()).singleElement().satisfies(j -> assertThat(j.joins("back foot", "back cap")).isTrue());
    assertThat(Math.abs(cost[0] - cost[1])).isPositive().isLessThan(0.1);
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
