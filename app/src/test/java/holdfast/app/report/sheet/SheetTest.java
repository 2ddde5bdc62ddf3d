package holdfast.app.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.app.report.Units;
import holdfast.engine.bonding.JointDemand;
import holdfast.engine.bonding.JointDemands;
import holdfast.engine.bonding.PieceLift;
import holdfast.engine.build.BuildOrder.Help;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class SheetTest {
  private static String text(byte[] pdf) throws IOException {
    try (PDDocument d = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(d);
    }
  }

  @Test
  void theSameContentGivesTheSameBytes() {
    byte[] one = Sheet.pdf(SheetFixture.content(SheetFixture.cube()), Sheet.Paper.A4, Units.METRIC, true);
    byte[] two = Sheet.pdf(SheetFixture.content(SheetFixture.cube()), Sheet.Paper.A4, Units.METRIC, true);
    assertThat(one).isEqualTo(two);
  }

  @Test
  void holdsEveryRockJointAndBatchAsText() throws IOException {
    SheetContent c = SheetFixture.content(SheetFixture.ridge());
    String text = text(Sheet.pdf(c, Sheet.Paper.A4, Units.METRIC, true));
    for (SheetContent.RockLine r : c.rocks()) {
      assertThat(text).contains(r.name(), r.fromCell() + " to " + r.toCell());
    }
    for (SheetContent.JointLine j : c.joints()) assertThat(text).contains(j.spec().a() + " to " + j.spec().b());
    assertThat(text).contains("NOT CHECKED", "Joint schedule", "Batches of mortar", "Modules", "Shopping list",
        "The days around it",
        "Cautions", "Footprint at full size", "print at 100 %");
    // 221 L and 8.4 kg of salt, as the volumes of the scene give.
    assertThat(text).contains(Math.round(c.supply().volumes().waterM3() * 1e3) + " L");
  }

  /** Pages lie; A4 is 297 by 210 mm (ISO 216), Letter 11 by 8.5 in (ANSI Y14.1): 72 points to an inch. */
  @Test
  void papersHaveTheirSizes() throws IOException {
    SheetContent c = SheetFixture.content(SheetFixture.cube());
    try (PDDocument d = Loader.loadPDF(Sheet.pdf(c, Sheet.Paper.A4, Units.METRIC, false))) {
      for (PDPage p : d.getPages()) {
        assertThat(p.getMediaBox().getWidth()).isCloseTo(841.89f, within(0.01f));
        assertThat(p.getMediaBox().getHeight()).isCloseTo(595.28f, within(0.01f));
      }
    }
    try (PDDocument d = Loader.loadPDF(Sheet.pdf(c, Sheet.Paper.LETTER, Units.US, false))) {
      assertThat(d.getPage(0).getMediaBox().getWidth()).isCloseTo(792f, within(0.01f));
      assertThat(d.getPage(0).getMediaBox().getHeight()).isCloseTo(612f, within(0.01f));
    }
  }

  @Test
  void unitsAreTheReaders() throws IOException {
    String us = text(Sheet.pdf(SheetFixture.content(SheetFixture.cube()), Sheet.Paper.LETTER, Units.US, false));
    // 580 mm inside are 22.835 in, 365.4 sixteenths (25.4 mm to the inch, exact); 16 kg 35.27 lb (NIST SP 811).
    assertThat(us).contains("22 13/16 × 22 13/16 × 22 13/16 in", "35 lb for one person", "lb", "gal", "fl oz");
    assertThat(us).doesNotContain(" kg").doesNotContain(" mm ");
  }

  @Test
  void helpIsMarkedWhereAStageDoesNotStand() throws IOException {
    SheetContent c = SheetFixture.content(SheetFixture.cube());
    assertThat(c.plan().order().complete()).isTrue();
    assertThat(c.plan().order().stages().get(6).help()).isEqualTo(Help.PROP);
    assertThat(text(Sheet.pdf(c, Sheet.Paper.A4, Units.METRIC, false))).contains("Does not stand: prop it for");
  }

  /**
   * Rough figures of the same tanks by other hands (rounded sums, from memory): the cube 170 L and 261 kg, the display
   * 481 L and 749 kg. Two parts in a hundred.
   */
  @Test
  void litresAndWeightsAreWhatRoughSumsSay() {
    SheetContent cube = SheetFixture.content(SheetFixture.cube());
    assertThat(cube.supply().volumes().waterM3() * 1e3).isCloseTo(170, within(3.4));
    assertThat(cube.supply().weights().filledKg()).isCloseTo(261, within(5.2));
    SheetContent display = SheetFixture.content(SheetFixture.display());
    assertThat(display.supply().volumes().waterM3() * 1e3).isCloseTo(481, within(9.6));
    assertThat(display.supply().weights().filledKg()).isCloseTo(749, within(15.0));
  }

  @Test
  void theDisplaysModulesAreTooHeavyAndAreParted() {
    SheetContent c = SheetFixture.content(SheetFixture.display());
    assertThat(c.plan().modules()).hasSize(3);
    assertThat(c.plan().modules().get(0).drainedKg()).isGreaterThan(32);
    assertThat(c.plan().modules().get(0).split().orElseThrow().solves()).isTrue();
    assertThat(c.supply().floor().orElseThrow().panels()).hasSize(2);
    assertThat(c.supply().floor().orElseThrow().cutOuts()).hasSize(1);
  }

  /** What a reader adds up with a pencil: batches as printed, in both units; 28.349523125 g to the ounce (exact). */
  @Test
  void batchesAddUpAsPrinted() {
    List<Double> each = List.of(31.2, 20.8, 93.6);
    assertThat(new Figures(Units.METRIC).gramsTogether(each)).isEqualTo("147 g");
    // 1.1006, 0.7337 and 3.3016 oz, each rounded up to a tenth.
    assertThat(new Figures(Units.US).gramsTogether(each)).isEqualTo("5.4 oz");
    assertThat(each.stream().map(new Figures(Units.METRIC)::grams)).containsExactly("32 g", "21 g", "94 g");
    assertThat(each.stream().map(new Figures(Units.US)::grams)).containsExactly("1.2 oz", "0.8 oz", "3.4 oz");
  }

  @Test
  void massesAreToldAsScalesTellThem() {
    Figures f = new Figures(Units.METRIC);
    assertThat(List.of(f.kg(0.45), f.kg(2.6), f.kg(5), f.kg(31.76), f.kg(100), f.kg(0))).containsExactly(
        "0.45 kg", "2.6 kg", "5 kg", "31.8 kg", "100 kg", "0 kg");
    assertThat(List.of(f.kgToBuy(0.495), f.kgToBuy(4.84), f.kgToBuy(7), f.kgToBuy(120.2))).containsExactly(
        "0.5 kg", "4.9 kg", "7 kg", "121 kg");
    // 0.1 N/mm² are 14.504 psi (NIST SP 811): a strength is not told as 15.
    assertThat(new Figures(Units.US).strength(1e5)).isEqualTo("14.5 psi");
    assertThat(new Figures(Units.METRIC).strength(1e5)).isEqualTo("0.10 N/mm²");
    assertThat(new Figures(Units.US).litres(0.17)).isEqualTo("0.04 gal");
  }

  /** Nothing is said of rock, sand or braces where there are none. */
  @Test
  void anEmptyTankSaysNothingOfRock() throws IOException {
    Scene cube = SheetFixture.cube();
    Scene empty = new Scene("Empty", cube.tank(), cube.floor(), new Scene.Sand(0, 1.5), cube.water(), List.of(), List.of(),
        List.of(), List.of(), List.of(), cube.settings());
    String text = text(Sheet.pdf(SheetFixture.content(empty), Sheet.Paper.A4, Units.METRIC, true));
    assertThat(text).contains("none yet", "Inside of the tank", "Pour onto a plate slowly")
        .doesNotContain("Tallest rock", "Solid of the rock", "Grains of the sand", "braces counted", "Every rock", "every rock",
            "Footprint", "Lifting:", "over the rock");
  }

  /** The L of {@code HandlingFindingsTest}: straight it would take 255 mm, the opening has 150. */
  @Test
  void aPieceThatMustTurnHasItsPosesDrawn() throws IOException {
    SheetContent c = SheetFixture.content(SheetFixture.hook());
    assertThat(c.turning()).singleElement().satisfies(t -> assertThat(t.module()).isZero());
    String text = text(Sheet.pdf(c, Sheet.Paper.A4, Units.METRIC, false)).replaceAll("\\s+", " ");
    assertThat(text).contains("Turning a piece through the opening", "sill + post: from pose to pose",
        "only by turning on the way", "Upright as built and all of it under the opening",
        "sill + post must be turned part way through the opening");
    JsonNode modules = new ObjectMapper().readTree(SheetJson.of(c)).get("modules");
    assertThat(modules.get(0).get("passage").asText()).isEqualTo("stuck");
    assertThat(modules.get(0).get("turning").get("room_mm").asDouble()).isPositive();
    assertThat(modules.get(0).get("turning").get("poses").size()).isEqualTo(c.turning().get(0).way().steps().size());
    assertThat(modules.get(1).has("turning")).isFalse();
    assertThat(text(Sheet.pdf(SheetFixture.content(SheetFixture.display()), Sheet.Paper.A4, Units.METRIC, false)))
        .doesNotContain("Turning a piece");
  }

  @Test
  void jsonSaysTheSame() throws IOException {
    SheetContent c = SheetFixture.content(SheetFixture.ridge());
    JsonNode n = new ObjectMapper().readTree(SheetJson.of(c));
    assertThat(n.get("format").asText()).isEqualTo("holdfast-sheet/1");
    // Nine rocks, one of them living and loose: it is set after filling.
    assertThat(n.get("order").get("stages")).hasSize(8);
    assertThat(n.get("rocks")).hasSize(9);
    JsonNode last = n.get("carrying_in").get("stages").get(n.get("carrying_in").get("stages").size() - 1);
    assertThat(last.get("rocks").get(0).asText()).isEqualTo("purple cap");
    assertThat(last.get("after_filling").asBoolean()).isTrue();
    assertThat(n.get("joints")).hasSize(5);
    assertThat(n.get("supply").get("volumes_l").get("water").asDouble()).isCloseTo(c.supply().volumes().waterM3() * 1e3,
        within(1e-5));
    assertThat(n.get("days").size()).isGreaterThan(10);
    assertThat(SheetJson.of(SheetFixture.content(SheetFixture.ridge()))).isEqualTo(SheetJson.of(c));
  }

  /**
   * Living rock in the plan of the ridge: the crown is fixed on the bench, 5 min to set and 2 for its joint and what comes
   * after it there; the cap lies loose and is set after filling in 5 min (defaults).
   */
  @Test
  void daysTellHowLongLivingRockIsDry() {
    SheetContent c = SheetFixture.content(SheetFixture.ridge());
    List<DaySteps.Step> days = DaySteps.of(c, new Figures(Units.METRIC));
    assertThat(days).filteredOn(s -> s.title().equals("Fix the joints")).singleElement().satisfies(s -> assertThat(s.text())
        .contains("green crown, living rock, is out of the water for "
            + Figures.span(c.plan().batches().livingOutMin()) + " of work"));
    assertThat(c.plan().batches().livingOutMin()).isGreaterThanOrEqualTo(7);
    assertThat(days).filteredOn(s -> s.title().equals("Soak and test")).singleElement().satisfies(s -> assertThat(s.text())
        .contains("What carries living rock (green crown) soaks in salt water"));
    assertThat(days).filteredOn(s -> s.title().equals("Living rock")).singleElement().satisfies(s -> assertThat(s.text())
        .contains("set purple cap", "at most 5 min"));
    assertThat(days).extracting(DaySteps.Step::title).containsSubsequence("Level and leak test", "Floor panel", "Dry fit",
        "Check again", "Photographs and marks", "Fix the joints", "Soak and test", "Place the rock", "Sand", "Mix the water",
        "Fill", "Waterline", "Living rock", "The first days", "Cycle");
  }

  /** What each joint is asked for stands on the sheet and in the JSON, with its strength, its factor and how to lift. */
  @Test
  void jointsTellWhatTheyAreAskedFor() throws IOException {
    JointDemand.Demand push = new JointDemand.Demand("a push on crown, filled", 0, 8, 20, 1.2, 0.4, 0.44);
    JointDemand.Demand lift = new JointDemand.Demand("lifted by tall chunk", 74, 0, 0.2, 6.7, 0, 1.27);
    JointDemand.Offer offer = new JointDemand.Offer(900, 900, 8.7, 19.5, 1e5, 1e5);
    Scene scene = SheetFixture.ridge();
    SheetContent c = SheetContent.of(scene, Shapes.of(scene, MeshLoader.NONE), Optional.empty(), SheetFixture.stander(scene),
        (plan, pieces) -> new JointDemands.Result(
            List.of(new JointDemand(0, scene.joints().get(0), 1, 0.009, offer, Optional.of(push), Optional.of(lift))),
            List.of(new PieceLift(0, 0, 0.02, 0), new PieceLift(0, 5, 1.27, 0))));
    String metric = text(Sheet.pdf(c, Sheet.Paper.A4, Units.METRIC, false));
    assertThat(metric).contains("What the joints are asked for", "in place: a push on crown, filled", "8.0 N press", "20.0 N",
        "1.20 N m", "44 %", "in the hands: lifted by tall chunk", "74.0 N pull", "127 % !", "900.0 N pull",
        "mortar 0.10 N/mm² (design strength: 0.3 N/mm² with a factor of 3; memory)",
        "hold it by broad slab, never by tall chunk (joint 1 would need 127 % of its strength)");
    // 74 N are 16.64 lbf, 6.7 N m are 59.3 in lbf (NIST SP 811).
    assertThat(text(Sheet.pdf(c, Sheet.Paper.LETTER, Units.US, false))).contains("16.64 lbf pull", "59.3 in lbf");
    JsonNode n = new ObjectMapper().readTree(SheetJson.of(c));
    assertThat(n.get("joint_demands").get(0).get("in_the_hands").get("moment_nm").asDouble()).isEqualTo(6.7);
    assertThat(n.get("lifts").get(1).get("holds").asBoolean()).isFalse();
  }

  /**
   * A floor of 730 x 560 mm from panels of 600 x 600: beside a piece as long as a panel the second has the 130 mm that are
   * left (derived), too narrow in the drawing for its size to stand on it.
   */
  @Test
  void everyPieceOfTheFloorHasItsSize() throws IOException {
    Scene s = SheetFixture.cube();
    Tank t = s.tank();
    Tank longer = new Tank(750, t.widthMm(), t.heightMm(), t.sideGlassMm(), t.bottomGlassMm(), t.bottomSupport(), false, false,
        List.of(), t.viewedFrom(), List.of());
    Scene wide = new Scene("wide", longer, s.floor(), s.sand(), s.water(), s.devices(), s.lamps(), s.rocks(), s.placements(),
        s.joints(), s.settings());
    String text = text(Sheet.pdf(SheetFixture.content(wide), Sheet.Paper.A4, Units.METRIC, false)).replaceAll("\\s+", " ");
    assertThat(text).contains("560 × 600 mm", "Too narrow to write on: piece 2 130 × 560 mm.");
  }

  /** A name that the font cannot draw does not stop the sheet. */
  @Test
  void strangeNamesAreDrawnAsFarAsTheyGo() throws IOException {
    Scene s = SheetFixture.cube();
    Scene renamed = new Scene("珊瑚 \u0007 ø", s.tank(), s.floor(), s.sand(), s.water(), s.devices(), s.lamps(), s.rocks(),
        s.placements(),
        s.joints(), s.settings());
    assertThat(text(Sheet.pdf(SheetFixture.content(renamed), Sheet.Paper.A4, Units.METRIC, false))).contains("ø");
  }

  @Test
  void anEmptyTankHasASheetToo() throws IOException {
    Scene s = SheetFixture.cube();
    Scene bare = new Scene("empty", s.tank(), s.floor(), s.sand(), s.water(), s.devices(), s.lamps(), List.of(), List.of(),
        List.of(), s.settings());
    assertThat(text(Sheet.pdf(SheetFixture.content(bare), Sheet.Paper.A4, Units.METRIC, true))).contains("empty",
        "Level and leak test");
  }
}
