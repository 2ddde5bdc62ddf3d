package holdfast.engine.verification;

import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.Solid;
import holdfast.engine.statics.LooseBlocksSolver.Answer;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.HeapAssembly;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.engine.statics.rest.Resting;
import holdfast.engine.verification.Row.Grade;
import holdfast.engine.verification.Row.Source;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Vec3;
import holdfast.model.io.LooseBlocks;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Single blocks and stacks: tipping, sliding, overhang. */
final class StackRows {
  private static final Source TIP = new Source("One block",
      "moments about the edge: tips at W b / (2 y), slides at mu W; on a slope tips at tan = b / h, slides at tan = mu",
      Grade.DERIVED);
  private static final Source CUBES = new Source("Stacks", "symmetry: a quarter of the weight at each corner", Grade.DERIVED);
  private static final Source OFF = new Source("Stacks", "the centre of mass lies beyond the edge", Grade.DERIVED);
  private static final Source OVERHANG = new Source("Stacks",
      "Paterson & Zwick 2009, Amer. Math. Monthly 116:19: greatest overhang 3/4 of a block for two, 1 for three", Grade.PUBLISHED);
  private static final Source TILT = new Source("Stacks", "two cubes as one tip at atan(1/2) = 26.565 degrees", Grade.DERIVED);
  private static final double G = 9.81;

  private StackRows() {}

  static List<Row> rows() {
    List<Row> rows = new ArrayList<>(oneBlock());
    rows.add(cornerForces());
    Blocks off = new Blocks().box("base", true, -0.5, 0.5, -0.5, 0.5, -0.5, 0.5)
        .box("cube", false, 0.25, 1.25, -0.5, 0.5, 0.5, 1.5);
    rows.add(OFF.verdict("cube set 3/4 of its edge to the side", "balance no, stays no", Blocks.words(off.heap("off", 0.84))));
    for (int n = 2; n <= 3; n++) {
      rows.add(OVERHANG.verdict(n + " blocks 1 m long, 1 mm short of the limit", "balance yes, stays yes",
          Blocks.words(overhang(n, -0.001))));
      rows.add(OVERHANG.verdict(n + " blocks 1 m long, 1 mm past the limit", "balance no, stays no",
          Blocks.words(overhang(n, 0.001))));
      int count = n;
      double limit = Blocks.turning(-0.01, 0.01, 1e-6, d -> Blocks.solve(overhang(count, d)).stays() == Answer.YES);
      rows.add(OVERHANG.figure(n + " blocks, greatest overhang, block lengths", n == 2 ? 0.75 : 1, (n == 2 ? 0.75 : 1) + limit,
          1e-5, "solver tolerance"));
    }
    for (int degrees : new int[] {20, 26, 27}) {
      String want = degrees < 27 ? "balance yes, stays yes" : "balance no, stays no";
      rows.add(TILT.verdict("two cubes on a cube tilted " + degrees + " degrees", want, Blocks.words(tilted(degrees))));
    }
    double limit = Blocks.turning(20, 30, 1e-5, d -> Blocks.solve(tilted(d)).stays() == Answer.YES);
    rows.add(TILT.figure("two cubes on a cube, tipping angle, degrees", Math.toDegrees(Math.atan(0.5)), limit, 1e-3,
        "patches reach out to the contact tolerance"));
    return rows;
  }

  private static List<Row> oneBlock() {
    List<Row> rows = new ArrayList<>();
    double b = 0.1;
    double h = 0.2;
    double w = b * b * h * Blocks.DENSITY * G;
    for (int degrees : new int[] {0, 90, 180, 270}) {
      rows.add(TIP.figure("box 100 x 100 x 200 mm, 2 kg/L, friction 0.6, pushed at 0.9 h from " + degrees + " degrees, N",
          2 * w * b / (2 * 0.9 * h), pushedBox(b, h, 2 * w, 0.6, degrees), 1e-6, "solver tolerance"));
    }
    rows.add(TIP.figure("the same from 45 degrees, about its corner, N", 2 * w * b * Math.sqrt(2) / (2 * 0.9 * h),
        pushedBox(b, h, 2 * w, 0.6, 45), 1e-6, "solver tolerance"));
    rows.add(TIP.figure("the same, friction 0.2, slides, N", 0.2 * 2 * w, pushedBox(b, h, 2 * w, 0.2, 30), 1e-6, "solver tolerance"));
    Blocks one = new Blocks().box("floor", true, -1, 1, -1, 1, -0.1, 0).box("block", false, 0, b, 0, b, 0, h);
    rows.add(TIP.figure("block 1 : 2, sideways body force, friction 0.6, tips at, of weight", 0.5,
        Blocks.solve(one.pushed("tip", 0.6, Vec3.X)).nonAssociative().orElse(Double.NaN), 1e-6, "solver tolerance"));
    rows.add(TIP.figure("block 1 : 2, sideways body force, friction 0.4, slides at, of weight", 0.4,
        Blocks.solve(one.pushed("slide", 0.4, Vec3.X)).nonAssociative().orElse(Double.NaN), 1e-6, "solver tolerance"));
    double tips = Blocks.turning(15, 35, 1e-5, d -> Blocks.solve(onSlope(d, 0.1, 0.2, 0.9)).stays() == Answer.YES);
    rows.add(TIP.figure("block 1 : 2 on a slope, friction 0.9, tips at, degrees", Math.toDegrees(Math.atan(0.5)), tips, 1e-3,
        "patches reach out to the contact tolerance"));
    double slides = Blocks.turning(15, 45, 1e-5, d -> Blocks.solve(onSlope(d, 0.2, 0.1, 0.6)).stays() == Answer.YES);
    rows.add(TIP.figure("block 2 : 1 on a slope, friction 0.6, slides at, degrees", Math.toDegrees(Math.atan(0.6)), slides, 1e-4,
        "solver tolerance"));
    return rows;
  }

