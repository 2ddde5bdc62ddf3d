package holdfast.app.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.report.Units;
import holdfast.engine.build.BuildOrder.Stage;
import holdfast.engine.build.BuildPlan;
import holdfast.engine.build.StageJudge;
import holdfast.engine.build.Stander;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
  @ValueSource(strings = {"nano", "islands", "cube", "peninsula", "display", "bad"})
  void stagesAreWhatTheStaticsSayAndVolumesAddUp(String name) throws IOException {
    Scene scene = SceneReader.read(folder().resolve(name + ".json")).match(s -> s, refused -> {
      throw new AssertionError(refused.problems().toString());
    });
    Shapes shapes = Shapes.of(scene, MeshLoader.NONE);
    SheetContent c = SheetContent.of(scene, shapes, Optional.empty(), new StageJudge(scene, shapes.placed()));

    Stander again = new StageJudge(scene, shapes.placed());
    Set<Integer> placed = new TreeSet<>();
    Set<Integer> cured = new TreeSet<>();
    Set<Integer> made = new TreeSet<>();
    for (int i = 0; i < c.plan().order().stages().size(); i++) {
      Stage s = c.plan().order().stages().get(i);
      placed.add(s.rock());
      made.addAll(s.joints());
      Stander now = placed.stream().anyMatch(c.plan().onSand()::contains) ? again.withSand() : again;
      if (c.plan().carry().isEmpty() && i >= c.plan().wetFrom()) now = now.filled();
      assertThat(now.stays(placed, cured)).isEqualTo(s.stands());
      if (s.curedHere()) {
        cured.addAll(made);
        assertThat(now.stays(placed, cured)).isTrue();
      }
    }
    // What is not stacked on the bench is living rock that is set after filling.
    assertThat(c.rocks()).hasSize(scene.placements().size());
    for (SheetContent.RockLine r : c.rocks()) {
      assertThat(placed.contains(r.rock())).as(r.name()).isEqualTo(r.stage() > 0);
      if (r.stage() == 0) assertThat(r.carrying() - 1).isGreaterThanOrEqualTo(c.plan().wetFrom());
    }
    c.plan().carry().ifPresent(carry -> carriedIn(c, carry, again));
    // The scene that is meant to fail rests on sand: it can be stacked once that is laid, what it bears is another matter.
    assertThat(c.plan().order().complete()).isTrue();
    assertThat(c.plan().sandBefore()).isEqualTo(name.equals("bad") ? 0 : -1);
    assertThat(c.supply().volumes().residualM3()).isCloseTo(0, within(1e-9 * c.supply().volumes().boxM3()));

    // Mortar kills what lives by it: the scenes that are meant to be followed join living rock in the tank, after filling.
    if (!name.equals("bad")) {
      assertThat(c.plan().batches().livingOutMin()).isZero();
      assertThat(c.plan().wetFrom()).isLessThan(c.plan().tankOrder().stages().size());
    }
    try (PDDocument d = Loader.loadPDF(Sheet.pdf(c, Sheet.Paper.A4, Units.METRIC, true))) {
      String text = new PDFTextStripper().getText(d);
      assertThat(d.getNumberOfPages()).isGreaterThan(8);
      for (SheetContent.RockLine r : c.rocks()) assertThat(text).contains(r.name());
      assertThat(Letters.covered(d)).isEmpty();
    }
    try (PDDocument d = Loader.loadPDF(Sheet.pdf(c, Sheet.Paper.LETTER, Units.US, true))) {
      assertThat(Letters.covered(d)).isEmpty();
    }
  }

  /** Piece by piece, the joints of the bench set: asked again rock by rock. */
  private static void carriedIn(SheetContent c, BuildPlan.Carry carry, Stander again) {
    Set<Integer> placed = new TreeSet<>();
    Set<Integer> cured = new TreeSet<>();
    List<JointSpec> joints = c.scene().joints();
    for (int j = 0; j < joints.size(); j++) {
      if (joints.get(j).bonded() && joints.get(j).madeIn() == JointSpec.MadeIn.BENCH) cured.add(j);
    }
    Set<Integer> made = new TreeSet<>(cured);
    for (int i = 0; i < carry.order().stages().size(); i++) {
      Stage s = carry.order().stages().get(i);
      placed.addAll(c.plan().rocksOf(s.rock()));
      made.addAll(s.joints());
      Stander now = placed.stream().anyMatch(c.plan().onSand()::contains) ? again.withSand() : again;
      if (i >= c.plan().wetFrom()) now = now.filled();
      assertThat(now.stays(placed, cured)).isEqualTo(s.stands());
      if (s.curedHere()) cured = new TreeSet<>(made);
    }
    assertThat(placed).hasSize(c.plan().rocks().size());
    assertThat(carry.order().complete()).isTrue();
  }
}
