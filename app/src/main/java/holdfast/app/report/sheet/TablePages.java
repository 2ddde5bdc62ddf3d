package holdfast.app.report.sheet;

import holdfast.app.report.sheet.Flow.Column;
import holdfast.engine.build.Batches.Batch;
import holdfast.engine.build.Modules;
import holdfast.engine.build.Modules.Module;
import holdfast.engine.build.OpeningFit.Answer;
import holdfast.engine.build.Turning;
import holdfast.engine.gap.DeadWater;
import holdfast.engine.light.LightReport;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.GridCells;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Rocks, joints, batches and modules as tables. */
final class TablePages {
  private final Canvas c;
  private final SheetContent content;
  private final Figures f;
  private final Scene scene;

  TablePages(Canvas c, SheetContent content, Figures f) {
    this.c = c;
    this.content = content;
    this.f = f;
    this.scene = content.scene();
  }

  void draw() {
    if (content.rocks().isEmpty()) return;
    Flow.fill(c, "Rocks and joints", scene.name(), flow -> {
      rocks(flow);
      joints(flow);
      new DemandTable(flow, content, f).draw();
      batches(flow);
      modules(flow);
      cleaning(flow);
    });
  }

  private void deadWater(Flow flow) {
    GridCells cells = GridCells.of(scene);
    String size = f.mm(scene.settings().get(Setting.DEAD_WATER_MM));
    if (content.deadWater().isEmpty()) {
      flow.paragraph("Dead water: no pocket is shut off by openings smaller than " + size + ".");
      return;
    }
    flow.heading("Dead water", 12);
    for (DeadWater.Pocket p : content.deadWater()) {
      Vec3 at = p.centre().times(1e3);
      flow.paragraph("About " + f.ml(p.volumeM3() * 1e6) + " round cell " + cells.name(at.x(), at.y()) + ", " + f.mm(at.z())
          + " up, joined to the rest only by openings smaller than about " + size
          + (p.rocks().isEmpty() ? "" : ", between " + String.join(", ", p.rocks())) + ": waste will gather there.");
    }
  }

  private void rocks(Flow flow) {
    flow.heading("Rocks, in the order of building");
    List<List<String>> rows = new ArrayList<>();
    for (SheetContent.RockLine r : content.rocks()) {
      rows.add(List.of(
          (r.stage() > 0 ? r.stage() : "\u2013") + "  " + r.name(), r.kind().word(), f.kg(r.dryKg()),
          f.size(r.sizeMm().x(), r.sizeMm().y(), r.sizeMm().z()), r.fromCell() + " to " + r.toCell(), f.mm(r.underMm()),
          f.mm(r.topMm()), r.carrying() == 0 ? "" : String.valueOf(r.carrying()), light(r.name())));
    }
    flow.table(List.of(
        Column.left("Stage, rock", 50), Column.left("Kind", 14), Column.right("Dry mass", 22),
        Column.left("Size as placed, x × y × z", 60), Column.left("Cells, from and to", 42),
        Column.right("Underside at", 28), Column.right("Top at", 26), Column.right("Carried in", 20),
        Column.left("Light let through", 32)), rows);
    flow.paragraph("Heights are over the inner bottom. Sizes and cells are of the rock's box along the panes, turned as drawn,"
        + " from its front-left to its back-right cell."
        + (content.rocks().stream().anyMatch(r -> r.stage() == 0)
            ? " Rocks without a stage on the bench stay in their water until they go into the tank." : ""));
    deadWater(flow);
  }

  /** Panes against cleaners: one line, for there are four panes and three or four cleaners. */
  private void cleaning(Flow flow) {
    List<String> words = new ArrayList<>();
    for (SheetContent.Cleaning k : content.cleaning()) {
      List<String> panes = new ArrayList<>();
      for (Side s : Side.values()) {
        if (!scene.tank().mayTouch().contains(s)) panes.add(s.word() + " " + Figures.percentDown(k.wiped().get(s.ordinal())));
      }
      words.add(f.mm(k.thicknessMm()) + " thick: " + String.join(", ", panes));
    }
    flow.space(2);
    flow.paragraph("Cleaning: glass that a cleaner of " + f.size(scene.settings().get(Setting.CLEANER_LENGTH_MM),
        scene.settings().get(Setting.CLEANER_HEIGHT_MM)) + " reaches from the rim, sand to waterline, by the room it needs to the"
        + " rock: " + String.join("; ", words) + ".");
  }

