package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.SceneBuilders.Family;
import holdfast.engine.bonding.JointScenes;
import holdfast.engine.check.PushStudy.PushFound;
import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is asked of a rock no further than a reader needs says what every side by itself says, each searched from nothing
 * (definition: the least of all is the least, whichever way it is found).
 */
class PushStudyTest {
  /** Widths of the two searches, as their own documentation states them; a figure of either may read so much low. */
  private static final double SIDE_WIDTH = 0.02;
  private static final double WEAKEST_WIDTH = 4e-3;

  /** Rounding of a search that ends where the balance does. */
  private static final double ROUNDING = 1e-6;

  private static Stream<Arguments> heaps() {
    List<Arguments> out = new ArrayList<>();
    for (int seed = 1; seed <= 24; seed++) out.add(Arguments.of("laid " + seed, laid(seed)));
    out.add(Arguments.of("pile", heap(Family.PILE.of(5, 7))));
    for (String name : List.of("nano", "small/arch-on-slab", "small/rod-pillar")) out.add(Arguments.of(name, heap(shipped(name))));
    return out.stream();
  }

  /** Boxes laid on each other, some of them turned on the spot, asked from eight sides on three lines. */
  private static SceneHeap laid(long seed) {
    Random random = new Random(seed);
    Scene s = JointScenes.laid(2 + random.nextInt(4), seed, 1 + random.nextInt(5), 0.15).scene();
    List<Placement> places = new ArrayList<>();
    for (Placement p : s.placements()) {
      Quat turn = random.nextInt(3) == 0 ? Quat.about(Vec3.Z, random.nextDouble()) : p.turn();
      places.add(new Placement(p.rock(), p.atMm(), turn, p.locked()));
    }
    return heap(s.withPlacements(places)
        .withSettings(s.settings().with(Setting.PUSH_DIRECTIONS, 8).with(Setting.PUSH_OFFSET, 0.5)));
  }

  private static Scene shipped(String name) {
    return SceneReader.read(Path.of("../scenes/" + name + ".json")).match(s -> s, no -> {
      throw new AssertionError(no.rendered());
    });
  }

  private static SceneHeap heap(Scene scene) {
    return SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
  }

