package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.app.view.Pngs;
import holdfast.model.io.SceneFiles;
import java.awt.image.BufferedImage;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One rule for whatever is written: what Holdfast drew is drawn anew, everything else is asked about, a scene is not lost. */
class OutputsTest {
  @TempDir
  Path folder;
  private Path scene;

  @BeforeEach
  void save() throws IOException {
    scene = folder.resolve("small.json");
    SceneFiles.save(scene, Scenes.small());
  }

  private Run run(String command, Path to, String... more) {
    String line = command.replace("SCENE", scene.toString()).replace("FILE", to.toString());
    return Run.holdfast((line + " " + String.join(" ", more)).strip().split(" "));
  }

  private static Path named(Path folder, String command) {
    return folder.resolve("out" + command.replaceFirst(".*FILE", ""));
  }

  private static String typed(String command) {
    return command.replaceFirst("FILE\\..*", "FILE");
  }

  @ParameterizedTest
  @ValueSource(strings = {"sheet SCENE --no-footprint -o FILE.pdf", "picture SCENE --of pane -o FILE.png",
      "bump SCENE --rock block --toward left --impulse 0.1 --frames FILE.json",
      "bump SCENE --rock block --toward left --impulse 0.1 --section FILE.png"})
  void whatIsDrawnIsDrawnAnewAndNothingElseLostUnasked(String command) throws IOException {
    Path to = named(folder, command);
    Run first = run(typed(command), to);
    assertThat(first.err()).isEmpty();
    byte[] drawn = Files.readAllBytes(to);
    assertThat(run(typed(command), to)).as("drawn anew").isEqualTo(first);
    assertThat(Files.readAllBytes(to)).isEqualTo(drawn);
    Files.writeString(to, "mine");
    Run refused = run(typed(command), to);
    assertThat(refused.exit()).isEqualTo(2);
    assertThat(refused.out()).isEmpty();
    assertThat(refused.err()).startsWith("holdfast: " + to + " is already there and ")
        .endsWith(" of holdfast's.\n  Name another file, or add --replace to write over it.\n");
    assertThat(to).hasContent("mine");
    assertThat(run(typed(command), to, "--replace")).isEqualTo(first);
    assertThat(Files.readAllBytes(to)).isEqualTo(drawn);
  }

  @Test
  void aSceneIsNeverLostUnasked() throws IOException {
    String before = Files.readString(scene);
    for (String command : new String[] {"new 60x30x35cm -o FILE", "settle SCENE -o FILE"}) {
      Run refused = run(command, scene);
      assertThat(refused).isEqualTo(new Run(2, "", "holdfast: " + scene + " is already there.\n"
          + "  Name another file, or add --replace to write over it.\n"));
    }
    String frames = "bump SCENE --rock block --toward left --impulse 0.1 --frames FILE";
    assertThat(run(frames, scene, "--replace")).isEqualTo(new Run(2, "",
        "holdfast: " + scene + " is a scene; frames are never written over one.\n"));
    assertThat(scene).hasContent(before);
  }

  /** A photograph and someone else's document are no drawings of ours, though they are sound files of that kind. */
  @Test
  void aPhotographAndAnotherDocumentAreKept() throws IOException {
    Path photo = folder.resolve("photo.png");
    ImageIO.write(new BufferedImage(20, 20, BufferedImage.TYPE_INT_RGB), "png", photo.toFile());
    Path letter = folder.resolve("letter.pdf");
    try (PDDocument d = new PDDocument()) {
      d.addPage(new PDPage());
      d.save(letter.toFile());
    }
    assertThat(run("picture SCENE --of pane -o FILE", photo).err()).contains("photo.png is already there and is no picture");
    assertThat(run("sheet SCENE -o FILE", letter).err()).contains("letter.pdf is already there and is no build sheet");
  }

  @ParameterizedTest
  @ValueSource(strings = {"sheet SCENE -o FILE | -o | .pdf", "picture SCENE -o FILE | -o | .png", "settle SCENE -o FILE | -o | .json",
      "new 60x30x35cm -o FILE | -o | .json", "bump SCENE --weakest --least --frames FILE | --frames | .json",
      "bump SCENE --weakest --least --section FILE | --section | .png"})
  void namesEndAsTheirKindDoes(String line) {
    String[] parts = line.split(" \\| ");
    Path to = folder.resolve("out.txt");
    assertThat(run(parts[0], to)).isEqualTo(new Run(2, "",
        "holdfast: " + parts[1] + " must name a file that ends in " + parts[2] + ", was '" + to + "'.\n"));
    assertThat(to).doesNotExist();
  }

  /** Walks the file as the standard lays it out (PNG, W3C Recommendation, 5.3 and 11.3.3): the word is in, the pixels as they were. */
  @Test
  void aPictureSaysWhatWroteIt() throws IOException {
    BufferedImage image = new BufferedImage(33, 17, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(7);
    for (int y = 0; y < 17; y++) for (int x = 0; x < 33; x++) image.setRGB(x, y, random.nextInt(1 << 24));
    Path file = folder.resolve("a.png");
    Pngs.save(file, image);
    String software = "";
    try (DataInputStream in = new DataInputStream(Files.newInputStream(file))) {
      in.skipBytes(8);
      for (String type = ""; !type.equals("IEND");) {
        int length = in.readInt();
        type = new String(in.readNBytes(4), StandardCharsets.US_ASCII);
        byte[] content = in.readNBytes(length);
        in.readInt();
        String text = new String(content, StandardCharsets.ISO_8859_1);
        if (type.equals("tEXt") && text.startsWith("Software\0")) software = text.substring(9);
      }
    }
    assertThat(software).isEqualTo("holdfast");
    BufferedImage read = ImageIO.read(file.toFile());
    for (int y = 0; y < 17; y++) for (int x = 0; x < 33; x++) {
      assertThat(read.getRGB(x, y) & 0xFFFFFF).isEqualTo(image.getRGB(x, y) & 0xFFFFFF);
    }
  }
}
