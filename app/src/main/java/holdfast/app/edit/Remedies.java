package holdfast.app.edit;

import holdfast.engine.build.Modules;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.gap.Gaps;
import holdfast.engine.pane.PaneReport;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Which findings have a remedy that the scene itself determines to the millimetre or to the joint, and the edits that do it.
 * What only a person can choose (which rock to lower, where to put another rest, what to buy) stays with words, and so does
 * whatever would make something else worse that can be seen without judging: rocks that break into each other, a rock that no
 * longer bears where it did, another gap too narrow. Whether the heap stands afterwards is judged anew as after every edit.
 */
public final class Remedies {
  /** As a cosine: contacts that point up or down more than this carry. */
  static final double CARRIES = 0.5;

  /** Share of a direction that must lie level for a move along the floor to lead away. */
  private static final double LEVEL = 0.5;

  /** Millimetres nearer than this to a device the direction away from it is not known. */
  private static final double TOUCHING_MM = 0.5;

  private final Scene scene;
  private final Optional<PaneReport> pane;
  private final Arrangement layout;

  /** The report that the findings are of, and the rocks of its scene in place. */
  public Remedies(CheckReport report, List<PlacedRock> placed) {
    scene = report.scene();
    pane = report.pane();
    layout = new Arrangement(scene, placed);
  }

  /** What can be done at a press, the best first; empty where the finding has no remedy that is determined. */
  public List<Remedy> of(Finding f) {
    return switch (f.code()) {
      case GAP, TOUCHES_PANE -> fromPane(f);
      case OUTSIDE -> inside(f.about().get(0));
      case BLOCKS_DEVICE -> fromDevice(f);
      case ON_SAND, UNDERMINED, SAND_ONLY -> ontoFloor(f.about().get(0));
      case PANE_STRESS -> f.severity() == Severity.FAIL ? lighterOnThePane() : List.of();
      case FALLS -> letDown(f.about().get(0));
      case BOND_WITHOUT_CONTACT -> withoutBond(f);
      case HEAVY_LIFT, OPENING, OPENING_TURN -> madeInTank(f);
      default -> List.of();
    };
  }

  // -- sideways -----------------------------------------------------------------------------------------------------

  private List<Remedy> fromPane(Finding f) {
    for (Side side : Side.values()) {
      if ((side.word() + " pane").equals(f.about().get(1))) {
        return aside(f.about().get(0), rocks -> {
          double need = rocks.stream().mapToDouble(r -> layout.missingMm(r, side)).max().orElse(0);
          return Optional.of(side.outward().times(-Math.ceil(need - 1e-6)));
        });
      }
    }
    return List.of();
  }

  private List<Remedy> inside(String rock) {
    return aside(rock, rocks -> {
      Vec3 by = Vec3.ZERO;
      for (Side side : Side.values()) {
        double need = rocks.stream().mapToDouble(r -> layout.missingMm(r, side)).max().orElse(0);
        if (need <= 0) continue;
        // Too wide for the tank: no move helps.
        if (by.dot(side.outward()) > 0) return Optional.empty();
        by = by.plus(side.outward().times(-Math.ceil(need - 1e-6)));
      }
      double low = rocks.stream().mapToDouble(layout::lowMm).min().orElse(0);
      return Optional.of(low < -1e-6 ? by.plus(Vec3.Z.times(scene.floor().topMm() - low)) : by);
    });
  }

  private List<Remedy> fromDevice(Finding f) {
    String rock = f.about().get(0);
    Optional<Gaps.DeviceGap> gap = layout.gaps().devices().stream()
        .filter(g -> g.name().equals(rock) && g.device().equals(f.about().get(1))).findFirst();
    double mm = gap.map(g -> g.distanceM() * 1e3).orElse(0.0);
    if (Math.abs(mm) < TOUCHING_MM) return List.of();
    // Out of the device, whether they are apart or overlap: moved along it by so much, they are that much farther apart.
    Vec3 out = gap.get().onRock().minus(gap.get().onDevice()).times(1e3 / mm);
    Vec3 level = new Vec3(out.x(), out.y(), 0);
    if (level.norm() < LEVEL) return List.of();
    double by = Math.ceil((gap.get().requiredM() * 1e3 - mm) / level.norm() - 1e-6);
    return aside(rock, rocks -> Optional.of(level.times(by / level.norm())));
  }

