package holdfast.app.report.sheet;

import holdfast.app.report.Units;
import holdfast.engine.build.Batches;
import holdfast.engine.build.BuildOrder.Help;
import holdfast.engine.build.BuildOrder.Stage;
import holdfast.engine.build.BuildPlan;
import holdfast.engine.build.Modules;
import holdfast.engine.build.Modules.Module;
import holdfast.engine.supply.Supply;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * The days around the build as numbered steps, each with its caution beside it. Every figure is worked out from the scene;
 * what is common practice says so.
 */
final class DaySteps {
  /** Sand rinsed at a time, kilograms (trade pages: 5 to 7 kg). */
  private static final double RINSE_KG = 6;

  /** Litres poured in a minute, by bucket or a small pump (common practice). */
  private static final double POUR_L_MIN = 10;

  /** Least room from waterline to rim, millimetres (common practice: a hand and a wave must not spill). */
  private static final double FREEBOARD_MM = 20;

  private static final String CEMENT =
      "Wet cement burns skin and eyes, and the pain comes late: waterproof gloves, goggles, a dust mask for the powder; wash at"
          + " once. Glue and putty by their makers' sheets, with fresh air.";

  private final SheetContent content;
  private final Figures f;
  private final List<Step> steps = new ArrayList<>();

  private DaySteps(SheetContent content, Figures figures) {
    this.content = content;
    this.f = figures;
  }

  /**
   * One step.
   *
   * @param caution what can go wrong or hurt; empty when nothing can
   */
  record Step(int number, String title, String text, String caution) {}

  static List<Step> of(SheetContent content, Figures figures) {
    return new DaySteps(content, figures).write();
  }

  private void add(String title, String text, String caution) {
    steps.add(new Step(steps.size() + 1, title, text, caution));
  }

  private List<Step> write() {
    tankAndFloor();
    if (!content.rocks().isEmpty()) {
      dryFit();
      bench();
      if (content.plan().sandBefore() == 0) sand();
      place();
    }
    if (content.plan().sandBefore() != 0) sand();
    water();
    livingRock();
    firstDays();
    return List.copyOf(steps);
  }

  private void tankAndFloor() {
    Scene s = content.scene();
    Tank t = s.tank();
    double boxL = content.supply().volumes().boxM3() * 1e3;
    add("Level and leak test",
        "Set the stand level both ways, lay the tank's own underlay, put the tank on it. Fill it with fresh water to "
            + f.mm(s.water().levelMm()) + " (" + f.litres(boxL) + "), dry the outside, leave it for two days with paper under the"
            + " seams (common practice), then drain it fully.",
        "Full, it will weigh " + f.kg(content.supply().weights().filledKg()) + ", "
            + f.load(content.supply().weights().perFootprintKgM2())
            + " on its footprint, stand not counted. Let a structural engineer judge the floor if in doubt. Follow the maker of"
            + " the tank on underlay and support (" + support(t) + ").");
    Floor floor = s.floor();
    if (floor.kind() == Floor.Kind.BARE) {
      boolean sand = !content.rocks().isEmpty() && content.feet().isEmpty();
      add("Bare bottom", sand ? "Wipe the bottom pane clean. No rock stands on the glass here: all of it stands on sand, which"
          + " diggers move." : "Wipe the bottom pane clean of every grain: rock stands on the glass itself.",
          "A grain under a stone is a point load on glass. A grid or sheet beneath spreads it.");
      return;
    }
    Floor.Extent e = floor.extentIn(t);
    add("Floor panel",
        "Cut the " + (floor.kind() == Floor.Kind.GRID ? "louvre grid" : "sheet") + " as drawn under Floor panel ("
            + f.size(e.lengthMm(), e.widthMm())
            + " in all), file the edges, wipe the bottom pane clean and lay it " + f.mm(e.xMm()) + " from the left pane and "
            + f.mm(e.yMm()) + " from the front pane. Cells are counted from its front-left corner.",
        "No grit beneath it. Side cutters throw splinters: goggles.");
  }

