package holdfast.app.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.report.Units;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The footprint on paper measures what the rock does: 72 points to an inch of 25.4 mm (ISO 32000). */
class FootprintTest {
  private static final double POINT_MM = 25.4 / 72;
  private static final double OUTLINE_MM = 0.6;
  private static final double CROP_MM = 0.25;

  /** A straight stroke on the page, millimetres. */
  private record Stroke(double x0, double y0, double x1, double y1, double penMm) {}

  /** Reads the straight strokes of a page. */
  private static final class Strokes extends PDFGraphicsStreamEngine {
    private final List<Stroke> found = new ArrayList<>();
    private final List<double[]> path = new ArrayList<>();

    Strokes(PDPage page) throws IOException {
      super(page);
      processPage(page);
    }

    @Override
    public void moveTo(float x, float y) {
      path.add(new double[] {x * POINT_MM, y * POINT_MM, 0});
    }

    @Override
    public void lineTo(float x, float y) {
      path.add(new double[] {x * POINT_MM, y * POINT_MM, 1});
    }

    @Override
    public void strokePath() {
      double pen = getGraphicsState().getLineWidth() * POINT_MM;
      for (int i = 1; i < path.size(); i++) {
        double[] p = path.get(i - 1);
        double[] q = path.get(i);
        if (q[2] == 1) found.add(new Stroke(p[0], p[1], q[0], q[1], pen));
      }
      path.clear();
    }

    @Override
    public Point2D getCurrentPoint() {
      return path.isEmpty() ? new Point2D.Double() : new Point2D.Double(path.get(path.size() - 1)[0], path.get(path.size() - 1)[1]);
    }

    @Override
    public void endPath() {
      path.clear();
    }

    @Override
    public void fillPath(int rule) {
      path.clear();
    }

    @Override
    public void fillAndStrokePath(int rule) {
      path.clear();
    }

    @Override
    public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {}

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void clip(int rule) {}

    @Override
    public void curveTo(float a, float b, float c, float d, float e, float f) {}

    @Override
    public void closePath() {}

    @Override
    public void shadingFill(COSName name) {}
  }

  private static byte[] sheet(Sheet.Paper paper) {
    Rock slab = new Rock("slab", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 400, 100, 60, 1), new Rock.BulkDensity(1.8), 0,
        false, false, OptionalDouble.empty());
    Tank tank = new Tank(700, 400, 400, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    Scene scene = new Scene("slab", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(350, 35, 25), List.of(), List.of(),
        List.of(slab), List.of(new Placement("slab", new Vec3(350, 200, 10), Quat.IDENTITY, false)), List.of(), Settings.DEFAULT);
    return Sheet.pdf(SheetContent.of(scene, Shapes.of(scene, MeshLoader.NONE), Optional.empty(), (p, c) -> true), paper,
        Units.METRIC, true);
  }

  private static double least(List<Stroke> of, boolean x) {
    return of.stream().mapToDouble(s -> x ? Math.min(s.x0, s.x1) : Math.min(s.y0, s.y1)).min().orElseThrow();
  }

  private static double most(List<Stroke> of, boolean x) {
    return of.stream().mapToDouble(s -> x ? Math.max(s.x0, s.x1) : Math.max(s.y0, s.y1)).max().orElseThrow();
  }

  private static List<Stroke> pen(List<Stroke> all, double mm) {
    return all.stream().filter(s -> Math.abs(s.penMm - mm) < 0.01).toList();
  }

