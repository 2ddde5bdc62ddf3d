package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneWriter;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SheetCommandTest {
  @TempDir
  private Path folder;

  /** One broad block on the floor: nothing to topple. */
  private Path scene() throws IOException {
    return scene("broad block");
  }

  private Path scene(String name) throws IOException {
    Tank tank = new Tank(600, 400, 450, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    Rock block = new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 250, 200, 100, 1),
        new Rock.Weighed(9, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty());
    Scene s = new Scene("one block", tank, Floor.DEFAULT, new Scene.Sand(30, 1.5), new Scene.Water(425, 35, 25), List.of(),
        List.of(),
        List.of(block), List.of(new Placement(name, new Vec3(300, 200, 10), Quat.IDENTITY, false)), List.of(),
            Settings.DEFAULT);
    Path file = folder.resolve("block.json");
    Files.writeString(file, SceneWriter.write(s));
    return file;
  }

  @Test
  void writesASheetAndSaysTheVerdict() throws IOException {
    Path out = folder.resolve("block.pdf");
    Run r = Run.holdfast("sheet", scene().toString(), "-o", out.toString());
    assertThat(r.err()).isEmpty();
    assertThat(r.exit()).isLessThan(2);
    assertThat(r.out()).startsWith("Wrote " + out);
    byte[] pdf = Files.readAllBytes(out);
    assertThat(new String(pdf, 0, 5, StandardCharsets.ISO_8859_1)).isEqualTo("%PDF-");
    Run again = Run.holdfast("sheet", scene().toString(), "-o", out.toString());
    assertThat(again).isEqualTo(r);
    assertThat(Files.readAllBytes(out)).isEqualTo(pdf);
    assertThat(folder.toFile().list()).containsExactlyInAnyOrder("block.json", "block.pdf");
  }

  @Test
  void aNameThatCannotBePrintedIsTold() throws IOException {
    Run r = Run.holdfast("sheet", scene("岩").toString(), "-o", folder.resolve("stone.pdf").toString());
    assertThat(r.err()).isEqualTo("holdfast: Names with letters that this sheet cannot print: rock 1 is called by its number in"
        + " the scene.\n");
    assertThat(r.exit()).isLessThan(2);
    assertThat(Run.holdfast("sheet", scene("岩").toString(), "--format", "json").err()).isEmpty();
  }

  @Test
  void jsonNeedsNoFile() throws IOException {
    Run r = Run.holdfast("sheet", scene().toString(), "--format", "json");
    JsonNode n = new ObjectMapper().readTree(r.out());
    assertThat(n.get("checked").asBoolean()).isTrue();
    assertThat(n.get("order").get("unaided").asBoolean()).isTrue();
    assertThat(n.get("rocks").get(0).get("rock").asText()).isEqualTo("broad block");
  }

  @Test
  void slipsAreMetCalmly() throws IOException {
    String scene = scene().toString();
    assertThat(Run.holdfast("sheet", scene)).isEqualTo(new Run(2, "", "holdfast: name the file to write with -o FILE.pdf.\n"));
    assertThat(Run.holdfast("sheet", scene, "-o",
        "sheet.png").err()).contains("must name a file that ends in .pdf, was 'sheet.png'");
    assertThat(Run.holdfast("sheet", scene, "-o", "x.pdf", "--paper",
        "a5").err()).contains("--paper must be a4 or letter, was 'a5'");
  }
}
