package holdfast.engine.contact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Settings;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.RockShapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Generated stones set down on a floor: what must hold of any stone there. */
class StoneContactTest {
  private static final Solid FLOOR = new Solid("floor", Solid.Surface.GRID, true,
      List.of(Bodies.box(new Vec3(-1, -1, -0.02), new Vec3(2, 2, 0.01))));

  private static List<Hull> stone(Rock.Look look, long seed) {
    Rock rock = new Rock("stone", Rock.Kind.DRY, new Rock.Measured(look, 180, 140, 110, seed),
        new Rock.Weighed(0.5, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty());
    return RockShapes.body(rock, Settings.DEFAULT, MeshLoader.NONE).match(b -> b.lobes(), reason -> {
      throw new AssertionError(reason);
    });
  }

  /** Lowered until its lowest corner is on the floor's top. */
  private static Solid onFloor(List<Hull> lobes, Quat turn, double x, double y) {
    List<Hull> turned = lobes.stream().map(h -> h.moved(new Pose(Vec3.ZERO, turn))).toList();
    double low = turned.stream().mapToDouble(h -> -h.reach(Vec3.Z.negated())).min().orElseThrow();
    Pose down = new Pose(new Vec3(x, y, 0.01 - low), Quat.IDENTITY);
    return new Solid("stone", Solid.Surface.ROCK, false, turned.stream().map(h -> h.moved(down)).toList());
  }

  @ParameterizedTest
  @EnumSource(Rock.Look.class)
  void everyStoneHasAFootWhereItTouchesTheFloor(Rock.Look look) {
    for (long seed = 1; seed <= 6; seed++) {
      for (Quat turn : List.of(Quat.IDENTITY, Quat.ofDegreesZyx(33, 0, 0), Quat.ofDegreesZyx(10, 25, -40))) {
        ContactMap map = ContactFinder.find(List.of(onFloor(stone(look, seed), turn, 0.3, 0.4), FLOOR), ContactRules.DEFAULT);
        assertThat(map.contacts()).as("%s seed %d", look, seed).isNotEmpty();
        for (Contact c : map.contacts()) {
          assertThat(c.normal().minus(Vec3.Z).norm()).isLessThan(1e-12);
          assertThat(c.polygon()).hasSizeLessThanOrEqualTo(Tolerances.MAX_CORNERS);
          for (Vec3 p : c.polygon()) assertThat(p.z()).isCloseTo(0.01, within(0.2e-3));
        }
        assertThat(map.fits().get(0).distanceM()).isCloseTo(0, within(1e-12));
      }
    }
  }

  @Test
  void flatBottomedStonesStandOnAFace() {
    for (Rock.Look look : List.of(Rock.Look.BLOCK, Rock.Look.SLAB, Rock.Look.BOX)) {
      Contact c = ContactFinder.find(List.of(onFloor(stone(look, 3), Quat.IDENTITY, 0, 0), FLOOR), ContactRules.DEFAULT)
          .contacts().get(0);
      // Derived: no larger than the stone's box; a flat-bottomed stone stands on a good part of it.
      assertThat(c.areaM2()).as(look.word()).isBetween(0.2 * 0.18 * 0.14, 0.18 * 0.14 + 1e-9);
    }
  }

  @Test
  void theSameHeapGivesTheSameContacts() {
    List<Solid> heap = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      Rock.Look look = Rock.Look.values()[i % Rock.Look.values().length];
      heap.add(onFloor(stone(look, i), Quat.ofDegreesZyx(40 * i, 0, 0), 0.12 * (i % 4), 0.11 * (i / 4)));
    }
    heap.add(FLOOR);
    ContactMap first = ContactFinder.find(heap, ContactRules.DEFAULT);
    assertThat(first.fits(PairFit.Kind.OVERLAPS)).isNotEmpty();
    assertThat(ContactFinder.find(heap, ContactRules.DEFAULT)).isEqualTo(first);
    assertThat(first.contacts()).isSortedAccordingTo((p, q) -> {
      int c = Integer.compare(p.a(), q.a());
      if (c == 0) c = Integer.compare(p.b(), q.b());
      if (c == 0) c = Integer.compare(p.lobeA(), q.lobeA());
      return c == 0 ? Integer.compare(p.lobeB(), q.lobeB()) : c;
    });
  }
}