  /**
   * A slab of 400 x 100 mm over two tiles: its outline is that on both, the tiles are as far apart on paper as their crop
   * marks less the overlap say, and the ruler is 100 mm long; all to a twentieth of a millimetre.
   */
  @ParameterizedTest
  @EnumSource(Sheet.Paper.class)
  void outlinesRulerAndCropMarksAreAtFullSize(Sheet.Paper paper) throws IOException {
    try (PDDocument d = Loader.loadPDF(sheet(paper))) {
      List<List<Stroke>> tiles = new ArrayList<>();
      for (int i = 0; i < d.getNumberOfPages(); i++) {
        PDFTextStripper text = new PDFTextStripper();
        text.setStartPage(i + 1);
        text.setEndPage(i + 1);
        if (text.getText(d).contains("Footprint at full size")) tiles.add(new Strokes(d.getPage(i)).found);
      }
      assertThat(tiles).hasSize(2);
      for (List<Stroke> tile : tiles) {
        List<Stroke> outline = pen(tile, OUTLINE_MM);
        assertThat(most(outline, true) - least(outline, true)).isCloseTo(400, within(0.05));
        assertThat(most(outline, false) - least(outline, false)).isCloseTo(100, within(0.05));
        assertThat(pen(tile, 0.3)).anySatisfy(s -> assertThat(Math.abs(s.x1 - s.x0)).isCloseTo(100, within(0.01)));
      }
      List<Stroke> marks = pen(tiles.get(0), CROP_MM).stream().filter(s -> s.x0 == s.x1).toList();
      double tileMm = most(marks, true) - least(marks, true);
      double moved = least(pen(tiles.get(0), OUTLINE_MM), true) - least(pen(tiles.get(1), OUTLINE_MM), true);
      assertThat(moved).isCloseTo(tileMm - 10, within(0.05));
    }
  }

  /** Tiles are left out, but no stretch of an outline with them: every point lies within the crop marks of a printed tile. */
  @ParameterizedTest
  @EnumSource(Sheet.Paper.class)
  void everyOutlineIsOnSomeTile(Sheet.Paper paper) throws IOException {
    try (PDDocument d = Loader.loadPDF(Sheet.pdf(SheetFixture.content(SheetFixture.display()), paper, Units.METRIC, true))) {
      boolean[] seen = null;
      for (int i = 0; i < d.getNumberOfPages(); i++) {
        PDFTextStripper text = new PDFTextStripper();
        text.setStartPage(i + 1);
        text.setEndPage(i + 1);
        if (!text.getText(d).contains("Footprint at full size")) continue;
        List<Stroke> tile = new Strokes(d.getPage(i)).found;
        List<Stroke> marks = pen(tile, CROP_MM);
        List<Stroke> across = marks.stream().filter(s -> s.x0 == s.x1).toList();
        List<Stroke> along = marks.stream().filter(s -> s.y0 == s.y1).toList();
        List<double[]> points = new ArrayList<>();
        for (Stroke s : pen(tile, OUTLINE_MM)) {
          for (int k = 0; k <= 10; k++) {
            points.add(new double[] {s.x0 + 0.1 * k * (s.x1 - s.x0), s.y0 + 0.1 * k * (s.y1 - s.y0)});
          }
        }
        if (seen == null) seen = new boolean[points.size()];
        assertThat(points).hasSize(seen.length);
        for (int k = 0; k < seen.length; k++) {
          double[] p = points.get(k);
          seen[k] |= p[0] >= least(across, true) && p[0] <= most(across, true) && p[1] >= least(along, false)
              && p[1] <= most(along, false);
        }
      }
      assertThat(seen).isNotEmpty().doesNotContain(false);
    }
  }

