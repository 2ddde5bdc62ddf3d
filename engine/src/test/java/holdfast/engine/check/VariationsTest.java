package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.statics.TierPushes;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshResult;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class VariationsTest {
  /** A block 200 x 200 x 100 mm on a block like it, moved over its edge by so much. */
  private static CheckReport run(double overMm, int threads, long seed) {
    return run(overMm, threads, seed, CheckWatch.NONE);
  }

  private static CheckReport run(double overMm, int threads, long seed, CheckWatch watch) {
    Tank tank = new Tank(900, 600, 600, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    List<Rock> rocks = List.of(box("lower"), box("upper"));
    List<Placement> places = List.of(
        new Placement("lower", new Vec3(400, 300, 0), Quat.IDENTITY, false),
        new Placement("upper", new Vec3(400 + overMm, 300, 100), Quat.IDENTITY, false));
    Settings settings = Settings.DEFAULT.with(Setting.PUSH_TIER_N, 1);
    Scene scene = new Scene("two blocks", tank, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()),
        new Scene.Sand(0, 1.5), new Scene.Water(450, 35, 25), List.of(), List.of(), rocks, places, List.of(), settings);
    return Check.run(scene, Shapes.of(scene, f -> new MeshResult.Unreadable("none")), new CheckOptions(threads, CheckOptions.Pushes.WEAKEST, 60, seed), watch);
  }

  private static Rock box(String name) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 200, 200, 100, 1), new Rock.BulkDensity(1.8), 0,
        false, false, OptionalDouble.empty());
  }

  @Test
  void broadBlocksSquareOnOneAnotherStandInAll() {
    CheckReport r = run(0, 2, 1);
    assertThat(r.variations().orElseThrow().passes()).isEqualTo(60);
    assertThat(r.findings()).noneMatch(f -> f.code() == Code.VARIES);
    assertThat(r.headline()).contains("Stands in 60 of 60 variations");
  }

  @Test
  void aBlockNearItsEdgeStandsInSomeAndIsNamed() {
    // The upper block's centre is 3 mm inside its drawn-in support; its centre of mass varies by up to 9 mm.
    CheckReport r = run(92, 2, 1);
    VariationsResult v = r.variations().orElseThrow();
    assertThat(v.stands()).isBetween(20, 55);
    assertThat(v.weak().get(0).rock()).isEqualTo("upper");
    assertThat(r.findings()).anyMatch(f -> f.code() == Code.VARIES && f.severity() == Severity.WARN);
  }

  @Test
  void theSameSeedGivesTheSameOnAnyNumberOfThreads() {
    assertThat(run(92, 1, 7).variations()).isEqualTo(run(92, 2, 7).variations());
    assertThat(run(92, 1, 7).headline()).isEqualTo(run(92, 2, 7).headline());
  }

  /** Every variation is told of once, after all that comes before, and the report is the same for it. */
  @Test
  void whoWatchesIsToldHowFarItHasCome() {
    List<String> told = Collections.synchronizedList(new ArrayList<>());
    CheckReport watched = run(92, 2, 7, (stage, done, of) -> told.add(stage + " " + done + "/" + of));
    // The search for joints may tell how far it is in between.
    int first = told.indexOf("VARIATIONS 0/60");
    assertThat(told.subList(0, 3)).containsExactly("STANDING 0/0", "PUSHES 0/0", "JOINTS 0/0");
    assertThat(told.subList(3, first)).allMatch(t -> t.startsWith("JOINTS "));
    assertThat(told.subList(first + 1, told.size())).containsExactlyInAnyOrderElementsOf(
        IntStream.rangeClosed(1, 60).mapToObj(k -> "VARIATIONS " + k + "/60").toList());
    assertThat(watched.headline()).isEqualTo(run(92, 1, 7).headline());
  }

  /**
   * A tower of 60 x 60 x 200 mm that is asked for nothing but what comes before the whole of one push, of which the first side's
   * part is half. Of 1.8 kg to the litre it has 1.30 kg and, under water, weighs 8.0 N (1.30 kg times 1 less 1.025/2.78, times
   * 9.81); pushed at 190 mm over its foot it goes over its edge, 30 mm from the middle, under 1.27 N. Variations (defaults) change
   * its mass by 15 %, its centre by 3 % of its size, at most 7 mm, and the contact by 3 mm: 9.2 N times 40 mm in 188 is 2 N at
   * most, 6.8 N times 20 mm in 190 is 0.7 N at least, or half of that for a foot drawn in by 10 mm. So 3 N, the half of 6, tip it
   * in all, and 0.05 N, the half of 0.1, in none. (Derived.)
   */
  @Test
  void whatComesBeforeAPushIsAskedOfEveryVariation() {
    SceneHeap heap = tower(6);
    IntFunction<TierPushes> whole = rock -> new TierPushes(List.of(), List.of());
    IntFunction<TierPushes> before = rock -> new TierPushes(List.of(),
        List.of(new Push(rock, new Vec3(400, 300, 190).times(1e-3), Vec3.X)));
    assertThat(Variations.run(heap, 40, 1, 1, CheckWatch.NONE, whole).passes()).isEqualTo(40);
    VariationsResult asked = Variations.run(heap, 40, 1, 1, CheckWatch.NONE, before);
    assertThat(asked.stands()).isEqualTo(40);
    assertThat(asked.passes()).isZero();
    assertThat(asked.weak()).singleElement().satisfies(w -> assertThat(w.rock()).isEqualTo("tower"));
    // It stands in all of them and bears the push in none: no mere note, and the figure is that of the pushes.
    assertThat(Variations.findings(asked)).singleElement().satisfies(f -> {
      assertThat(f.severity()).isEqualTo(Severity.WARN);
      assertThat(f.figure()).hasValue(0);
    });
    assertThat(Variations.run(tower(0.1), 40, 1, 1, CheckWatch.NONE, before).passes()).isEqualTo(40);
  }

  /** What a rock's tier asks holds a push on the way for every side of the settings. */
  @Test
  void aTierHasSomethingBeforeItFromEverySide() {
    SceneHeap heap = tower(6);
    Settings settings = heap.scene().settings();
    assertThat(TierPushes.on(0, heap.rocks().get(0), settings).middles())
        .hasSize((int) Math.round(settings.get(Setting.PUSH_DIRECTIONS)));
    assertThat(Variations.run(heap, 10, 1, 1, CheckWatch.NONE).passes()).isZero();
  }

  private static SceneHeap tower(double tierN) {
    Tank tank = new Tank(900, 600, 600, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    Rock rock = new Rock("tower", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 60, 60, 200, 1), new Rock.BulkDensity(1.8), 0,
        false, false, OptionalDouble.empty());
    Scene scene = new Scene("tower", tank, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()), new Scene.Sand(0, 1.5),
        new Scene.Water(450, 35, 25), List.of(), List.of(), List.of(rock),
        List.of(new Placement("tower", new Vec3(400, 300, 0), Quat.IDENTITY, false)), List.of(),
        Settings.DEFAULT.with(Setting.PUSH_TIER_N, tierN));
    return SceneHeap.of(scene, Shapes.of(scene, f -> new MeshResult.Unreadable("none")).placed());
  }
}