  private static String support(Tank t) {
    return switch (t.bottomSupport()) {
      case EDGES -> "given here as borne by its edges";
      case FULL -> "given here as borne all over";
      case UNKNOWN -> "not given here";
    };
  }

  private void dryFit() {
    int n = content.plan().order().stages().size();
    long held = content.plan().order().stages().stream().filter(st -> !st.stands()).count();
    add("Dry fit",
        "Lay the full-size footprint where the rock will stand, or count cells. Set the " + n + (n == 1 ? " rock" : " rocks")
            + " in the order of the stage pictures, without cement. Turn each until its arrow points to the front. Wiggle every"
            + " rock as it goes on, and when all stand push the top gently from every side. Measure the gaps to the panes "
            + "against page 1." + (content.rocks().stream().anyMatch(r -> r.stage() == 0)
            ? " Living rock that comes later is out of its water only to be tried for a moment." : ""),
        held == 0 ? "Keep fingers out from under. Work over a board, not over the glass, until you trust the heap."
            : held + (held == 1 ? " stage does" : " stages do")
            + " not stand by itself: a second person holds, or a prop does, as the picture says.");
    add("Check again",
        "A rock that does not sit as drawn changes the answer. Put what you measured into the scene and run the check again "
            + "before"
            + " anything is fixed.", verdictCaution());
    add("Photographs and marks",
        "Chalk on every rock an arrow to the front and its stage number" + (content.joints().isEmpty() ? ""
            : ", and on both sides of each joint its number")
            + ". Photograph every joint from two sides, and the whole from each pane. A heap taken apart is never put back "
            + "the same without them.",
        "");
  }

  private String verdictCaution() {
    return content.check().map(c -> "Verdict when this sheet was made: " + f.units().prose(c.headline()))
        .orElse("This sheet was made without a check of the layout. Run it first.");
  }

  private void bench() {
    BuildPlan plan = content.plan();
    List<SheetContent.JointLine> here = joints(JointSpec.MadeIn.BENCH);
    if (here.isEmpty()) return;
    StringBuilder text = new StringBuilder(count(here.size(), "joint", "joints") + " in the order of the schedule, each rock set"
        + " as the pictures show." + work(here, plan.batches()));
    List<String> living = livingFixedOnBench();
    if (!living.isEmpty()) {
      text.append(" ").append(String.join(", ", living)).append(living.size() == 1 ? ", living rock, is" : ", living rock, are")
          .append(" out of the water for ").append(Figures.span(plan.batches().livingOutMin()))
          .append(" of work and until the joint bears: keep it under wet cloth and spray it.");
    }
    add(joints(JointSpec.MadeIn.TANK).isEmpty() ? "Fix the joints" : "Fix the joints of the bench", text.toString(), CEMENT);
    if (here.stream().noneMatch(k -> k.spec().bond() == JointSpec.Bond.MORTAR)) return;
    add("Soak and test",
        "Soak the cured pieces in fresh water and change it every day or two. Test the soak water before each change: it may"
            + " start above pH 11. Go on until it stays near that of your tap water for two days, often 2 weeks and more (common"
            + " practice)." + (living.isEmpty() ? "" : " What carries living rock (" + String.join(", ", living)
            + ") soaks in salt water of the tank's salinity instead, moved by a pump and changed every day."),
        "Fresh cement in a stocked tank raises its pH and kills. No animal goes in before the soak water is proved."
            + (living.isEmpty() ? "" : " What lives on rock beside fresh mortar may die: putty or gel in the tank spares it."));
  }

  private List<SheetContent.JointLine> joints(JointSpec.MadeIn where) {
    return content.joints().stream().filter(k -> k.spec().madeIn() == where).toList();
  }

  private static String count(int n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }

  /** Batches, pastes, rods, time and waits of some joints. */
  private String work(List<SheetContent.JointLine> joints, Batches b) {
    Settings settings = content.scene().settings();
    StringBuilder text = new StringBuilder();
    if (!b.batches().isEmpty()) {
      text.append(" Mix ").append(count(b.batches().size(), "batch", "batches")).append(" of mortar, ")
          .append(f.gramsTogether(b.batches().stream().map(Batches.Batch::powderG).toList()))
          .append(" of powder in all, each used within ")
          .append(Figures.span(settings.get(Setting.CEMENT_WORKING_MIN)))
          .append(". Wet the rock first, never add water to a batch that stiffens.");
    }
    if (b.putty() > 0) text.append(" Knead ").append(f.ml(b.putty())).append(" of putty as you need it.");
    if (b.gel() > 0) text.append(" ").append(f.ml(b.gel())).append(" of gel.");
    if (b.rods() > 0) text.append(" Drill for ").append(count(b.rods(), "rod.", "rods."));
    text.append(" From the first rock to the last joint about ").append(Figures.span(b.workMin())).append(", waits included.");
    boolean mortar = joints.stream().anyMatch(k -> k.spec().bond() == JointSpec.Bond.MORTAR);
    boolean putty = joints.stream().anyMatch(k -> k.spec().bond() == JointSpec.Bond.PUTTY || k.spec().rodGlued());
    if (mortar) {
      text.append(" Mortar bears its own weight after ").append(Figures.hours(settings.get(Setting.CEMENT_HANDLING_H)))
          .append(" and counts as strong after ").append(Figures.days(settings.get(Setting.CEMENT_CURE_DAYS)))
          .append("; keep it damp until then (common practice; the maker's sheet goes before).");
    }
    if (putty) text.append(" Putty bears after ").append(Figures.hours(settings.get(Setting.PUTTY_CURE_H))).append(".");
    return text.toString();
  }

  private List<String> livingFixedOnBench() {
    return content.plan().modules().stream().filter(m -> m.rocks().size() > 1).flatMap(m -> m.rocks().stream())
        .filter(this::lives).toList();
  }

  private boolean lives(String rock) {
    return content.scene().rock(rock).map(r -> r.kind() == Rock.Kind.LIVE).orElse(false);
  }

  private int stagesBeforeFilling() {
    return Math.min(content.plan().wetFrom(), content.plan().tankOrder().stages().size());
  }

  private void place() {
    BuildPlan plan = content.plan();
    List<Module> modules = plan.modules();
    int dry = stagesBeforeFilling();
    if (dry == 0) return;
    StringBuilder text = new StringBuilder("Carry in ");
    text.append(count(dry, "piece", "pieces")).append(" in the order of the pictures");
    if (plan.sandBefore() >= 0 && plan.sandBefore() < dry) {
      text.append(plan.sandBefore() == 0 ? ", once the sand is laid: they stand on it"
          : ": " + plan.sandBefore() + " before the sand, the rest when it is laid, for they stand on it");
    }
    text.append(". ");
    Module heaviest = modules.stream().reduce((a, c) -> a.drainedKg() >= c.drainedKg() ? a : c).orElseThrow();
    text.append("The heaviest is ").append(String.join(" + ", heaviest.rocks())).append(": ").append(f.kg(heaviest.drainedKg()))
        .append(" drained, ").append(heaviest.lift().words()).append(". ");
    if (content.demands().lifts().stream().anyMatch(l -> !l.holds())) {
      text.append("Hold pieces only where the pictures say: some joints do not bear their piece by any rock. ");
    }
    for (int i = 0; i < modules.size(); i++) {
      if (modules.get(i).passes()) continue;
      text.append(String.join(" + ", modules.get(i).rocks())).append(content.wayOf(i).isPresent()
          ? " must be turned part way through the opening: see its page, and take it in first. "
          : " was not found to pass the opening in one piece: see Modules. ");
    }
    int asked = (int) plan.tankOrder().stages().stream().filter(st -> st.help() == Help.HAND).count();
    if (asked > 0) text.append(count(asked, "stage needs", "stages need")).append(" a second pair of hands. ");
    text.append("Then check every gap again with the cleaner itself.");
    boolean hard = modules.stream().anyMatch(m -> m.lift() != Modules.Lift.ONE);
    add("Place the rock", text.toString(),
        hard ? "Two people, dry gloves that grip, nothing on the floor to trip on. A slipped stone breaks the bottom pane: keep a"
            + " board over the glass until the stone stands."
            : "Lift with the stone close to the body. A slipped stone breaks the bottom pane: keep a board over the glass until"
            + " the stone stands.");
    tankJoints(dry);
  }