  private interface Shift {
    Optional<Vec3> of(List<String> rocks);
  }

  /** The rock alone and the heap that it belongs to, whichever of these can be moved without making anything else worse. */
  private List<Remedy> aside(String rock, Shift shift) {
    List<Remedy> out = new ArrayList<>();
    List<String> heap = layout.heapOf(rock);
    // What carries others is better moved with them.
    List<List<String>> sets = heap.size() == 1 ? List.of(heap)
        : layout.carries(rock) ? List.of(heap, List.of(rock)) : List.of(List.of(rock), heap);
    for (List<String> rocks : sets) {
      Optional<Vec3> by = shift.of(rocks).filter(v -> v.norm() > 0);
      if (by.isEmpty() || !layout.canMove(rocks)) continue;
      Arrangement after = layout.moved(rocks, by.get());
      if (!after.noWorseThan(layout, rocks, List.of(rock))) continue;
      String what = rocks.size() == 1 ? rock : rock + " and its heap";
      out.add(moving("Move " + what + " " + way(by.get()), rocks, by.get()));
    }
    return out;
  }

  /** "12 mm back"; "20 mm to the right and 7 mm back"; a slanted way is told by its length. */
  private static String way(Vec3 mm) {
    List<String> parts = new ArrayList<>();
    boolean whole = whole(mm.x()) && whole(mm.y());
    if (!whole) parts.add(String.format(Locale.ROOT, "%.0f mm away from it", Math.hypot(mm.x(), mm.y())));
    if (whole && mm.x() != 0) parts.add(text(mm.x()) + (mm.x() > 0 ? " to the right" : " to the left"));
    if (whole && mm.y() != 0) parts.add(text(mm.y()) + (mm.y() > 0 ? " back" : " forward"));
    if (mm.z() != 0) parts.add(text(mm.z()) + " up");
    return String.join(" and ", parts);
  }

  private static boolean whole(double mm) {
    return Math.abs(mm - Math.rint(mm)) < 1e-9;
  }

  private static String text(double mm) {
    String n = String.format(Locale.ROOT, "%.1f", Math.abs(mm));
    return (n.endsWith(".0") ? n.substring(0, n.length() - 2) : n) + " mm";
  }

  private Remedy moving(String words, List<String> rocks, Vec3 byMm) {
    List<Edit> edits = rocks.stream().flatMap(r -> scene.placement(r).stream())
        .<Edit>map(p -> new Edit.Move("move", p.rock(), p.atMm().plus(byMm), p.turn())).toList();
    String name = rocks.size() == 1 ? "move " + rocks.get(0) : "move " + rocks.size() + " rocks";
    return new Remedy(words, new Edit.Together(name, edits));
  }

  // -- down ---------------------------------------------------------------------------------------------------------

  /** The whole heap straight down until it bears on the floor, where that gives the rock its own foot there. */
  private List<Remedy> ontoFloor(String rock) {
    List<String> heap = layout.heapOf(rock);
    double fall = layout.fallMm(heap);
    if (!layout.canMove(heap) || !(fall > 0) || layout.onFloor(rock)) return List.of();
    Vec3 by = Vec3.Z.times(-fall);
    Arrangement after = layout.moved(heap, by);
    if (!after.onFloor(rock) || !after.noWorseThan(layout, heap, List.of())) return List.of();
    String what = heap.size() == 1 ? rock : rock + " and its heap";
    return List.of(moving("Lower " + what + " " + text(fall) + " onto the floor", heap, by));
  }

