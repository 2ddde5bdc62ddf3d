package holdfast.model.scene;

import java.util.Optional;

/**
 * What lies on the bottom pane under the rock.
 *
 * @param kind louvre grid, solid sheet, or nothing
 * @param cellMm pitch of the louvre cells; also the layout's coordinates on any floor
 * @param wallMm thickness of a louvre wall (grid only)
 * @param thicknessMm height of the grid or sheet; 0 when bare
 * @param extent the rectangle that is covered; absent: the whole bottom less {@code marginMm} on each side
 * @param marginMm distance kept from the panes when no extent is given
 */
public record Floor(Kind kind, double cellMm, double wallMm, double thicknessMm, double marginMm, Optional<Extent> extent) {

  public static final Floor DEFAULT = new Floor(Kind.GRID, 12.7, 1.5, 10, 10, Optional.empty());

  /**
   * What a kind of floor does not have is set to nothing, so that equal floors are equal: no wall without a grid, no more
   * than the cell of the layout on a bare bottom.
   */
  public Floor {
    if (kind != Kind.GRID) wallMm = 0;
    if (kind == Kind.BARE) {
      thicknessMm = 0;
      marginMm = 0;
      extent = Optional.empty();
    }
  }

  /** The three floors. */
  public enum Kind {
    GRID("grid"), SHEET("sheet"), BARE("bare");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** A rectangle on the bottom, millimetres from the front-left inner corner. */
  public record Extent(double xMm, double yMm, double lengthMm, double widthMm) {}

  /** Height of the surface that rock stands on, above the inner bottom, millimetres. */
  public double topMm() {
    return kind == Kind.BARE ? 0 : thicknessMm;
  }

  /** The covered rectangle in a given tank. */
  public Extent extentIn(Tank tank) {
    return extent.orElseGet(() -> new Extent(marginMm, marginMm, tank.lengthMm() - 2 * marginMm, tank.widthMm() - 2 * marginMm));
  }
}