  /** Joints that are made in the tank before filling. */
  private void tankJoints(int dry) {
    List<Integer> made = new ArrayList<>();
    for (int i = 0; i < dry; i++) made.addAll(content.plan().tankOrder().stages().get(i).joints());
    List<SheetContent.JointLine> here = content.joints().stream().filter(k -> made.contains(k.index())).toList();
    if (here.isEmpty()) return;
    boolean mortar = here.stream().anyMatch(k -> k.spec().bond() == JointSpec.Bond.MORTAR);
    boolean living = here.stream().anyMatch(k -> lives(k.spec().a()) || lives(k.spec().b()));
    add("Fix the joints in the tank",
        "Make " + content.jointWords(made) + " as the pieces come to stand." + work(here, content.plan().tankBatches())
            + (mortar ? " Then soak it where it stands: fill with fresh water, test its pH, drain, and again until it stays near"
            + " that of your tap water for two days (common practice)." : ""),
        CEMENT + (mortar && living ? " Living rock does not outlast that soak: fix it with putty or gel after filling instead."
            : ""));
  }

  private void sand() {
    Scene s = content.scene();
    Supply supply = content.supply();
    double sand = supply.sandKg();
    if (sand > 0) {
      int portions = (int) Math.ceil(sand / RINSE_KG - 1e-9);
      add("Sand",
          "Rinse " + f.kg(sand) + " of sand in " + portions + (portions == 1 ? " portion" : " portions") + " of at most "
              + f.kg(RINSE_KG)
              + ", each until the water runs clear, often 5 to 10 changes (common practice). Lay it by the scoop round the "
              + "feet, never"
              + " poured from the bag, and level it at " + f.mm(s.sand().depthMm()) + ".",
          "Live sand is not rinsed. " + (content.plan().onSand().isEmpty()
              ? "Rock stands on the floor, not on the sand: nothing may be pushed up by it."
              : "Here rock stands on the sand: lay and level it before that rock, bed the rock by turning it to and fro, and know"
              + " that diggers undermine it."));
    }
  }

  /** As a hydrometer tells it: grams to the litre, or against fresh water as warm. */
  private String density(double kgM3, double celsius) {
    return f.units() == Units.METRIC ? Math.round(kgM3) + " g/L"
        : "specific gravity " + Units.fixed(kgM3 / SeaWater.densityKgM3(0, celsius), 3, RoundingMode.HALF_EVEN);
  }

  private void water() {
    Scene s = content.scene();
    Supply supply = content.supply();
    double waterL = supply.volumes().waterM3() * 1e3;
    add("Mix the water",
        "Mix " + f.litres(waterL) + " ahead in clean tubs: " + f.kg(supply.saltKg())
            + " of salt mix into purified water, stirred by a pump for 4 to"
            + " 24 h (common practice), heated to " + temperature(s) + ". Check for a salinity of "
            + trim(s.water().salinity()) + ": " + density(supply.waterDensityKgM3(), s.water().temperatureC())
            + " at that temperature. Buy a tenth more salt than that.",
        "Salt goes into the tub, not onto rock or sand. Pumps and heaters: residual-current protection, drip loops, unplugged "
            + "before hands go in.");
    boolean bare = content.rocks().isEmpty();
    double fillMin = waterL / POUR_L_MIN;
    double out = content.plan().tankBatches().livingOutMin();
    String living = out == 0 ? ""
        : " By this plan living rock is out of water for " + Figures.span(out + fillMin) + " now: " + Figures.span(out)
        + " of work and " + Figures.span(fillMin) + " of filling. Keep it under wet cloth and spray it.";
    add("Fill",
        "Pour onto a plate " + (bare ? "" : "or over the rock, ") + "slowly, about " + f.litres(POUR_L_MIN) + " a minute: "
            + Figures.span(fillMin) + " in all. " + (bare ? "Fill to "
            : "Stop at three quarters, look whether a rock has moved or sand has been washed from a foot, then fill to ")
            + f.mm(s.water().levelMm()) + "." + living,
        bare ? "" : "Rock above the water weighs more than rock below it: the check counts the half-full states, so do not dig or"
            + " push now.");
    double free = s.tank().heightMm() - s.water().levelMm();
    add("Waterline",
        "The waterline is " + f.mm(free) + " below the rim. Mark it. Water that goes is replaced with fresh water, about one "
            + "part in a hundred a"
            + " day (common practice).",
        free < FREEBOARD_MM ? "Under " + f.mm(FREEBOARD_MM) + " of room: an arm in the tank will make it spill."
            : "An arm in the tank lifts the level: go in slowly.");
  }