  private static LooseBlocks onSlope(double degrees, double b, double h, double friction) {
    return new Blocks().turned(Vec3.Y, degrees)
        .box("slope", true, -1, 1, -1, 1, -0.1, 0).box("block", false, 0, b, 0, b, 0, h).heap("slope", friction);
  }

  /** The push at 0.9 of the height, through the centre line, that the block bears. */
  private static double pushedBox(double b, double h, double weightN, double friction, double degrees) {
    Fixtures f = new Fixtures();
    int box = f.body("box", new Vec3(0, 0, h / 2), h, weightN);
    f.bearing(box, Heap.GROUND, Vec3.Z, friction, new Vec3(-b / 2, -b / 2, 0), new Vec3(b / 2, -b / 2, 0),
        new Vec3(b / 2, b / 2, 0), new Vec3(-b / 2, b / 2, 0));
    List<Wrench> live = List.of(Wrench.of(Vec3.heading(degrees), new Vec3(0, 0, 0.9 * h), new Vec3(0, 0, h / 2)));
    Margin m = new ForceBalance(f.heap(), weightN).margin(f.dead(), live, 1000, 1e-6);
    return m.match(Margin.Limited::factor, x -> Double.NaN, x -> Double.NaN, x -> Double.NaN);
  }

  private static Row cornerForces() {
    List<Solid> solids = new ArrayList<>();
    solids.add(new Solid("base", Solid.Surface.ROCK, true, List.of(cube(0))));
    solids.add(new Solid("cube", Solid.Surface.ROCK, false, List.of(cube(1))));
    Heap heap = new Heap(List.of(new Heap.Body("cube", new Vec3(0, 0, 1), Math.sqrt(3), 1000)),
        HeapAssembly.bearings(solids, ContactFinder.find(solids, ContactRules.DEFAULT).contacts(), (a, c) -> 0.84, 0));
    List<Wrench> dead = List.of(new Wrench(new Vec3(0, 0, -1000 * G), Vec3.ZERO));
    Rest rest = new Resting(heap, 1000 * G).under(dead);
    String ours = rest instanceof Rest.Stays s ? s.forces().links().get(0).cornersN().stream()
        .map(n -> String.format(Locale.ROOT, "%.6f", n / (1000 * G))).toList().toString() : rest.toString();
    return CUBES.verdict("cube on a cube: force at the corners, of its weight", "[0.250000, 0.250000, 0.250000, 0.250000]", ours);
  }

  private static Hull cube(double z) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) p.add(new Vec3((i & 1) - 0.5, (i >> 1 & 1) - 0.5, z + (i >> 2) - 0.5));
    return HullBuilder.build(p).match(hull -> hull, why -> {
      throw new AssertionError(why);
    });
  }

  /** The stack of greatest overhang, moved on by {@code past}. */
  private static LooseBlocks overhang(int n, double past) {
    Blocks b = new Blocks().box("table", true, -3, 0, 0, 0.5, -0.2, 0);
    if (n == 2) {
      b.box("lower", false, -0.75 + past, 0.25 + past, 0, 0.5, 0, 0.2);
      b.box("upper", false, -0.25 + past, 0.75 + past, 0, 0.5, 0.2, 0.4);
    } else {
      b.box("lower", false, -0.5 + past, 0.5 + past, 0, 0.5, 0, 0.2);
      b.box("balance", false, -1 + past, past, 0, 0.5, 0.2, 0.4);
      b.box("upper", false, past, 1 + past, 0, 0.5, 0.2, 0.4);
    }
    return b.heap("overhang", 0.6);
  }

  private static LooseBlocks tilted(double degrees) {
    return new Blocks().turned(Vec3.Y, degrees).box("base", true, -0.5, 0.5, -0.5, 0.5, -0.5, 0.5)
        .box("middle", false, -0.5, 0.5, -0.5, 0.5, 0.5, 1.5).box("top", false, -0.5, 0.5, -0.5, 0.5, 1.5, 2.5)
        .heap("tilted", 0.84);
  }
}
