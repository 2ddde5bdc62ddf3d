package holdfast.engine.verification;

import holdfast.engine.statics.LooseBlocksSolver.Result;
import holdfast.engine.verification.Row.Grade;
import holdfast.engine.verification.Row.Source;
import holdfast.model.geom.Vec3;
import holdfast.model.io.LooseBlocks;
import java.util.ArrayList;
import java.util.List;

/**
 * Dry walls of blocks 0.4 x 0.175 m, half blocks 0.2 m, friction 0.65 in bed and head joints, on a rigid base, under a
 * sideways body force.
 */
final class WallRows {
  private static final String GROUP = "Walls";
  private static final Source FERRIS = new Source(GROUP,
      "Ferris & Tin-Loi 2001, Int. J. Mech. Sci. 43:209; table repeated in Gilbert, Casapulla & Ahmed 2006, "
          + "Comput. Struct. 84:873", Grade.MEMORY);
  private static final Source RECOMPUTED = new Source(GROUP,
      "fixed point of tangential forces bounded by mu times the last normal force, recomputed", Grade.DERIVED);
  private static final Source OUT = new Source(GROUP, "moments about the base edge: thickness / height", Grade.DERIVED);

  private static final double[] E5 = {.5, 1, 1, 1, 1, .5};
  private static final double[] O5 = {1, 1, 1, 1, 1};
  private static final double[] E4 = {1, 1, 1, 1};
  private static final double[] U4 = {.5, 1, 1, 1, .5};
  private static final double[] WE4 = {1, .5, -1, .5, 1};
  private static final double[] WU4 = {.5, 1, -1, 1, .5};
  private static final double[] WU5 = {1, -1, 1, -1, 1};
  private static final double[] WE5 = {.5, .5, -1, .5, .5, -1, .5, .5};
  static final double[][] WALL_1 = {E5, O5, E5, O5, E5, O5};
  static final double[][] WALL_3 = {E4, U4, E4, WU4, WE4, WU4, WE4, WU4, E4, U4, E4};
  static final double[][] WALL_4 = {E5, O5, E5, WU5, WE5, WU5, WE5, WU5, E5, O5, E5};

  private WallRows() {}

  static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    String cone = "digits of the table, solver tolerance";
    String fixed = "what stays is searched by another method than the table's";
    Result one = Blocks.solve(wall(WALL_1, 0.2, Vec3.X));
    rows.add(FERRIS.figure("wall 1, 33 blocks, associative factor", 0.64286, one.associative().orElse(Double.NaN), 1e-3, cone));
    rows.add(FERRIS.figure("wall 1, non-associative factor", 0.63982, one.nonAssociative().orElse(Double.NaN), 2e-3, fixed));
    Result three = Blocks.solve(wall(WALL_3, 0.2, Vec3.X));
    rows.add(FERRIS.figure("wall 3, 46 blocks with an opening, associative factor", 0.40369,
        three.associative().orElse(Double.NaN), 1e-3, cone));
    rows.add(FERRIS.figure("wall 3, non-associative factor", 0.35582, three.nonAssociative().orElse(Double.NaN), 2e-3, fixed));
    Result four = Blocks.solve(wall(WALL_4, 0.2, Vec3.X));
    rows.add(FERRIS.figure("wall 4, 55 blocks with two openings, associative factor", 0.33195,
        four.associative().orElse(Double.NaN), 1e-3, cone));
    rows.add(RECOMPUTED.figure("wall 4, non-associative factor", 0.263736, four.nonAssociative().orElse(Double.NaN), 2e-3, fixed));
    for (double t : new double[] {0.2, 0.1}) {
      rows.add(OUT.figure("wall 1, " + Math.round(1000 * t) + " mm thick, pushed out of its plane", t / (6 * 0.175),
          Blocks.solve(wall(WALL_1, t, Vec3.Y)).nonAssociative().orElse(Double.NaN), 1e-5, "solver tolerance"));
    }
    return rows;
  }

  /** Courses from the bottom, lengths in blocks, openings negative. */
  static LooseBlocks wall(double[][] courses, double thicknessM, Vec3 push) {
    double length = 0;
    for (double d : courses[0]) length += 0.4 * Math.abs(d);
    Blocks b = new Blocks().box("base", true, 0, length, 0, thicknessM, -0.175, 0);
    int count = 0;
    for (int row = 0; row < courses.length; row++) {
      double x = 0;
      for (double d : courses[row]) {
        double next = x + 0.4 * Math.abs(d);
        if (d > 0) b.box("b" + ++count, false, x, next, 0, thicknessM, 0.175 * row, 0.175 * (row + 1));
        x = next;
      }
    }
    return b.pushed("wall", 0.65, push);
  }
}
