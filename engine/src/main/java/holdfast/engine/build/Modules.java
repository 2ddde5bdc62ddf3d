package holdfast.engine.build;

import holdfast.engine.build.OpeningFit.Answer;
import holdfast.engine.build.OpeningFit.Passage;
import holdfast.model.geom.Box;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Tank;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Rocks fixed together on the bench become one piece: its mass, whether it passes the opening, who lifts it, where to split
 * it.
 */
public final class Modules {
  private final Scene scene;
  private final List<RockBody> bodies;
  private final List<List<Vec3>> corners = new ArrayList<>();
  private final Through through;

  /** Answers as {@link OpeningFit#through}: whoever asks again and again may keep what was found. */
  @FunctionalInterface
  public interface Through {
    Passage through(List<Vec3> points, double firstM, double secondM);
  }

  private Modules(Scene scene, List<RockBody> placed, Through through) {
    this.scene = scene;
    this.through = through;
    this.bodies = placed;
    for (RockBody b : placed) {
      List<Vec3> points = new ArrayList<>();
      for (Hull h : b.lobes()) points.addAll(h.moved(scene.placement(b.name()).orElseThrow().pose()).corners());
      corners.add(points);
    }
  }

  /** Who can lift it. */
  public enum Lift {
    ONE("one person"), TWO("two people"), TOO_HEAVY("too heavy for two people");

    private final String words;

