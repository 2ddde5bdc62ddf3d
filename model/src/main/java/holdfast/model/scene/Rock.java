package holdfast.model.scene;

import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One stone as its owner knows it.
 *
 * @param name words, unique in the scene
 * @param kind dry, live or cast
 * @param form its shape
 * @param mass what it weighs and how that is known
 * @param sealedVolumeMl closed voids or foam that water does not enter, millilitres
 * @param slimy the surface is overgrown: friction falls
 * @param removable it is to stay loose so that it can be taken out later
 * @param pricePerKg in the user's own money; absent: the price of its kind in the settings
 */
public record Rock(
    String name, Kind kind, Form form, Mass mass, double sealedVolumeMl,
    boolean slimy, boolean removable, OptionalDouble pricePerKg) {

  /** Where the stone comes from. */
  public enum Kind {
    DRY("dry"), LIVE("live"), CAST("cast");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** What is known of a rock's shape. */
  public sealed interface Form permits Measured, Points, Lobes, Mesh {}

  /**
   * A believable stone generated from three measured lengths; the same seed gives the same stone. Its own origin is the
   * middle of the measured box's bottom face, length along x, width along y.
   */
  public record Measured(Look look, double lengthMm, double widthMm, double heightMm, long seed) implements Form {}

  /** The convex hull of points, millimetres in the rock's own frame. */
  public record Points(List<Vec3> pointsMm) implements Form {
    public Points {
      pointsMm = List.copyOf(pointsMm);
    }
  }

  /** Several convex pieces, each the hull of its points, millimetres in the rock's own frame. */
  public record Lobes(List<List<Vec3>> lobesMm) implements Form {
    public Lobes {
      lobesMm = lobesMm.stream().map(List::copyOf).toList();
    }
  }

  /** A scanned mesh, a file beside the scene; {@code unitMm} is the length of one of its units. */
  public record Mesh(String file, double unitMm) implements Form {}

  /** The look of a generated stone. */
  public enum Look {
    /** Six sides, corners knocked off; broad flat top and bottom. */
    BLOCK("block"),
    /** Low and wide with flat top and bottom and a broken rim. */
    SLAB("slab"),
    /** A rounded cobble with a flat place to rest on. */
    ROUND("round"),
    /** A thin plate, thicker at its root. */
    SHELF("shelf"),
    /** A stem with arms: several lobes. */
    BRANCH("branch"),
    /** Two legs and a span: several lobes. */
    ARCH("arch"),
    /** A wedge that stands on a point or a narrow foot. */
    SPIKE("spike"),
    /** An exact box, for cast pieces and tests. */
    BOX("box");

    private final String word;

    Look(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** How the mass is known. */
  public sealed interface Mass permits Weighed, BulkDensity {}

  /**
   * Put on a scale.
   *
   * @param kg the reading
   * @param state dry, damp or hung under water
   * @param heldWaterKg water held by a damp rock, deducted; absent: the share in the settings
   */
  public record Weighed(double kg, Weighing state, OptionalDouble heldWaterKg) implements Mass {}

  /** Not weighed: mass of dry stone per litre of hull. */
  public record BulkDensity(double kgPerL) implements Mass {}

  /** The state in which a rock was weighed. */
  public enum Weighing {
    DRY("dry"), DAMP("damp"), UNDERWATER("underwater");

    private final String word;

    Weighing(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }
}