  private String light(String rock) {
    for (LightReport.RockLight l : content.light().rocks()) {
      if (l.rock().equals(rock)) {
        return Figures.percent(l.unshaded()) + (l.shaded() ? ", shaded" : "");
      }
    }
    return "";
  }

  private void joints(Flow flow) {
    flow.heading("Joint schedule");
    GridCells cells = GridCells.of(scene);
    if (content.joints().isEmpty()) {
      flow.paragraph("No joint is fixed in this layout: every rock lies loose on those beneath.");
    } else {
      List<List<String>> rows = new ArrayList<>();
      for (SheetContent.JointLine j : content.joints()) {
        Vec3 at = j.at().times(1e3);
        rows.add(List.of(
            String.valueOf(j.number()), j.spec().a() + " to " + j.spec().b(), what(j.spec()),
            cells.name(at.x(), at.y()) + ", " + f.mm(at.z()) + " up",
            j.touching() ? f.area(j.areaMm2()) : "no contact: the paste must bridge a gap", made(j),
            j.batch() > 0 ? String.valueOf(j.batch()) : ""));
      }
      flow.table(List.of(
          Column.right("Joint", 13), Column.left("Rocks", 76), Column.left("Fixed with", 56),
              Column.left("Where: cell, height", 48),
          Column.left("Patch that touches", 36), Column.left("Made", 34), Column.right("Batch", 15)), rows);
    }
    if (!content.resting().isEmpty()) {
      List<String> pairs = content.resting().stream().map(r -> r.upper() + " on " + r.lower()).toList();
      flow.paragraph("Resting unfixed: " + String.join("; ", pairs) + ".");
    }
  }

  private String made(SheetContent.JointLine j) {
    boolean tank = j.spec().madeIn() == JointSpec.MadeIn.TANK;
    return (tank ? "tank" : "bench") + (j.stage() == 0 ? "" : tank && content.madeOfPieces() ? ", carrying " + j.stage()
        : ", stage " + j.stage());
  }

  /** What fixes a joint, in words. */
  String what(JointSpec j) {
    String rod = j.rodDiameterMm() > 0
        ? "rod " + f.mm(j.rodDiameterMm()) + " thick, " + f.mm(j.rodDepthMm()) + " deep in each" + (j.rodGlued() ? ", glued"
        : ", not glued") : "";
    String paste = switch (j.bond()) {
      case MORTAR, PUTTY, GEL -> f.ml(j.amountMl()) + " " + j.bond().word();
      case ROD, NONE -> "";
    };
    return paste.isEmpty() ? rod : rod.isEmpty() ? paste : paste + ", " + rod;
  }

