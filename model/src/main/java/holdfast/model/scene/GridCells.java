package holdfast.model.scene;

import java.util.Locale;

/**
 * The cells of the floor by which people name places: column-row, counted from the front-left corner of the floor panel
 * and from one, as in {@code 12-04}. A bare bottom has the same cells, counted from where a panel would lie.
 *
 * @param xMm left edge of the first column, millimetres from the inner front-left corner
 * @param yMm front edge of the first row
 * @param cellMm pitch
 * @param columns cells from left to right, the last one whole or cut
 * @param rows cells from front to back
 */
public record GridCells(double xMm, double yMm, double cellMm, int columns, int rows) {
  /** The cells of a scene. */
  public static GridCells of(Scene scene) {
    Floor.Extent e = scene.floor().extentIn(scene.tank());
    double cell = scene.floor().cellMm();
    return new GridCells(e.xMm(), e.yMm(), cell,
        (int) Math.ceil(e.lengthMm() / cell - 1e-9), (int) Math.ceil(e.widthMm() / cell - 1e-9));
  }

  /** The column of a place, from 1; places off the panel get the nearest. */
  public int column(double placeXMm) {
    return clamp((int) Math.floor((placeXMm - xMm) / cellMm) + 1, columns);
  }

  /** The row of a place, from 1. */
  public int row(double placeYMm) {
    return clamp((int) Math.floor((placeYMm - yMm) / cellMm) + 1, rows);
  }

  /** The name of the cell at a place. */
  public String name(double placeXMm, double placeYMm) {
    return format(column(placeXMm), row(placeYMm));
  }

  /** The name of a cell by its numbers. */
  public static String format(int column, int row) {
    return String.format(Locale.ROOT, "%02d-%02d", column, row);
  }

  private static int clamp(int v, int most) {
    return Math.max(1, Math.min(most, v));
  }
}
