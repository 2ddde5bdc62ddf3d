package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.geom.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;

class LooseBlocksReaderTest {
  private static final String CUBE = "[[0, 0, 0], [1, 0, 0], [1, 1, 0], [0, 1, 0], [0, 0, 1], [1, 0, 1], [1, 1, 1], [0, 1, 1]]";
  static final String GOOD = """
      {
        "format": "loose-blocks/1",
        "name": "one on another",
        "friction": 0.65,
        "blocks": [
          { "id": "base", "fixed": true, "density_kg_m3": 1000.0, "vertices_m": CUBE },
          { "id": "top", "fixed": false, "density_kg_m3": 2000, "vertices_m": CUBE }
        ],
        "load": { "kind": "fraction_of_weight", "direction": [0, 3, 4] },
        "source": "constructed",
        "expected": { "stays": true, "anything": [1, { "goes": null }] }
      }
      """.replace("CUBE", CUBE);

  private static String rendered(String text) {
    return LooseBlocksReader.read(text, "blocks.json").match(b -> "read\n", ReadResult.Refused::rendered);
  }

  @Test
  void everyPartIsRead() {
    LooseBlocks heap = LooseBlocksReader.read(GOOD, "blocks.json").match(b -> b, r -> {
      throw new AssertionError(r.rendered());
    });
    assertThat(heap.name()).isEqualTo("one on another");
    assertThat(heap.friction()).isEqualTo(0.65);
    assertThat(heap.blocks()).extracting(LooseBlocks.Block::id).isEqualTo(List.of("base", "top"));
    assertThat(heap.blocks().get(0).fixed()).isTrue();
    assertThat(heap.blocks().get(1).fixed()).isFalse();
    assertThat(heap.blocks().get(1).densityKgM3()).isEqualTo(2000);
    assertThat(heap.blocks().get(1).verticesM()).hasSize(8).contains(new Vec3(1, 1, 1));
    // A direction of 3 and 4 has length 5.
    assertThat(heap.load()).contains(new LooseBlocks.BodyLoad(new Vec3(0, 3, 4).times(1 / 5.0)));
  }

  @Test
  void aLoadMayBeLeftOut() {
    String text = GOOD.replaceAll("(?m)^  \"load\".*\\n", "");
    boolean without = LooseBlocksReader.read(text, "blocks.json").match(b -> b.load().isEmpty(), r -> false);
    assertThat(without).isTrue();
  }

  @Test
  void problemsComeTogetherInTheOrderOfTheFile() {
    String text = GOOD
        .replace("\"friction\": 0.65", "\"friction\": -0.65, \"gravity\": 9.81")
        .replace("\"id\": \"top\"", "\"id\": \"base\"")
        .replace("\"density_kg_m3\": 2000, \"vertices_m\": " + CUBE, "\"density_kg_m3\": NaN")
        .replace("\"fixed\": true", "\"fixed\": 1")
        .replace("[0, 3, 4]", "[0, 0, 0]");
    assertThat(rendered(text)).isEqualTo("""
        blocks.json:4: $.friction: found -0.65; must be from 0 to 100: coefficient of friction of every contact
        blocks.json:4: $.gravity: found a key that is not known in a file of loose blocks; \
        the keys are format, name, friction, blocks, load, source, expected
        blocks.json:6: $.blocks[0].fixed: found 1; must be true or false: does not move
        blocks.json:7: $.blocks[1].vertices_m: found nothing; must be given: points whose convex hull is the block
        blocks.json:7: $.blocks[1].id: found "base"; must be different for every block
        blocks.json:7: $.blocks[1].density_kg_m3: found NaN; must be a number from 0.001 to 100000 kg/m3: the block's density
        blocks.json:9: $.load.direction: found [0, 0, 0]; must point somewhere
        """);
  }

  @Test
  void otherFilesAreToldApart() {
    assertThat(rendered(BrokenScene.GOOD)).isEqualTo(
        "blocks.json:2: $.format: found \"holdfast-scene/1\"; must be \"loose-blocks/1\" (a scene is for 'holdfast check')\n");
    assertThat(rendered("{\"format\": \"loose-blocks/1\", \"friction\": 1, \"blocks\": []}"))
        .isEqualTo("blocks.json:1: $.blocks: found []; must have at least one block\n");
    assertThat(rendered(GOOD.replace("\"fraction_of_weight\"", "\"wind\""))).isEqualTo(
        "blocks.json:9: $.load.kind: found \"wind\"; must be fraction_of_weight: how the load grows\n");
  }
}
