package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank.BottomSupport;
import org.junit.jupiter.api.Test;

class TankSizesTest {
  @Test
  void aSizeOfEitherUnitIsFoundByItsName() {
    // Inner = outer less twice the glass, height less the bottom; 8 mm glass where 5 mm would leave it higher
    // than a foot (builders' table, common practice).
    assertThat(TankSizes.named("60x30x35 cm")).contains(new TankSize("60x30x35 cm", 584, 284, 342, 8, BottomSupport.UNKNOWN));
    assertThat(TankSizes.named("60 × 30 X 35")).isEqualTo(TankSizes.named("60x30x35 cm"));
    // 48 x 24 x 24 inches are 1219.2 x 609.6 x 609.6 mm; larger than every row of the table: 12 mm.
    assertThat(TankSizes.named("48x24x24in")).contains(new TankSize("48x24x24 in", 1195.2, 585.6, 597.6, 12,
        BottomSupport.EDGES));
    assertThat(TankSizes.named("7x7x7 cm")).isEmpty();
    assertThat(TankSizes.nearest("60x30x36 cm")).contains("60x30x30 cm");
  }

  @Test
  void everySizeMakesAValidEmptyScene() {
    assertThat(TankSizes.all()).hasSizeGreaterThan(20).allSatisfy(size -> {
      Scene scene = NewScene.of(size);
      String text = SceneWriter.write(scene);
      assertThat(RoundTripTest.scene(text)).isEqualTo(scene);
      assertThat(size.litres()).isPositive();
    });
  }

  @Test
  void aNewSceneReadsWell() {
    assertThat(SceneWriter.write(NewScene.of(TankSizes.named("30x30x30 cm").orElseThrow()))).isEqualTo("""
        {
          "format": "holdfast-scene/1",
          "name": "tank 30x30x30 cm",
          "tank": { "length_mm": 290, "width_mm": 290, "height_mm": 295, "side_glass_mm": 5, "bottom_glass_mm": 5 },
          "water": { "level_mm": 270 },
          "rocks": [],
          "placements": []
        }
        """);
  }
}