  private void batches(Flow flow) {
    List<Batch> batches = content.plan().mortar();
    if (batches.isEmpty()) return;
    int onBench = content.madeOfPieces() ? content.plan().batches().batches().size() : 0;
    flow.heading("Batches of mortar");
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < batches.size(); i++) {
      Batch b = batches.get(i);
      rows.add(List.of(
          String.valueOf(i + 1), content.jointWords(b.joints()) + (i < onBench ? ", bench" : ", tank"),
          f.grams(b.powderG()), f.grams(b.waterG()),
          b.mixes() == 1 ? "one" : b.mixes() + " in a row", Figures.clock(b.startMin()), Figures.clock(b.goneMin()),
              f.grams(b.wasteG())));
    }
    flow.table(List.of(
        Column.right("Batch", 15), Column.left("For", 70), Column.right("Powder", 26), Column.right("Water", 26),
            Column.left("Mixes", 30),
        Column.right("Start mixing at", 32), Column.right("Used up by", 28), Column.right("Powder left over", 34)), rows);
    flow.paragraph((onBench > 0 && onBench < batches.size()
        ? "Times run from the first rock on the bench, and anew from the first piece in the tank."
        : "Times run from the first rock.")
        + " Waste of " + Figures.percent(scene.settings().get(Setting.CEMENT_WASTE))
        + " is mixed in. Recipe by common practice: the maker's own goes before.");
    if (content.joints().stream().anyMatch(this::cementOnLiving)) {
      flow.caution("Mortar on living rock: what lives near the joint dies, and the rock must stay out of water while it sets. "
          + "Putty or gel is usual there.");
    }
  }

  private boolean cementOnLiving(SheetContent.JointLine j) {
    return j.spec().bond() == JointSpec.Bond.MORTAR && content.rocks().stream()
        .anyMatch(r -> r.kind() == Rock.Kind.LIVE && (r.name().equals(j.spec().a()) || r.name().equals(j.spec().b())));
  }

  private void modules(Flow flow) {
    flow.heading("Modules: what is lifted as one piece");
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < content.plan().modules().size(); i++) {
      Module m = content.plan().modules().get(i);
      rows.add(List.of(
          String.join(" + ", m.rocks()), f.kg(m.drainedKg()), f.size(m.sizeM().x() * 1e3, m.sizeM().y() * 1e3,
              m.sizeM().z() * 1e3),
          passage(m, i), m.lift().words(), split(m, i)));
    }
    List<Column> columns = List.of(
        Column.left("Piece", 64), Column.right("Drained", 22), Column.left("Size", 58), Column.left("Through the opening", 62),
        Column.left("Lifted by", 28), Column.left("Part it", 50));
    // Where no piece need be parted, the last column says nothing.
    boolean parted = rows.stream().anyMatch(r -> !r.get(5).isEmpty());
    flow.table(parted ? columns : columns.subList(0, 5), parted ? rows : rows.stream().map(r -> r.subList(0, 5)).toList());
    flow.paragraph("Lifting limits: " + f.kgAtMost(scene.settings().get(Setting.LIFT_ONE_KG)) + " for one person and "
        + f.kgAtMost(scene.settings().get(Setting.LIFT_TWO_KG))
        + " for two at arm's length (from memory, for people fit for it; local rules go before)."
        + " Openings: a straight lift with " + f.mm(scene.settings().get(Setting.OPENING_CLEAR_MM)) + " to spare on each side"
        + (content.plan().modules().stream().allMatch(Module::passes) ? "."
            : ", turned and tilted beforehand as need be; where that fails, a turn part way through in an otherwise empty tank."
            + " That none was found does not prove that there is none."));
  }

  private String passage(Module m, int number) {
    List<Tank.Opening> openings = scene.tank().openings();
    String which = openings.size() > 1 ? "opening " + (m.opening() + 1) + ": " : "";
    double slack = m.passage().slackM() * 1e3;
    Optional<Turning.Way> way = content.wayOf(number);
    if (way.isPresent()) {
      return (openings.size() > 1 ? "opening " + (way.get().opening() + 1) + ": " : "") + "only by turning on the way, "
          + f.mmAtLeast(way.get().path().roomM() * 1e3) + " to spare: see its page";
    }
    if (m.passage().answer() == Answer.STUCK) return which + "does not pass: too large by " + f.mm(-slack) + " at best";
    if (m.passage().answer() == Answer.UNDECIDED) return which + "not decided, within a hair: take it as no";
    double tilt = Math.toDegrees(m.passage().tiltRad());
    if (!m.hasRoom()) {
      return which + "fits tilted by " + Math.round(tilt) + "°, but is then too tall for the tank: take it as no";
    }
    return which + (tilt < 1 ? "passes upright" : "passes tilted by " + Math.round(tilt) + "°") + ", " + f.mmAtLeast(slack)
        + " to spare";
  }

  private String split(Module m, int number) {
    return m.split().map(s -> "make " + content.jointWords(List.of(s.joint())) + " in the tank: " + f.kg(s.firstKg()) + " and "
        + f.kg(s.secondKg()) + (s.solves() ? "" : ", which is not enough yet"))
        .orElse((m.passes() || content.wayOf(number).isPresent()) && m.lift() != Modules.Lift.TOO_HEAVY ? ""
            : "no single joint parts it");
  }
}