  /** What goes in when the tank is full. */
  private void livingRock() {
    BuildPlan plan = content.plan();
    int stages = plan.tankOrder().stages().size();
    if (plan.wetFrom() >= stages) return;
    List<String> names = new ArrayList<>();
    List<Integer> made = new ArrayList<>();
    for (int i = plan.wetFrom(); i < stages; i++) {
      names.addAll(plan.tankRocks(i));
      made.addAll(plan.tankOrder().stages().get(i).joints());
    }
    add("Living rock",
        "When salinity and temperature stand: set " + String.join(", ", names) + " in the order of the pictures, from bucket to"
            + " tank without a rest." + (made.isEmpty() ? "" : " Fix " + content.jointWords(made)
            + " under water with fresh putty or gel, pressed into both faces. Hold it until it grips, do not load it for "
            + Figures.hours(content.scene().settings().get(Setting.PUTTY_CURE_H)) + ".")
            + " Each is out of the water for at most " + Figures.span(plan.tankBatches().wetMin()) + " by this plan, or "
            + "not at all if it is fixed under water.",
        "Salt water on bare hands and electricity: pumps and heaters unplugged. Living rock can bite and sting: gloves.");
  }

  private String temperature(Scene s) {
    String celsius = trim(s.water().temperatureC()) + " °C";
    String fahrenheit = Math.round(s.water().temperatureC() * 1.8 + 32) + " °F";
    return f.units() == Units.METRIC ? celsius + " (" + fahrenheit + ")" : fahrenheit + " (" + celsius + ")";
  }

  private static String trim(double v) {
    return Units.fixed(v, v == Math.rint(v) ? 0 : 1, RoundingMode.HALF_EVEN);
  }

  private void firstDays() {
    add("The first days",
        "Normal: clouded water for one to three days, a skimmer that overflows while cement, sand and hands wash off, fine "
            + "bubbles on rock,"
            + " a brown film in the second week (common practice).",
        "Not normal: a rock that has moved, a level that falls faster than by evaporation, a smell of rot, pH above 8.6, a "
            + "tingle in the"
            + " fingers. Then: power off at the socket first, find the cause, drain if in doubt.");
    add("Cycle",
        "Feed the filter, test ammonia and nitrite every few days. Both stay at nought for a week before the first animal, "
            + "often after 2"
            + " to 6 weeks (common practice). " + (content.hasLiving()
            ? "Living rock shortens it and does not replace the tests." : content.rocks().isEmpty() ? ""
            : "Dry rock needs bottled bacteria or patience."),
        content.rocks().isEmpty() ? "" : "Check every rock by hand again before diggers or urchins come in.");
  }

  /** What a stage asks of the builder, in words; stages count from 1 for people. */
  static String help(Stage stage, double waitH, String unit) {
    if (stage.until() < 0) return "Does not stand, and nothing was found that would hold it: do not build this.";
    return switch (stage.help()) {
      case NONE -> "Stands by itself.";
      case HAND -> "Does not stand yet: hold it until the " + unit + " of stage " + (stage.until() + 1) + " is on.";
      case PROP -> stage.curedHere()
          ? "Does not stand: prop it for " + Figures.hours(waitH) + ", until its joints have set."
          : "Does not stand: prop it until the joints of stage " + (stage.until() + 1) + " have set.";
    };
  }
}
