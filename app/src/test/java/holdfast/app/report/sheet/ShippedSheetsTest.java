package holdfast.app.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.report.Units;
import holdfast.engine.build.BuildOrder.Stage;
import holdfast.engine.build.StageJudge;
import holdfast.engine.build.Stander;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sheets of the scenes that come with the program. */
class ShippedSheetsTest {
  private static Path folder() {
    for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
      if (Files.exists(at.resolve("scenes/scene.schema.json"))) return at.resolve("scenes");
    }
    throw new IllegalStateException("no folder 'scenes' above " + Path.of("").toAbsolutePath());
  }

  @ParameterizedTest
  @ValueSource(strings = {"nano", "islands", "cube", "display", "bad"})
  void stagesAreWhatTheStaticsSayAndVolumesAddUp(String name) throws IOException {
    Scene scene = SceneReader.read(folder().resolve(name + ".json")).match(s -> s, refused -> {
      throw new AssertionError(refused.problems().toString());
    });
    Shapes shapes = Shapes.of(scene, MeshLoader.NONE);
    SheetContent c = SheetContent.of(scene, shapes, Optional.empty(), new StageJudge(scene, shapes.placed()), 400);

    Stander again = new StageJudge(scene, shapes.placed());
    Set<Integer> placed = new TreeSet<>();
    Set<Integer> cured = new TreeSet<>();
    Set<Integer> made = new TreeSet<>();
    for (Stage s : c.plan().order().stages()) {
      placed.add(s.rock());
      made.addAll(s.joints());
      assertThat(again.stays(placed, cured)).isEqualTo(s.stands());
      if (s.curedHere()) {
        cured.addAll(made);
        assertThat(again.stays(placed, cured)).isTrue();
      }
    }
    assertThat(placed).hasSize(scene.placements().size());
    // The scene that is meant to fail rests on sand and leans: no order of it stands.
    assertThat(c.plan().order().complete()).isEqualTo(!name.equals("bad"));
    assertThat(c.supply().volumes().residualM3()).isCloseTo(0, within(1e-9 * c.supply().volumes().boxM3()));

    try (PDDocument d = Loader.loadPDF(Sheet.pdf(c, Sheet.Paper.A4, Units.METRIC, true))) {
      String text = new PDFTextStripper().getText(d);
      assertThat(d.getNumberOfPages()).isGreaterThan(8);
      for (SheetContent.RockLine r : c.rocks()) assertThat(text).contains(r.name());
    }
  }
}