  /** A rock that bears on nothing comes straight down to what lies below. */
  private List<Remedy> letDown(String rock) {
    if (layout.bears(rock) || scene.placement(rock).isEmpty()) return List.of();
    double fall = layout.fallMm(List.of(rock));
    if (!layout.canMove(List.of(rock)) || !(fall > 0)) return List.of();
    Vec3 by = Vec3.Z.times(-fall);
    if (!layout.moved(List.of(rock), by).bears(rock)) return List.of();
    return List.of(moving("Let " + rock + " down " + text(fall), List.of(rock), by));
  }

  // -- the bottom pane ----------------------------------------------------------------------------------------------

  /** Of what was tried on the pane and is enough, what an edit can do: a grid under all rocks, one rock moved with its load. */
  private List<Remedy> lighterOnThePane() {
    List<Remedy> out = new ArrayList<>();
    for (PaneReport.Remedy r : pane.map(PaneReport::remedies).orElse(List.of())) {
      if (r.utilisation() > 1) continue;
      if (r.kind() == PaneReport.Remedy.Kind.GRID) onGrid().ifPresent(out::add);
      r.shift().flatMap(this::shifted).ifPresent(out::add);
    }
    return out;
  }

  private Optional<Remedy> shifted(PaneReport.Remedy.Shift s) {
    List<String> rocks = layout.withLoad(s.rock());
    Vec3 by = new Vec3(s.rightM(), s.backM(), 0).times(1e3);
    if (!layout.canMove(rocks) || !layout.moved(rocks, by).noWorseThan(layout, rocks, List.of())) return Optional.empty();
    return Optional.of(moving("Move " + s.rock() + (rocks.size() > 1 ? " and its load " : " ") + way(by), rocks, by));
  }

  /** The usual louvre grid on a bare bottom, and every rock higher by its thickness. */
  private Optional<Remedy> onGrid() {
    List<String> rocks = layout.placed().stream().map(p -> p.rock().name()).toList();
    if (scene.floor().kind() != Floor.Kind.BARE || !layout.canMove(rocks) || !rocks.stream().allMatch(layout::bears)) {
      return Optional.empty();
    }
    Edit lay = new Edit.Furnish(scene.tank(), Floor.DEFAULT, scene.sand(), scene.water());
    Vec3 by = Vec3.Z.times(Floor.DEFAULT.topMm());
    Arrangement after = lay.on(scene).match(s -> layout.moved(s, rocks, by), why -> layout);
    if (after == layout || !after.roomAsIn(layout, rocks, List.of())
        || !rocks.stream().allMatch(r -> layout.onFloor(r) == after.onFloor(r))) return Optional.empty();
    List<Edit> edits = new ArrayList<>(List.of(lay));
    scene.placements().forEach(p -> edits.add(new Edit.Move("move", p.rock(), p.atMm().plus(by), p.turn())));
    return Optional.of(new Remedy("Lay a louvre grid under all rocks", new Edit.Together("lay a grid under the rocks", edits)));
  }

  // -- joints -------------------------------------------------------------------------------------------------------

  private List<Remedy> withoutBond(Finding f) {
    return scene.joint(f.about().get(0), f.about().get(1))
        .map(j -> new Remedy("Take this bond out", new Edit.Fix(JointSpec.paste(j.a(), j.b(), JointSpec.Bond.NONE, 0))))
        .map(List::of).orElse(List.of());
  }

  /** Where one joint, made in the tank, leaves two pieces that both go in and out. */
  private List<Remedy> madeInTank(Finding f) {
    List<Remedy> out = new ArrayList<>();
    for (Modules.Module m : Modules.of(scene, layout.placed().stream().map(PlacedRock::body).toList())) {
      if (!m.rocks().equals(f.about())) continue;
      m.split().filter(Modules.Split::solves).map(s -> scene.joints().get(s.joint())).ifPresent(j -> out.add(new Remedy(
          "Make " + j.a() + " to " + j.b() + " in the tank", new Edit.Fix(j.madeIn(JointSpec.MadeIn.TANK)))));
    }
    return out;
  }
}