  /**
   * A block of 120 x 100 mm: turned by 45 degrees it has no more than 100 times the root of two, 141 mm, at its widest,
   * and 16 mm less at the height of a name that stands 8 mm off the middle; the arrow beneath would be moved with the name.
   */
  @Test
  void noNameLiesAcrossAnOutline() throws IOException {
    String name = "a block of rock with a name";
    Rock block = new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 120, 100, 60, 1), new Rock.BulkDensity(1.8), 0,
        false, false, OptionalDouble.empty());
    Scene c = SheetFixture.cube();
    for (double degrees : new double[] {0, 45, 90}) {
      Scene s = new Scene("block", c.tank(), c.floor(), c.sand(), c.water(), List.of(), List.of(), List.of(block),
          List.of(new Placement(name, new Vec3(300, 300, c.floor().topMm()), Quat.ofDegreesZyx(degrees, 0, 0), false)), List.of(),
          c.settings());
      try (PDDocument d = Loader.loadPDF(Sheet.pdf(SheetFixture.content(s), Sheet.Paper.A4, Units.METRIC, true))) {
        PDPage last = d.getPage(d.getNumberOfPages() - 1);
        List<Stroke> outline = pen(new Strokes(last).found, OUTLINE_MM);
        assertThat(outline).isNotEmpty();
        List<double[]> letters = new ArrayList<>();
        PDFTextStripper words = new PDFTextStripper() {
          @Override
          protected void writeString(String text, List<TextPosition> at) {
            if (!text.equals(name)) return;
            double y = last.getMediaBox().getHeight() - at.get(0).getYDirAdj();
            TextPosition end = at.get(at.size() - 1);
            letters.add(new double[] {at.get(0).getXDirAdj() * POINT_MM, y * POINT_MM,
              (end.getXDirAdj() + end.getWidthDirAdj()) * POINT_MM});
          }
        };
        words.setStartPage(d.getNumberOfPages());
        words.setEndPage(d.getNumberOfPages());
        words.getText(d);
        assertThat(letters).singleElement().satisfies(l -> {
          for (Stroke k : outline) {
            assertThat(Line2D.linesIntersect(k.x0, k.y0, k.x1, k.y1, l[0], l[1], l[2], l[1])).as(degrees + " degrees").isFalse();
          }
        });
      }
    }
  }

  /** A number that the tile's edge would cut is left to the neighbour: half of 05-30 reads as something else. */
  @ParameterizedTest
  @EnumSource(Sheet.Paper.class)
  void noCellNumberIsCutByATilesEdge(Sheet.Paper paper) throws IOException {
    int[] numbers = new int[1];
    try (PDDocument d = Loader.loadPDF(Sheet.pdf(SheetFixture.content(SheetFixture.ridge()), paper, Units.METRIC, true))) {
      for (int i = 0; i < d.getNumberOfPages(); i++) {
        PDPage page = d.getPage(i);
        List<Stroke> marks = pen(new Strokes(page).found, CROP_MM);
        List<Stroke> across = marks.stream().filter(s -> s.x0 == s.x1).toList();
        List<Stroke> along = marks.stream().filter(s -> s.y0 == s.y1).toList();
        PDFTextStripper words = new PDFTextStripper() {
          @Override
          protected void writeString(String text, List<TextPosition> at) {
            if (!text.matches("\\d+-\\d+")) return;
            TextPosition end = at.get(at.size() - 1);
            double low = (page.getMediaBox().getHeight() - at.get(0).getYDirAdj()) * POINT_MM;
            numbers[0]++;
            assertThat(at.get(0).getXDirAdj() * POINT_MM).as(text).isGreaterThanOrEqualTo(least(across, true));
            assertThat((end.getXDirAdj() + end.getWidthDirAdj()) * POINT_MM).as(text).isLessThanOrEqualTo(most(across, true));
            assertThat(low).as(text).isGreaterThanOrEqualTo(least(along, false));
            assertThat(low + at.get(0).getHeightDir() * POINT_MM).as(text).isLessThanOrEqualTo(most(along, false));
          }
        };
        words.setStartPage(i + 1);
        words.setEndPage(i + 1);
        if (!marks.isEmpty()) words.getText(d);
      }
    }
    assertThat(numbers[0]).isGreaterThan(20);
  }

  /** What a rock stands on is told by what it is: a pump called like the floor is none. */
  @Test
  void onlyTheFloorItselfHasFeet() {
    Scene c = SheetFixture.cube();
    List<Rock> rocks = Stream.of("on pump", "on floor").map(n -> new Rock(n, Rock.Kind.DRY,
        new Rock.Measured(Rock.Look.BOX, 100, 100, 60, 1), new Rock.BulkDensity(1.8), 0, false, false,
        OptionalDouble.empty())).toList();
    List<Placement> places = List.of(new Placement("on pump", new Vec3(150, 150, 100), Quat.IDENTITY, false),
        new Placement("on floor", new Vec3(400, 400, c.floor().topMm()), Quat.IDENTITY, false));
    Scene s = new Scene("pump", c.tank(), c.floor(), new Scene.Sand(0, 1.5), c.water(),
        List.of(new Scene.Device("floor grid", new Vec3(100, 100, 0), new Vec3(100, 100, 100), 0)), List.of(), rocks, places,
        List.of(), c.settings());
    assertThat(SheetFixture.content(s).feet()).extracting(SheetContent.Foot::rock).containsExactly(1);
  }
}
