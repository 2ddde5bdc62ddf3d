package holdfast.app.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.Units;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class PaperNamesTest {
  /** Letters of ISO 8859-1, as if the font had no others. */
  private static final IntPredicate LATIN = c -> c >= ' ' && c <= 0xff && !Character.isISOControl(c);

  /** Blocks in a row, each fixed to the one before. */
  private static Scene scene(String title, String... names) {
    List<Rock> rocks = new ArrayList<>();
    List<Placement> places = new ArrayList<>();
    List<JointSpec> joints = new ArrayList<>();
    for (String n : names) {
      if (!rocks.isEmpty()) joints.add(JointSpec.paste(rocks.get(rocks.size() - 1).name(), n, JointSpec.Bond.MORTAR, 40));
      places.add(new Placement(n, new Vec3(100 + 151 * rocks.size(), 200, 10), Quat.IDENTITY, false));
      rocks.add(new Rock(n, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 150, 150, 100, 1),
          new Rock.Weighed(3, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty()));
    }
    Tank tank = new Tank(1200, 400, 450, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    return new Scene(title, tank, Floor.DEFAULT, new Scene.Sand(30, 1.5), new Scene.Water(425, 35, 25), List.of(), List.of(),
        rocks, places, joints, Settings.DEFAULT);
  }

  private static List<String> called(String... names) {
    PaperNames of = PaperNames.of(scene("plain", names), LATIN);
    return List.of(names).stream().map(of::written).toList();
  }

  @Test
  void whatCanBeWrittenStays() {
    PaperNames of = PaperNames.of(scene("plain", "left leg", "Fels ø"), LATIN);
    assertThat(of).isEqualTo(PaperNames.AS_THEY_ARE);
  }

  /** Decompositions of the Unicode Character Database (published): U+0142 has none, U+0159 is r and a caron, U+FF41 is a. */
  @Test
  void lettersWithAPlainFormAreWrittenPlainly() {
    assertThat(called("t\u0159i", "\uff41rch", "cafe\u0301", "big \ud83e\udea8", "zero\u200bwidth", "\u0142uk"))
        .containsExactly("tri", "arch", "café", "big", "zerowidth", "rock 6");
  }

  @Test
  void otherNamesGiveWayToTheNumberInTheScene() {
    assertThat(called("foot", "岩石", "صخرة", "\ud83e\udea8")).containsExactly("foot", "rock 2", "rock 3", "rock 4");
  }

  @Test
  void noTwoAreCalledAlike() {
    // Both would be plain "tri"; the third would be the name of the fourth; the fifth's number is the name of the sixth.
    assertThat(called("t\u0159i", "t\u0155i", "\uff41rch", "arch", "岩", "rock 5"))
        .containsExactly("rock 1", "rock 2", "rock 3", "arch", "(rock 5)", "rock 5");
  }

  @Test
  void aNameInsideAnotherIsNotTakenForIt() {
    PaperNames of = PaperNames.of(scene("岩の海", "岩", "岩岩"), LATIN);
    assertThat(of.written("岩岩 leans on 岩")).isEqualTo("rock 2 leans on rock 1");
    assertThat(of.written("岩の海")).isEqualTo("Build sheet");
  }

  /** On every page, and told on the first. */
  @Test
  void theSheetCallsThemSoEverywhereAndSaysSo() throws IOException {
    SheetContent c = SheetFixture.content(scene("two of them", "岩石", "珊瑚", "left \ud83e\udea8", "crown"));
    byte[] pdf = Sheet.pdf(c, Sheet.Paper.A4, Units.METRIC, true);
    try (PDDocument d = Loader.loadPDF(pdf)) {
      PDFTextStripper all = new PDFTextStripper();
      // No sentence of the sheet asks a question.
      assertThat(all.getText(d)).doesNotContain("?").contains("rock 1 to rock 2", "left to crown");
      for (int page = 1; page <= d.getNumberOfPages(); page++) {
        PDFTextStripper one = new PDFTextStripper();
        one.setStartPage(page);
        one.setEndPage(page);
        String remark = "rock 1, rock 2 are called by their numbers in the scene; rock 3 is called “left”.";
        assertThat(one.getText(d).contains(remark)).as("page " + page).isEqualTo(page == 1);
      }
    }
    assertThat(Sheet.calledOtherwise(c)).hasValueSatisfying(r -> assertThat(r).contains("rock 1, rock 2"));
    assertThat(Sheet.calledOtherwise(SheetFixture.content(SheetFixture.cube()))).isEmpty();
  }
}
