package holdfast.app.report.sheet;

import holdfast.app.report.Json;
import holdfast.app.report.Units;
import holdfast.engine.bonding.JointDemand;
import holdfast.engine.build.Batches;
import holdfast.engine.build.BuildOrder;
import holdfast.engine.build.BuildPlan;
import holdfast.engine.build.Modules.Module;
import holdfast.engine.supply.FloorCuts;
import holdfast.engine.supply.Supply;
import holdfast.engine.supply.Volumes;
import holdfast.engine.supply.Weights;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Side;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** The content of the sheet for programs: always metric, units in the names, the same order every time. */
public final class SheetJson {
  private final SheetContent content;

  private SheetJson(SheetContent content) {
    this.content = content;
  }

  /** The text, ending in a newline. */
  public static String of(SheetContent content) {
    return Json.text(new SheetJson(content).root());
  }

  private Map<String, Object> root() {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("format", "holdfast-sheet/1");
    m.put("scene", content.scene().name());
    m.put("checked", content.check().isPresent());
    content.check().ifPresent(c -> {
      m.put("verdict", c.verdict().word());
      m.put("headline", c.headline());
      m.put("findings", c.findings().stream().map(k -> map("severity", k.severity().word(), "code", k.code().word(),
          "about", k.about(), "sentence", k.sentence(), "remedy", k.remedy())).toList());
    });
    m.put("order", order());
    m.put("rocks", content.rocks().stream().map(this::rock).toList());
    m.put("joints", content.joints().stream().map(this::joint).toList());
    m.put("resting", content.resting().stream().map(r -> map("upper", r.upper(), "lower", r.lower())).toList());
    m.put("joint_demands", content.demands().joints().stream().map(this::demand).toList());
    m.put("lifts", content.demands().lifts().stream().map(l -> map(
        "piece", l.piece() + 1, "held_by", content.plan().rocks().get(l.rock()), "holds", l.holds(),
        "comes_apart", Double.isInfinite(l.use()), "use", Double.isFinite(l.use()) ? (Object) l.use() : null,
        "joint", l.joint() < 0 ? null : (Object) content.number(l.joint()))).toList());
    m.put("batches", batches(content.plan().batches(), 0));
    content.plan().carry().ifPresent(c -> m.put("carrying_in", carrying(c)));
    List<Module> modules = content.plan().modules();
    m.put("modules", IntStream.range(0, modules.size()).mapToObj(i -> module(modules.get(i), i)).toList());
    m.put("light", content.light().rocks().stream().map(l -> map(
        "rock", l.rock(), "unshaded", l.unshaded(), "of_surface", l.ofSurface(), "least", l.least(), "shaded",
            l.shaded())).toList());
    m.put("dead_water", content.deadWater().stream().map(p -> map(
        "volume_ml", p.volumeM3() * 1e6, "centre_mm", list(p.centre().times(1e3)), "rocks", p.rocks())).toList());
    m.put("cleaning", content.cleaning().stream().map(k -> {
      Map<String, Object> shares = new LinkedHashMap<>();
      for (Side s : Side.values()) shares.put(s.word(), k.wiped().get(s.ordinal()));
      return map("thickness_mm", k.thicknessMm(), "wiped_share", shares);
    }).toList());
    m.put("supply", supply());
    m.put("days", DaySteps.of(content, new Figures(Units.METRIC)).stream().map(s -> map(
        "number", s.number(), "title", s.title(), "text", s.text(), "caution", s.caution())).toList());
    m.put("cautions", DayPages.general(content, new Figures(Units.METRIC)));
    return m;
  }

  private Map<String, Object> demand(JointDemand d) {
    JointDemand.Offer o = d.offer();
    Map<String, Object> m = map("joint", content.number(d.index()), "patches", d.patches(), "area_mm2", d.areaM2() * 1e6,
        "takes_alone", map("pull_n", o.pullN(), "shear_n", o.shearN(), "moment_nm", o.momentNm(), "twist_nm", o.twistNm()),
        "design_strength_n_mm2", o.strengthN_m2() * 1e-6, "rock_tensile_n_mm2", o.rockN_m2() * 1e-6, "rock_first", o.rockFirst());
    d.place().ifPresent(k -> m.put("in_place", load(k)));
    d.lift().ifPresent(k -> m.put("in_the_hands", load(k)));
    return m;
  }