    Lift(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * One module, or a rock on its own.
   *
   * @param rocks names, in the order of the placements
   * @param joints numbers of the joints that hold it together, in the order of the scene's joints
   * @param dryKg dry, with its cement
   * @param drainedKg with its pores full of water, as it weighs when it is lifted out
   * @param sizeM size along the tank's axes, as placed
   * @param opening number of the opening that leaves the most room, 0 for the first
   * @param passage how it passes that opening on a straight lift
   * @param hasRoom in the pose in which it passes it has room to stand between floor and opening; always so when that is the
   *     pose it was built in
   * @param lift who lifts it, drained
   * @param split where to part it; empty when it need not be, or when no single joint parts it
   */
  public record Module(
      List<String> rocks, List<Integer> joints, double dryKg, double drainedKg, Vec3 sizeM,
      int opening, Passage passage, boolean hasRoom, Lift lift, Optional<Split> split) {
    public Module {
      rocks = List.copyOf(rocks);
      joints = List.copyOf(joints);
    }

    /** On a straight lift; what does not may still pass by {@link Turning}. */
    public boolean passes() {
      return passage.answer() == Answer.PASSES && hasRoom;
    }
  }

  /**
   * A joint to be made in the tank instead of before.
   *
   * @param joint its number
   * @param first the rocks on one side of it, {@code second} those on the other
   * @param solves both parts pass the opening on a straight lift and can be lifted
   */
  public record Split(int joint, List<String> first, List<String> second, double firstKg, double secondKg, boolean solves) {}

  /** The modules of a scene in the order of their first rocks; {@code bodies} are those of its rocks. */
  public static List<Module> of(Scene scene, List<RockBody> bodies) {
    return of(scene, bodies, OpeningFit::through);
  }

  /** The same with the answers about openings from elsewhere. */
  public static List<Module> of(Scene scene, List<RockBody> bodies, Through through) {
    List<RockBody> placed = scene.placements().stream()
        .flatMap(p -> bodies.stream().filter(b -> b.name().equals(p.rock()))).toList();
    Modules m = new Modules(scene, placed, through);
    List<Module> out = new ArrayList<>();
    for (List<Integer> group : m.groups(IntStream.range(0, placed.size()).boxed().toList(), -1)) out.add(m.module(group, true));
    return out;
  }

  /** Sets of rocks that joints hold together, one joint left out; union-find with the lowest number as the root. */
  private List<List<Integer>> groups(List<Integer> rocks, int without) {
    int[] root = IntStream.range(0, bodies.size()).toArray();
    for (int j = 0; j < scene.joints().size(); j++) {
      if (j == without || !joinsOnBench(scene.joints().get(j))) continue;
      int a = numberOf(scene.joints().get(j).a());
      int b = numberOf(scene.joints().get(j).b());
      if (a < 0 || b < 0 || !rocks.contains(a) || !rocks.contains(b)) continue;
      int ra = find(root, a);
      int rb = find(root, b);
      root[Math.max(ra, rb)] = Math.min(ra, rb);
    }
    List<List<Integer>> out = new ArrayList<>();
    for (int r : rocks) {
      if (find(root, r) == r) out.add(rocks.stream().filter(i -> find(root, i) == r).toList());
    }
    return out;
  }

  /** Made on the bench: it joins two rocks to one piece before they go in. */
  static boolean joinsOnBench(JointSpec joint) {
    return joint.bonded() && joint.madeIn() == JointSpec.MadeIn.BENCH;
  }

  private static int find(int[] root, int i) {
    int at = i;
    while (root[at] != at) at = root[at];
    return at;
  }

  private int numberOf(String rock) {
    for (int i = 0; i < bodies.size(); i++) if (bodies.get(i).name().equals(rock)) return i;
    return -1;
  }

  private Module module(List<Integer> rocks, boolean mayPart) {
    List<Integer> joints = jointsWithin(rocks);
    double cement = joints.stream().mapToDouble(j -> pasteKg(scene.joints().get(j))).sum();
    double dry = cement + rocks.stream().mapToDouble(i -> bodies.get(i).dryMassKg()).sum();
    double drained = dry + rocks.stream().mapToDouble(i -> bodies.get(i).poreWaterKg()).sum();
    List<Vec3> points = new ArrayList<>();
    rocks.forEach(i -> points.addAll(corners.get(i)));
    double clear = 2e-3 * scene.settings().get(Setting.OPENING_CLEAR_MM);
    Passage best = null;
    int opening = 0;
    List<Tank.Opening> openings = openings(scene.tank());
    for (int i = 0; i < openings.size(); i++) {
      Tank.Opening o = openings.get(i);
      Passage p = through.through(points, o.lengthMm() * 1e-3 - clear, o.widthMm() * 1e-3 - clear);
      if (best == null || rank(p) > rank(best)) {
        best = p;
        opening = i;
      }
    }
    Lift lift = lift(drained);
    boolean hasRoom = hasRoom(points, best);
    boolean trouble = best.answer() != Answer.PASSES || !hasRoom || lift == Lift.TOO_HEAVY;
    return new Module(
        rocks.stream().map(i -> bodies.get(i).name()).toList(), joints, dry, drained, Box.round(points).size(),
        opening, best, hasRoom, lift,
        trouble && mayPart ? split(rocks, joints) : Optional.empty());
  }

  /** A piece that must be tilted to pass has to be tilted under the opening: is the tank deep enough for that? */
  private boolean hasRoom(List<Vec3> points, Passage p) {
    if (p.tiltRad() == 0) return true;
    double high = points.stream().mapToDouble(v -> v.dot(p.up())).max().orElse(0);
    double low = points.stream().mapToDouble(v -> v.dot(p.up())).min().orElse(0);
    return high - low <= underM();
  }

  /** Height between what rock stands on and the lower side of the opening, metres. */
  private double underM() {
    return 1e-3 * (scene.tank().heightMm() - scene.floor().topMm() - Gate.braceMm(scene));
  }

  private static double rank(Passage p) {
    return p.answer() == Answer.PASSES ? 1e6 - p.tiltRad() * 1e3 + p.slackM() : p.slackM();
  }

  /** The openings of a tank; the whole rim when it has no braces. */
  public static List<Tank.Opening> openings(Tank tank) {
    return tank.openings().isEmpty()
        ? List.of(new Tank.Opening(0, 0, tank.lengthMm(), tank.widthMm())) : tank.openings();
  }

  private Lift lift(double kg) {
    if (kg <= scene.settings().get(Setting.LIFT_ONE_KG)) return Lift.ONE;
    return kg <= scene.settings().get(Setting.LIFT_TWO_KG) ? Lift.TWO : Lift.TOO_HEAVY;
  }

  private List<Integer> jointsWithin(List<Integer> rocks) {
    List<Integer> out = new ArrayList<>();
    for (int j = 0; j < scene.joints().size(); j++) {
      JointSpec s = scene.joints().get(j);
      if (joinsOnBench(s) && rocks.contains(numberOf(s.a())) && rocks.contains(numberOf(s.b()))) out.add(j);
    }
    return out;
  }

  /** Mass of what fixes a joint: mortar by its recipe, putty and gel as twice water at most; a rod is left out. */
  private double pasteKg(JointSpec joint) {
    double perMl = switch (joint.bond()) {
      case MORTAR -> scene.settings().get(Setting.CEMENT_G_PER_ML) + scene.settings().get(Setting.CEMENT_WATER_G_PER_ML);
      case PUTTY, GEL -> 2;
      case ROD, NONE -> 0;
    };
    return perMl * joint.amountMl() * 1e-3;
  }

  /** The joint whose opening parts the module in two with the least trouble left, then the most even masses. */
  private Optional<Split> split(List<Integer> rocks, List<Integer> joints) {
    record Cut(Split split, int troubles) {}

    List<Cut> cuts = new ArrayList<>();
    for (int j : joints) {
      List<List<Integer>> parts = groups(rocks, j);
      if (parts.size() != 2) continue;
      Module a = module(parts.get(0), false);
      Module b = module(parts.get(1), false);
      int troubles = troubles(a) + troubles(b);
      cuts.add(new Cut(new Split(j, a.rocks, b.rocks, a.drainedKg, b.drainedKg, troubles == 0), troubles));
    }
    return cuts.stream()
        .min(Comparator.<Cut>comparingInt(Cut::troubles)
            .thenComparingDouble(c -> Math.max(c.split.firstKg, c.split.secondKg)))
        .map(Cut::split);
  }

  private static int troubles(Module m) {
    return (m.passes() ? 0 : 1) + (m.lift == Lift.TOO_HEAVY ? 1 : 0);
  }
}
