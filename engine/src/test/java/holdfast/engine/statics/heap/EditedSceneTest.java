package holdfast.engine.statics.heap;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.SceneBuilders.Family;
import holdfast.engine.contact.Solid;
import holdfast.engine.statics.Recall;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The heap of an edited scene, made from that of the scene before, is the one that a search of everything makes, number by
 * number (definition: a pair's contact depends on the two bodies alone).
 */
class EditedSceneTest {
  private static Scene shipped(String name) {
    return SceneReader.read(Path.of("../scenes/" + name + ".json")).match(s -> s, no -> {
      throw new AssertionError(no.rendered());
    });
  }

  private static List<PlacedRock> placed(Scene scene) {
    return Shapes.of(scene, MeshLoader.NONE).placed();
  }

  private static void assertSame(SceneHeap kept, SceneHeap anew, String what) {
    assertThat(kept.scene()).as(what).isEqualTo(anew.scene());
    assertThat(kept.rocks()).as(what).extracting(r -> r.rock().name()).isEqualTo(
        anew.rocks().stream().map(r -> r.rock().name()).toList());
    assertThat(kept.solids()).as(what).extracting(Solid::name).isEqualTo(anew.solids().stream().map(Solid::name).toList());
    assertThat(kept.contacts()).as(what).isEqualTo(anew.contacts());
    assertThat(kept.heap()).as(what).isEqualTo(anew.heap());
    assertThat(kept.seats()).as(what).isEqualTo(anew.seats());
    assertThat(kept.idleBonds()).as(what).isEqualTo(anew.idleBonds());
    for (int l = 0; l < anew.seats().size(); l++) {
      assertThat(kept.contactPolygon(l)).as(what).isEqualTo(anew.contactPolygon(l));
    }
    assertThat(kept.weights().loads()).as(what).isEqualTo(anew.weights().loads());
    for (State s : anew.weights().states()) assertThat(kept.weights().shakingKg(s)).isEqualTo(anew.weights().shakingKg(s));
    for (int i = 0; i < anew.rocks().size(); i++) {
      assertThat(kept.weights().submergedN(i)).as(what).isEqualTo(anew.weights().submergedN(i));
    }
  }

  // -- random edits -------------------------------------------------------------------------------------------------

  private static Scene edited(Scene scene, Scene first, Random random) {
    List<Placement> placements = new ArrayList<>(scene.placements());
    int i = random.nextInt(placements.size());
    Placement p = placements.get(i);
    switch (random.nextInt(9)) {
      case 0 -> placements.remove(i);
      case 1 -> {
        // One that was taken out comes back, at any place in the order.
        List<Placement> out = first.placements().stream().filter(f -> scene.placement(f.rock()).isEmpty()).toList();
        if (!out.isEmpty()) {
          placements.add(random.nextInt(placements.size() + 1), out.get(random.nextInt(out.size())));
        }
      }
      case 2 -> placements.add(random.nextInt(placements.size()), placements.remove(i));
      case 3 -> {
        return scene.withJoints(joints(scene, random));
      }
      case 4 -> {
        Setting s = random.nextBoolean() ? Setting.CONTACT_INSET_MM : Setting.FRICTION_ROCK_ROCK;
        return scene.withSettings(scene.settings().with(s, s.initial() * (0.9 + 0.05 * random.nextInt(3))));
      }
      case 5 -> placements.set(i, new Placement(
          p.rock(), p.atMm(), Quat.about(Vec3.Z, 0.2 * random.nextGaussian()).times(p.turn()).unit(), p.locked()));
      default -> placements.set(i, new Placement(p.rock(), p.atMm().plus(
          new Vec3(20 * random.nextGaussian(), 20 * random.nextGaussian(), random.nextBoolean() ? 0 : random.nextGaussian())),
          p.turn(), p.locked()));
    }
    return placements.isEmpty() ? scene : scene.withPlacements(placements);
  }

  private static List<JointSpec> joints(Scene scene, Random random) {
    List<JointSpec> joints = new ArrayList<>(scene.joints());
    if (!joints.isEmpty() && random.nextBoolean()) {
      joints.remove(random.nextInt(joints.size()));
      return joints;
    }
    List<PlacedRock> rocks = placed(scene);
    var pairs = SceneHeap.of(scene, rocks).contacts().contacts().stream().filter(c -> c.b() < rocks.size()).toList();
    if (pairs.isEmpty()) return joints;
    var c = pairs.get(random.nextInt(pairs.size()));
    String a = rocks.get(c.a()).rock().name();
    String b = rocks.get(c.b()).rock().name();
    joints.removeIf(j -> j.joins(a, b));
    joints.add(random.nextBoolean()
        ? new JointSpec(a, b, JointSpec.Bond.MORTAR, 20 + random.nextInt(40), 0, 0, false)
        : new JointSpec(b, a, JointSpec.Bond.ROD, 0, 8, 30, true));
    return joints;
  }

  /** Every edit is followed forward, now and then taken back, and asked from the scene two edits before as well. */
  private static void followed(Scene first, long seed, int edits) {
    Random random = new Random(seed);
    List<Scene> scenes = new ArrayList<>(List.of(first));
    SceneHeap kept = SceneHeap.of(first, placed(first));
    SceneHeap older = kept;
    kept.weights().loads();
    for (int k = 0; k < edits; k++) {
      Scene last = scenes.get(scenes.size() - 1);
      Scene now = random.nextInt(4) == 0 && scenes.size() > 1 ? scenes.remove(scenes.size() - 2) : edited(last, first, random);
      scenes.add(now);
      String what = "seed " + seed + ", edit " + k;
      SceneHeap anew = SceneHeap.of(now, placed(now));
      SceneHeap before = kept;
      kept = before.next(now, placed(now));
      assertSame(kept, anew, what);
      assertSame(older.next(now, placed(now)), anew, what + ", two edits at once");
      assertSame(anew.next(before.scene(), placed(before.scene())), before, what + ", backwards");
      older = before;
    }
  }

  @ParameterizedTest
  @CsvSource({"TOWERS,15", "WALL,12", "PILE,14"})
  void inHeapsOfEveryKind(Family family, int rocks) {
    for (long seed = 1; seed <= 4; seed++) followed(family.of(rocks, seed), seed, 25);
  }

  @ParameterizedTest
  @ValueSource(strings = {"cube", "display", "islands", "nano", "peninsula", "small/glued-arch", "small/rod-pillar"})
  void inShippedScenes(String name) {
    followed(shipped(name), 5, 12);
  }

  // -- what is kept, and what is not -----------------------------------------------------------------------------------

  private static Scene moved(Scene scene, int rock, Vec3 byMm) {
    List<Placement> placements = new ArrayList<>(scene.placements());
    Placement p = placements.get(rock);
    placements.set(rock, new Placement(p.rock(), p.atMm().plus(byMm), p.turn(), p.locked()));
    return scene.withPlacements(placements);
  }

  private static long shared(SceneHeap kept, SceneHeap before) {
    return kept.contacts().contacts().stream()
        .filter(c -> before.contacts().contacts().stream().anyMatch(o -> o == c)).count();
  }

  /** Exact: of the contacts only those of the rock that moved are new; the shapes were made anew and are equal. */
  @Test
  void onlyTheContactsOfTheRockThatMovedAreSought() {
    Scene scene = Family.PILE.of(14, 1);
    SceneHeap before = SceneHeap.of(scene, placed(scene));
    Scene now = moved(scene, 3, new Vec3(1, 0, 0));
    SceneHeap kept = before.next(now, placed(now));
    long about = kept.contacts().contacts().stream().filter(c -> c.a() == 3 || c.b() == 3).count();
    assertThat(about).isPositive();
    assertThat(shared(kept, before)).isEqualTo(kept.contacts().contacts().size() - about);
  }

  /** A larger inset draws every patch in: nothing of the links may be carried over. */
  @Test
  void anotherSettingOrTankKeepsNothing() {
    Scene scene = Family.WALL.of(6, 1);
    SceneHeap before = SceneHeap.of(scene, placed(scene));
    Scene inset = scene.withSettings(scene.settings().with(Setting.CONTACT_INSET_MM, 3));
    assertThat(before.next(inset, placed(inset)).heap()).isNotEqualTo(before.heap());
    assertSame(before.next(inset, placed(inset)), SceneHeap.of(inset, placed(inset)), "inset");
    Scene shallow = new Scene(scene.name(), scene.tank(), scene.floor(), scene.sand(), new Scene.Water(90, 35, 25),
        scene.devices(), scene.lamps(), scene.rocks(), scene.placements(), scene.joints(), scene.settings());
    assertThat(before.next(shallow, placed(shallow)).weights().loads()).isNotEqualTo(before.weights().loads());
    assertSame(before.next(shallow, placed(shallow)), SceneHeap.of(shallow, placed(shallow)), "water");
  }

  /** What is kept for a recall is the heap of the scene asked about, also where nothing of it has changed but the name. */
  @Test
  void aRecallAnswersForTheSceneThatIsAskedAbout() {
    Recall recall = new Recall();
    Scene scene = Family.TOWERS.of(10, 1);
    for (Scene s : List.of(scene, moved(scene, 4, new Vec3(3, 0, 0)), scene.withJoints(List.of()), scene)) {
      assertSame(recall.heap(s, placed(s)), SceneHeap.of(s, placed(s)), "recalled");
    }
  }
}