  private static Map<String, Object> load(JointDemand.Demand d) {
    return map("load", d.load(), "tension_n", d.tensionN(), "press_n", d.pressN(), "shear_n", d.shearN(), "moment_nm",
        d.momentNm(), "twist_nm", d.twistNm(), "use", d.use());
  }

  private Map<String, Object> carrying(BuildPlan.Carry c) {
    List<Object> stages = new ArrayList<>();
    for (int i = 0; i < c.order().stages().size(); i++) {
      BuildOrder.Stage s = c.order().stages().get(i);
      stages.add(map("stage", i + 1, "piece", s.rock() + 1, "rocks", content.plan().modules().get(s.rock()).rocks(),
          "stands", s.stands(), "help", s.help().name().toLowerCase(Locale.ROOT), "until_stage", s.until() + 1,
          "after_filling", i >= content.plan().wetFrom(), "start_min", c.batches().minutes().get(i),
          "wait_h", c.batches().waits().get(i), "joints", numbers(s.joints())));
    }
    return map("complete", c.order().complete(), "unaided", c.order().unaided(), "stages", stages,
        "batches", batches(c.batches(), content.plan().batches().batches().size()),
        "rest_on_each_other", c.locked().stream().map(k -> List.of(k.get(0) + 1, k.get(1) + 1)).toList());
  }

  private Map<String, Object> order() {
    BuildOrder.Order o = content.plan().order();
    Map<String, Object> m = map("complete", o.complete(), "unaided", o.unaided(), "least_help", o.least(), "stages_judged",
        o.questions(), "on_the_bench", content.madeOfPieces(),
        "sand_before_stage", content.plan().sandBefore() < 0 ? null : (Object) (content.plan().sandBefore() + 1));
    List<Object> stages = new ArrayList<>();
    for (int i = 0; i < o.stages().size(); i++) {
      BuildOrder.Stage s = o.stages().get(i);
      stages.add(map(
          "stage", i + 1, "rock", content.plan().rocks().get(s.rock()), "stands", s.stands(), "help",
              s.help().name().toLowerCase(Locale.ROOT),
          "until_stage", s.until() + 1,
          "start_min", content.plan().batches().minutes().get(i),
          "wait_h", content.plan().batches().waits().get(i), "joints", numbers(s.joints())));
    }
    m.put("stages", stages);
    return m;
  }

  private List<Integer> numbers(List<Integer> indices) {
    return content.joints().stream().filter(j -> indices.contains(j.index())).map(SheetContent.JointLine::number).toList();
  }

  private Map<String, Object> rock(SheetContent.RockLine r) {
    return map("stage", r.stage() == 0 ? null : (Object) r.stage(), "carrying", r.carrying() == 0 ? null : (Object) r.carrying(),
        "rock", r.name(), "kind", r.kind().word(), "dry_kg", r.dryKg(), "size_mm", list(r.sizeMm()),
        "from_cell", r.fromCell(), "to_cell", r.toCell(), "underside_mm", r.underMm(), "top_mm", r.topMm());
  }

  private Map<String, Object> joint(SheetContent.JointLine j) {
    JointSpec s = j.spec();
    Map<String, Object> m = map("number", j.number(), "rocks", List.of(s.a(), s.b()), "bond", s.bond().word(), "amount_ml",
        s.amountMl());
    if (s.rodDiameterMm() > 0) {
      m.put("rod_diameter_mm", s.rodDiameterMm());
      m.put("rod_depth_mm", s.rodDepthMm());
      m.put("rod_glued", s.rodGlued());
    }
    m.put("at_mm", list(j.at().times(1e3)));
    m.put("touching", j.touching());
    m.put("area_mm2", j.areaMm2());
    m.put("made_in", s.madeIn().word());
    m.put("stage", j.stage());
    if (j.batch() > 0) m.put("batch", j.batch());
    return m;
  }

  private Map<String, Object> batches(Batches b, int before) {
    Map<String, Object> m = new LinkedHashMap<>();
    List<Object> each = new ArrayList<>();
    for (int i = 0; i < b.batches().size(); i++) {
      Batches.Batch x = b.batches().get(i);
      each.add(map("batch", before + i + 1, "joints", numbers(x.joints()), "powder_g", x.powderG(), "water_g", x.waterG(),
          "waste_g", x.wasteG(),
          "mixes", x.mixes(), "start_min", x.startMin(), "used_up_by_min", x.goneMin()));
    }
    m.put("mortar", each);
    m.put("putty_ml", b.putty());
    m.put("gel_ml", b.gel());
    m.put("rods", b.rods());
    m.put("work_min", b.workMin());
    m.put("living_out_of_water_min", b.livingOutMin());
    m.put("set_under_water_min", b.wetMin());
    return m;
  }

