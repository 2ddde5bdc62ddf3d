package holdfast.engine.gap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class DeadWaterTest {
  private static Hull box(double x, double y, double z, double lx, double ly, double lz) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) p.add(new Vec3(x + (i & 1) * lx, y + (i >> 1 & 1) * ly, z + (i >> 2) * lz));
    return HullBuilder.build(p).match(h -> h, why -> {
      throw new AssertionError(why);
    });
  }

  /** A chest 140 mm outside, 100 mm inside, whose lid leaves a slot of given width along one side. */
  private static List<DeadWater.Pocket> chest(double slotM) {
    List<Hull> walls = List.of(
        box(0.1, 0.1, 0.1, 0.14, 0.14, 0.02), box(0.1, 0.1, 0.1, 0.02, 0.14, 0.12), box(0.22, 0.1, 0.1, 0.02, 0.14, 0.12),
        box(0.1, 0.1, 0.1, 0.14, 0.02, 0.12), box(0.1, 0.22, 0.1, 0.14, 0.02, 0.12));
    Hull lid = box(0.1 + 0.02 + slotM, 0.1, 0.22, 0.14 - 0.02 - slotM, 0.14, 0.02);
    return DeadWater.find(0.4, 0.35, 0.01, 0.4, 0.02, List.of("walls", "lid"), List.of(walls, List.of(lid)));
  }

  /**
   * Shut but for a slot of 10 mm, a ball of 20 mm is caught. What it sweeps in a cube of 100 mm: the cube of its centres,
   * a = 80 mm, thickened by r = 10 mm, a3 + 6 a2 r + 3 pi a r2 + 4/3 pi r3 = 975.6 ml (Steiner's formula, exact).
   */
  @Test
  void aShutChestIsAPocket() {
    List<DeadWater.Pocket> pockets = chest(0.010);
    assertThat(pockets).hasSize(1);
    assertThat(pockets.get(0).volumeM3()).isCloseTo(975.6e-6, within(0.12 * 975.6e-6));
    assertThat(pockets.get(0).centre().distanceTo(new Vec3(0.17, 0.17, 0.17))).isLessThan(0.008);
    assertThat(pockets.get(0).rocks()).containsExactly("walls", "lid");
    // Its cells fill that volume, each once, inside the chest.
    DeadWater.Pocket p = pockets.get(0);
    assertThat(p.cells()).doesNotHaveDuplicates();
    assertThat(p.cells().size() * Math.pow(p.cellM(), 3)).isCloseTo(p.volumeM3(), within(1e-12));
    assertThat(p.cells()).allMatch(c -> c.x() > 0.12 && c.x() < 0.22 && c.y() > 0.12 && c.y() < 0.22 && c.z() > 0.12 && c.z() < 0.22);
  }

  @Test
  void throughAWideSlotTheWaterIsAlive() {
    assertThat(chest(0.030)).isEmpty();
  }

  /** The chest with its open mouth to a pane: 10 mm from the glass it is shut, 30 mm from it the water is alive. */
  @Test
  void aPaneShutsAChestToo() {
    for (double gap : new double[] {0.010, 0.030}) {
      double x = gap;
      List<Hull> walls = List.of(
          box(x, 0.1, 0.1, 0.12, 0.14, 0.02), box(x + 0.1, 0.1, 0.1, 0.02, 0.14, 0.14), box(x, 0.1, 0.22, 0.12, 0.14, 0.02),
          box(x, 0.1, 0.1, 0.12, 0.02, 0.14), box(x, 0.22, 0.1, 0.12, 0.02, 0.14));
      List<DeadWater.Pocket> pockets = DeadWater.find(0.4, 0.35, 0.01, 0.4, 0.02, List.of("chest"), List.of(walls));
      assertThat(pockets).as("%s m from the glass", gap).hasSize(gap < 0.02 ? 1 : 0);
    }
  }

  @Test
  void anOpenTankHasNone() {
    assertThat(DeadWater.find(0.4, 0.3, 0, 0.3, 0.02, List.of("stone"), List.of(List.of(box(0.1, 0.1, 0, 0.1, 0.1,
        0.1))))).isEmpty();
    assertThat(DeadWater.find(0.4, 0.3, 0.3, 0.3, 0.02, List.of(), List.of())).isEmpty();
  }

  /** A slab over the whole tank, 10 mm off every pane, shuts off all beneath it. */
  @Test
  void aLidOverTheTankShutsItOff() {
    List<DeadWater.Pocket> pockets = DeadWater.find(
        0.4, 0.3, 0, 0.3, 0.02, List.of("lid"), List.of(List.of(box(0.01, 0.01, 0.15, 0.38, 0.28, 0.03))));
    assertThat(pockets).hasSize(1);
    assertThat(pockets.get(0).volumeM3()).isCloseTo(0.4 * 0.3 * 0.15, within(0.08 * 0.018));
    assertThat(pockets.get(0).rocks()).containsExactly("lid");
  }
}