  private static List<List<LoadCase>> cases(HeapStudy study, int rock) {
    PlacedRock r = study.scene().rocks().get(rock);
    return Push.round(rock, r.lobes(), r.centre(), study.scene().scene().settings()).stream()
        .map(lines -> study.cases(rock, lines)).toList();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("heaps")
  void everySideByItselfSaysTheSame(String name, SceneHeap heap) {
    HeapStudy study = new HeapStudy(heap, 1);
    PushStudy pushes = study.pushes();
    for (int i = 0; i < heap.rocks().size(); i++) {
      if (!study.safeUnderWeight(i)) continue;
      String rock = name + ", " + heap.name(i);
      List<LoadCase.Least> apart = cases(study, i).stream()
          .map(side -> LoadCase.least(side, pushes.cap(), SIDE_WIDTH, study.tier())).toList();
      PushFound weakest = pushes.weakest(i);
      double least = apart.stream().mapToDouble(LoadCase.Least::factor).min().orElseThrow();
      assertThat(weakest.marginN()).as(rock)
          .isBetween(least * (1 - WEAKEST_WIDTH - ROUNDING), least / (1 - SIDE_WIDTH) * (1 + ROUNDING));
      assertThat(weakest.marginN() < study.tier()).as(rock).isEqualTo(least < study.tier());

      List<PushFound> below = pushes.below(i);
      assertThat(below.stream().map(PushFound::degrees)).as(rock).containsExactlyInAnyOrderElementsOf(
          IntStream.range(0, apart.size()).filter(d -> apart.get(d).factor() < study.tier())
              .mapToObj(d -> 360.0 * d / apart.size()).toList());
      if (!below.isEmpty()) assertThat(below.get(0)).isEqualTo(weakest);
      List<PushFound> rose = pushes.rose(i);
      assertThat(rose).as(rock).hasSameSizeAs(apart).contains(weakest).containsAll(below);
      for (int d = 0; d < rose.size(); d++) {
        double alone = apart.get(d).factor();
        assertThat(rose.get(d).degrees()).isEqualTo(360.0 * d / rose.size());
        assertThat(rose.get(d).marginN()).as(rock + " toward " + rose.get(d).degrees())
            .isBetween(alone * (1 - SIDE_WIDTH - ROUNDING), alone / (1 - SIDE_WIDTH) * (1 + ROUNDING))
            .isGreaterThanOrEqualTo(weakest.marginN());
      }
    }
  }

  /** Definition of a margin: every line of every side in every state that governs was seen to stay at it. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("heaps")
  void allThatIsPushedStaysAtTheWeakest(String name, SceneHeap heap) {
    HeapStudy study = new HeapStudy(heap, 1);
    for (int i = 0; i < heap.rocks().size(); i++) {
      double margin = study.pushes().weakest(i).marginN();
      if (margin == 0) continue;
      for (List<LoadCase> side : cases(study, i)) {
        for (LoadCase c : side) assertThat(c.judge().refuses(c.live(), margin)).as("%s, %s", name, heap.name(i)).isEmpty();
        // On the middle line the two shares that a load passes on its way, under every judgement.
        for (LoadCase c : side) {
          if (side.stream().filter(o -> o.judge() == c.judge()).findFirst().orElseThrow() != c) continue;
          for (double share : new double[] {0.5, 0.25}) {
            assertThat(c.judge().refuses(c.live(), share * margin)).as("%s, %s", name, heap.name(i)).isEmpty();
          }
        }
      }
    }
  }

  /** What goes over below the tier, asked of every case for itself, is what is told; and the least of it. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("heaps")
  void whatGoesOverIsFound(String name, SceneHeap heap) {
    HeapStudy study = new HeapStudy(heap, 1);
    for (int i = 0; i < heap.rocks().size(); i++) {
      if (!study.safeUnderWeight(i)) continue;
      Optional<Double> least = Optional.empty();
      for (List<LoadCase> side : cases(study, i)) {
        LoadCase.Least all = LoadCase.least(side, study.pushes().cap(), SIDE_WIDTH, study.tier());
        if (all.factor() >= study.tier()) continue;
        Optional<Double> own = all.kind() == Movement.TOPPLES ? Optional.of(all.factor())
            : LoadCase.toppling(side, study.tier(), SIDE_WIDTH).map(LoadCase.Least::factor);
        if (own.isPresent() && (least.isEmpty() || own.get() < least.get())) least = own;
      }
      Optional<PushFound> told = study.pushes().topple(i);
      assertThat(told.isPresent()).as("%s, %s", name, heap.name(i)).isEqualTo(least.isPresent());
      if (told.isEmpty()) continue;
      assertThat(told.get().marginN()).as("%s, %s", name, heap.name(i))
          .isBetween(least.get() * (1 - SIDE_WIDTH - ROUNDING), least.get() / (1 - SIDE_WIDTH) * (1 + ROUNDING));
    }
  }

  /** One place decides: whoever asks for every side hears the same verdict, findings and weakest side, to the last digit. */
  @ParameterizedTest
  @ValueSource(strings = {"nano", "bad", "small/glued-arch"})
  void rosesChangeNothingElse(String name) {
    Scene s = shipped(name);
    CheckReport few = Check.run(s, Shapes.of(s, MeshLoader.NONE), new CheckOptions(1, CheckOptions.Pushes.WEAKEST, 0, 1));
    CheckReport all = Check.run(s, Shapes.of(s, MeshLoader.NONE), new CheckOptions(1, CheckOptions.Pushes.ROSES, 0, 1));
    assertThat(few.rocks()).isNotEmpty().allMatch(r -> r.rose().isEmpty());
    List<CheckReport.RockLine> without = all.rocks().stream().map(r -> new CheckReport.RockLine(
        r.name(), r.kind(), r.dryKg(), r.submergedN(), r.topMm(), List.of(), r.weakest(), r.pressN())).toList();
    assertThat(new CheckReport(all.scene(), all.verdict(), all.headline(), all.findings(), all.states(), without, all.joints(),
        all.feet(), all.gaps(), all.pane(), all.variations(), all.cautions()).toString()).isEqualTo(few.toString());
    for (CheckReport.RockLine r : all.rocks()) {
      assertThat(r.rose()).hasSize(Push.sides(s.settings())).contains(r.weakest().orElseThrow());
      assertThat(r.rose()).allMatch(p -> p.marginN() >= r.weakest().get().marginN());
    }
  }

  /** Asked for alone, after a check that did not ask for it, a rose is that of a check that does. */
  @ParameterizedTest
  @ValueSource(strings = {"nano", "small/arch-on-slab"})
  void aRoseByItselfIsTheSame(String name) {
    Scene s = shipped(name);
    Shapes shapes = Shapes.of(s, MeshLoader.NONE);
    CheckOptions options = new CheckOptions(1, CheckOptions.Pushes.ROSES, 0, 1);
    Recall recall = new Recall();
    Check.run(s, shapes, new CheckOptions(1, CheckOptions.Pushes.WEAKEST, 0, 1), CheckWatch.NONE, recall);
    for (CheckReport.RockLine r : Check.run(s, shapes, options).rocks()) {
      assertThat(Check.rose(s, shapes, r.name(), options, recall).toString()).isEqualTo(r.rose().toString());
    }
    assertThat(Check.rose(s, shapes, "no such rock", options, recall)).isEmpty();
  }
}
