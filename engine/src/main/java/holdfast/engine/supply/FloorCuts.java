package holdfast.engine.supply;

import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The floor panel cut from stock: how the floor is divided by seams, which piece comes from which panel, and what is
 * left over.
 *
 * <p>Seams run straight through from side to side. Along each side the divisions tried are: as many whole panels as
 * fit (by their longer or shorter side, or both) and the rest, and equal parts. Of all divisions the one with the fewest
 * panels is taken, then the fewest pieces, then no piece narrower than {@value #SLIVER_MM} mm, then the fewest cut
 * sides. Louvre has no grain, so pieces may be turned.
 *
 * @param lengthMm floor, left to right
 * @param widthMm floor, front to back
 * @param panelLengthMm stock panel
 * @param panelWidthMm stock panel
 * @param pieces in rows from the front-left
 * @param panels the pieces on each stock panel, as numbers of {@code pieces}
 * @param fewest no plan with straight-through seams of these kinds needs fewer panels
 * @param cutOuts where a device stands through the floor
 */
public record FloorCuts(
    double lengthMm, double widthMm, double panelLengthMm, double panelWidthMm,
    List<Piece> pieces, List<List<OnPanel>> panels, boolean fewest, List<CutOut> cutOuts) {

  /** Narrower than this a strip of louvre breaks and wanders, millimetres (common practice: four cells). */
  static final double SLIVER_MM = 50;

  public FloorCuts {
    pieces = List.copyOf(pieces);
    panels = panels.stream().map(List::copyOf).toList();
    cutOuts = List.copyOf(cutOuts);
  }

  /** A piece of floor: its place from the floor's front-left corner, its size and its whole cells. */
  public record Piece(double xMm, double yMm, double lengthMm, double widthMm, int cellsLong, int cellsWide) {}

  /** A piece on a stock panel; sizes as it lies there, so turned when they are exchanged. */
  public record OnPanel(int piece, double xMm, double yMm, double lengthMm, double widthMm) {}

  /** To be cut out of the floor for a device, measured from the floor's front-left corner. */
  public record CutOut(String device, double xMm, double yMm, double lengthMm, double widthMm) {}

  /** Panel bought and not laid, square metres, cuts included. */
  public double wasteM2() {
    return (panels.size() * panelLengthMm * panelWidthMm - lengthMm * widthMm) * 1e-6;
  }

  /** The plan for a scene; empty for a bare floor, or when no division gives pieces that a panel yields. */
  public static Optional<FloorCuts> of(Scene scene) {
    Floor floor = scene.floor();
    if (floor.kind() == Floor.Kind.BARE) return Optional.empty();
    Floor.Extent e = floor.extentIn(scene.tank());
    double panelLength = scene.settings().get(Setting.PANEL_LENGTH_MM);
    double panelWidth = scene.settings().get(Setting.PANEL_WIDTH_MM);
    double saw = scene.settings().get(Setting.SAW_MM);
    return plan(e.lengthMm(), e.widthMm(), floor.cellMm(), panelLength, panelWidth, saw, cutOuts(scene));
  }

  /** Where devices stand through the floor. */
  static List<CutOut> cutOuts(Scene scene) {
    Floor floor = scene.floor();
    Floor.Extent e = floor.extentIn(scene.tank());
    List<CutOut> cutOuts = new ArrayList<>();
    for (Scene.Device d : scene.devices()) {
      if (d.atMm().z() >= floor.thicknessMm()) continue;
      double x0 = Math.max(d.atMm().x(), e.xMm());
      double y0 = Math.max(d.atMm().y(), e.yMm());
      double x1 = Math.min(d.atMm().x() + d.sizeMm().x(), e.xMm() + e.lengthMm());
      double y1 = Math.min(d.atMm().y() + d.sizeMm().y(), e.yMm() + e.widthMm());
      if (x1 > x0 && y1 > y0) cutOuts.add(new CutOut(d.name(), x0 - e.xMm(), y0 - e.yMm(), x1 - x0, y1 - y0));
    }
    return cutOuts;
  }

  /** The plan for a floor of given size. */
  static Optional<FloorCuts> plan(
      double length, double width, double cell, double panelLength, double panelWidth, double saw, List<CutOut> cutOuts) {
    int least = (int) Math.ceil(length * width / (panelLength * panelWidth) - 1e-9);
    List<FloorCuts> found = new ArrayList<>();
    for (List<Double> columns : divisions(length, panelLength, panelWidth)) {
      for (List<Double> rows : divisions(width, panelLength, panelWidth)) {
        List<double[]> sizes = new ArrayList<>();
        List<Piece> pieces = new ArrayList<>();
        double y = 0;
        for (double row : rows) {
          double x = 0;
          for (double column : columns) {
            sizes.add(new double[] {column, row});
            pieces.add(new Piece(x, y, column, row, (int) Math.floor(column / cell), (int) Math.floor(row / cell)));
            x += column;
          }
          y += row;
        }
        PanelPacking.pack(sizes, panelLength, panelWidth, saw).ifPresent(p -> found.add(new FloorCuts(
            length, width, panelLength, panelWidth, pieces,
            p.panels().stream().map(FloorCuts::onPanel).toList(), p.fewest(), cutOuts)));
      }
    }
    boolean allExact = found.stream().allMatch(FloorCuts::fewest);
    return found.stream()
        .min(Comparator.<FloorCuts>comparingInt(c -> c.panels.size())
            .thenComparingInt(c -> c.pieces.size())
            .thenComparing(FloorCuts::hasSliver)
            .thenComparingInt(FloorCuts::cutSides))
        .map(c -> new FloorCuts(c.lengthMm, c.widthMm, c.panelLengthMm, c.panelWidthMm, c.pieces, c.panels,
            allExact || c.panels.size() <= least, c.cutOuts));
  }

  private static List<OnPanel> onPanel(List<PanelPacking.Spot> spots) {
    return spots.stream().map(s -> new OnPanel(s.piece(), s.xMm(), s.yMm(), s.lengthMm(), s.widthMm())).toList();
  }

  private boolean hasSliver() {
    return pieces.stream().anyMatch(p -> Math.min(p.lengthMm, p.widthMm) < SLIVER_MM);
  }

  /** Sides of pieces that are not a whole side of a stock panel. */
  private int cutSides() {
    int n = 0;
    for (List<OnPanel> panel : panels) {
      for (OnPanel p : panel) {
        if (p.lengthMm != panelLengthMm) n++;
        if (p.widthMm != panelWidthMm) n++;
      }
    }
    return n;
  }

  /** Ways to divide a length into parts no longer than a panel's longer side; the largest parts first. */
  private static List<List<Double>> divisions(double length, double panelLength, double panelWidth) {
    List<List<Double>> out = new ArrayList<>();
    double most = Math.max(panelLength, panelWidth);
    for (int a = 0; a * panelLength <= length; a++) {
      for (int b = 0; a * panelLength + b * panelWidth <= length; b++) {
        double rest = length - a * panelLength - b * panelWidth;
        if (rest > most) continue;
        List<Double> parts = new ArrayList<>();
        for (int i = 0; i < a; i++) parts.add(panelLength);
        for (int i = 0; i < b; i++) parts.add(panelWidth);
        if (rest > 0) parts.add(rest);
        addOnce(out, parts);
      }
    }
    for (double side : new double[] {panelLength, panelWidth}) {
      int n = (int) Math.ceil(length / side - 1e-9);
      List<Double> parts = new ArrayList<>();
      for (int i = 0; i < n; i++) parts.add(length / n);
      addOnce(out, parts);
    }
    return out;
  }

  private static void addOnce(List<List<Double>> out, List<Double> parts) {
    if (!out.contains(parts)) out.add(List.copyOf(parts));
  }
}