  private Map<String, Object> module(Module m, int number) {
    Map<String, Object> out = map("rocks", m.rocks(), "joints", numbers(m.joints()), "dry_kg", m.dryKg(), "drained_kg",
        m.drainedKg(),
        "size_mm", list(m.sizeM().times(1e3)), "opening", m.opening() + 1,
        "passage", m.passage().answer().name().toLowerCase(Locale.ROOT), "slack_mm", m.passage().slackM() * 1e3,
        "tilt_deg", Math.toDegrees(m.passage().tiltRad()), "lift", m.lift().words());
    out.put("room_under_opening", m.hasRoom());
    content.wayOf(number).ifPresent(w -> out.put("turning", map(
        "opening", w.opening() + 1, "room_mm", w.path().roomM() * 1e3, "poses", w.steps().stream().map(s -> map(
            "lowest_above_rim_mm", s.lowestM() * 1e3, "turn_deg", Math.toDegrees(s.turnRad()), "tilt_deg",
            Math.toDegrees(s.tiltRad()),
            "toward_deg", s.towardDegrees())).toList())));
    m.split().ifPresent(s -> out.put("split", map(
        "joint", numbers(List.of(s.joint())), "first", s.first(), "second", s.second(), "first_kg", s.firstKg(), "second_kg",
            s.secondKg(),
        "solves", s.solves())));
    return out;
  }

  private Map<String, Object> supply() {
    Supply s = content.supply();
    Volumes v = s.volumes();
    Weights w = s.weights();
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("rock", s.rocks().stream().map(r -> map("kind", r.kind().word(), "pieces", r.pieces(), "dry_kg", r.dryKg())).toList());
    m.put("rock_kg_per_l", s.amount().kgPerL());
    m.put("rock_rule", s.amount().word());
    m.put("prices", s.bills().stream().map(b -> map(
        "what", b.what(), "rock", money(b.rock()), "starter", money(b.starter()), "total", money(b.total()))).toList());
    m.put("sand_kg", s.sandKg());
    m.put("salt_kg", s.saltKg());
    m.put("water_density_kg_m3", s.waterDensityKgM3());
    m.put("volumes_l", map("box", v.boxM3() * 1e3, "open_water", v.openWaterM3() * 1e3, "sand_water", v.sandWaterM3() * 1e3,
        "pore_water", v.poreWaterM3() * 1e3, "water", v.waterM3() * 1e3, "rock_solid", v.rockSolidM3() * 1e3,
        "sand_grains", v.sandGrainsM3() * 1e3, "floor", v.floorM3() * 1e3, "devices", v.devicesM3() * 1e3));
    m.put("weights_kg", map("glass", w.glassKg(), "water", w.waterKg(), "rock", w.rockKg(), "sand", w.sandKg(), "floor",
        w.floorKg(),
        "dry", w.dryKg(), "filled", w.filledKg()));
    m.put("footprint_load_kg_m2", w.perFootprintKgM2());
    s.floor().ifPresent(f -> m.put("floor", floor(f)));
    return m;
  }

  private Map<String, Object> floor(FloorCuts f) {
    return map("length_mm", f.lengthMm(), "width_mm", f.widthMm(), "panel_length_mm", f.panelLengthMm(), "panel_width_mm",
        f.panelWidthMm(),
        "panels", f.panels().size(), "fewest", f.fewest(), "waste_m2", f.wasteM2(),
        "pieces", f.pieces().stream().map(p -> map("x_mm", p.xMm(), "y_mm", p.yMm(), "length_mm", p.lengthMm(), "width_mm",
            p.widthMm())).toList(),
        "cut_outs", f.cutOuts().stream().map(o -> map(
            "device", o.device(), "x_mm", o.xMm(), "y_mm", o.yMm(), "length_mm", o.lengthMm(), "width_mm",
                o.widthMm())).toList());
  }

  private static Object money(OptionalDouble v) {
    return v.isPresent() ? (Object) v.getAsDouble() : null;
  }

  private static List<Double> list(Vec3 v) {
    return List.of(v.x(), v.y(), v.z());
  }

  private static Map<String, Object> map(Object... pairs) {
    Map<String, Object> m = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) m.put((String) pairs[i], pairs[i + 1]);
    return m;
  }
}
