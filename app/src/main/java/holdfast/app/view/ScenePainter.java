package holdfast.app.view;

import holdfast.app.report.JointNumbers;
import holdfast.app.report.sheet.PaperNames;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Cut;
import holdfast.app.view.draw.Legends;
import holdfast.app.view.draw.Lettering;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Looks;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Renderer;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.app.view.gl.Target;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import holdfast.model.shape.Shapes;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/** Puts the picture together: the scene, the drawings of what was found, handles and lettering. */
final class ScenePainter {
  private final Workbench bench;
  private final Hands hands;
  private final Renderer renderer;
  private final Brush brush;
  private final JointsPage joints;
  private final Player player;
  private final Stages stages;
  private final Measured<Survey> survey;
  private final Measured<Handling> handling;

  ScenePainter(Workbench bench, Hands hands, Renderer renderer, Brush brush, JointsPage joints) {
    this.bench = bench;
    this.hands = hands;
    this.renderer = renderer;
    this.brush = brush;
    this.joints = joints;
    survey = new Measured<>(bench.chores());
    handling = new Measured<>(bench.chores());
    player = new Player(bench);
    stages = new Stages(bench);
  }

  Player player() {
    return player;
  }

  Stages stages() {
    return stages;
  }

  Optional<Survey> survey() {
    return survey.of(bench.document().revision());
  }

  private Optional<Handling> handling() {
    return handling.of(bench.document().revision());
  }

  // -- time ---------------------------------------------------------------------------------------------------------

  boolean tick(long now) {
    boolean redraw = player.tick(now);
    long revision = bench.document().revision();
    if (!hands.carrying()) {
      Scene scene = bench.scene();
      Supplier<Shapes> shapes = () -> bench.stones().shapes(scene);
      if (wantsSurvey()) survey.want(revision, shapes, s -> Survey.of(scene, s));
      if (wantsHandling()) handling.want(revision, shapes, s -> Handling.of(scene, s));
    }
    bench.judgement().want(rosed().map(Stone::name));
    stages.tick();
    return redraw;
  }

  private boolean wantsSurvey() {
    return bench.opened().isPresent() || has(Shown.Layer.JOINTS) || has(Shown.Layer.FEET) || has(Shown.Layer.GAPS)
        || has(Shown.Layer.LIGHT) || has(Shown.Layer.REACH);
  }

  private boolean wantsHandling() {
    return bench.opened().filter(f -> SceneMarksChoice.handling(f.code())).isPresent();
  }

  private boolean has(Shown.Layer l) {
    return bench.shown().has(l);
  }

  boolean moving() {
    return player.moving();
  }

  /** Everything that the picture depends on: equal states look the same. */
  Object state(int width, int height) {
    List<Object> s = new ArrayList<>();
    s.add(bench.document().revision());
    s.add(bench.sight().camera());
    s.add(bench.chosen());
    s.add(bench.hovered());
    s.add(bench.units());
    s.add(bench.mode());
    s.add(bench.found().map(f -> List.of(f.revision(), f.depth())));
    s.add(bench.judgement().rose());
    s.add(bench.judgement().roseLate());
    s.add(bench.opened().map(System::identityHashCode));
    for (Shown.Layer l : Shown.Layer.values()) s.add(has(l));
    s.add(bench.shown().cutWay());
    s.add(bench.shown().cutShare());
    s.add(hands.lit());
    s.add(hands.pulled());
    s.add(hands.carrying());
    s.add(hands.near());
    s.add(survey().isPresent());
    s.add(handling().isPresent());
    s.add(joints.open());
    s.add(player.state(bench.now()));
    s.add(stages.shown());
    s.add(stages.fresh());
    s.add(joints.wanted());
    s.add(width);
    s.add(height);
    return s;
  }

  // -- picture ------------------------------------------------------------------------------------------------------

  /** The picture of the window. */
  void paint(Target target) {
    paint(target, bench.sight().camera(), brush);
  }

  /** The same picture at a size of its own, seen from where one looks now. */
  BufferedImage picture(int width, int height) {
    float scale = PictureMaker.scaleFor(width, height);
    Camera c = bench.sight().camera();
    // What is in sight stays in sight: a picture that is narrower for its height steps back.
    double narrower = Math.max(1, bench.sight().aspect() * height / width);
    try (Lettering letters = new Lettering(scale); Brush own = new Brush(letters); Target target = new Target(width, height, 4)) {
      paint(target, c.zoomed(narrower), own);
      target.resolve();
      BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
      image.setRGB(0, 0, width, height, target.read(), 0, width);
      return image;
    }
  }

  /** A finished picture from a standard side, as the command makes it. */
  BufferedImage picture(PictureMaker.Wish wish) {
    try (PictureMaker maker = new PictureMaker()) {
      return maker.picture(bench.tableau(), wish);
    }
  }

  private void paint(Target target, Camera camera, Brush brush) {
    float scale = brush.scale();
    brush.within(target.width(), target.height());
    brush.call(PaperNames.of(bench.scene(), brush.letters()::draws)::written);
    Tableau tableau = player.on(bench.tableau(), bench.now());
    Projector eye = new Projector(camera, target.width(), target.height());
    Marks marks = new Marks();
    Optional<CheckReport> report = bench.report();
    if (!player.playing()) amongStones(marks, report);
    renderer.draw(target, tableau, camera, looks(), marks, scale);
    Legends legends = new Legends(brush, eye, bench.units());
    // What carries the bottom is drawn where the cells' numbers stand.
    boolean room = bench.shown().cutWay() == Shown.CutWay.NONE
        && bench.opened().filter(f -> SceneMarksChoice.plate(f.code())).isEmpty();
    if (has(Shown.Layer.CELLS) && room) legends.cells(bench.scene());
    if (has(Shown.Layer.WATER)) legends.water(bench.scene());
    legends.scale(target.width() - 20 * scale, target.height() - 18 * scale);
    if (!player.playing()) onTop(brush, eye, tableau, report);
    if (has(Shown.Layer.NAMES)) legends.names(tableau.stones());
    if (player.playing()) player.draw(brush, eye, bench.tableau(), bench.now());
    stages.draw(brush, eye, tableau);
    pull(brush, eye);
    if (!player.playing()) keys(brush, tableau, report).draw(16 * scale, 16 * scale);
    brush.paint(target.width(), target.height());
  }

  private Looks looks() {
    boolean stages = bench.mode() == Workbench.Mode.STAGES;
    Set<String> chosen = player.playing() ? Set.of() : stages ? this.stages.fresh() : bench.chosenNames();
    // Feet and pane lie under the stones: these are then seen through, and water and sand left out.
    Optional<Code> code = bench.opened().map(Finding::code);
    Optional<FindingMarks> own = player.playing() ? Optional.empty() : opened();
    boolean under = !player.playing() && (showsPane(code) || showsFeet(code) || own.filter(FindingMarks::under).isPresent());
    Set<String> faint = stages ? this.stages.notYet() : under ? allNames()
        : own.map(FindingMarks::standingBack).orElse(Set.of());
    return new Looks(has(Shown.Layer.WATER) && !stages && !under, has(Shown.Layer.SAND) && !under, has(Shown.Layer.GLASS),
        has(Shown.Layer.CELLS), cut(), chosen, bench.hovered(), faint, has(Shown.Layer.JOINTS));
  }

  private Set<String> allNames() {
    return bench.scene().placements().stream().map(p -> p.rock()).collect(java.util.stream.Collectors.toSet());
  }

  private Optional<Cut> cut() {
    Tank t = bench.scene().tank();
    double share = bench.shown().cutShare();
    return switch (bench.shown().cutWay()) {
      case NONE -> Optional.empty();
      case ACROSS -> Optional.of(new Cut(Vec3.X.negated(), -share * t.lengthMm() / 1e3));
      case ALONG -> Optional.of(new Cut(Vec3.Y.negated(), -share * t.widthMm() / 1e3));
      case LEVEL -> Optional.of(new Cut(Vec3.Z, share * t.heightMm() / 1e3));
    };
  }

  /** The drawings of the opened finding's own. */
  private Optional<FindingMarks> opened() {
    return bench.opened().map(f -> new FindingMarks(f, bench.scene(), handling(), bench.units()));
  }

  private void amongStones(Marks marks, Optional<CheckReport> report) {
    opened().ifPresent(o -> o.amongStones(marks));
    Optional<Code> code = bench.opened().map(Finding::code);
    if (showsPane(code)) {
      report.flatMap(CheckReport::pane).ifPresent(p -> MapMarks.pane(marks, p, bench.scene().floor().topMm() / 1e3));
    }
    survey().ifPresent(s -> {
      if (showsReach(code)) {
        MapMarks.reach(marks, bench.scene(), s.reach(), bench.scene().tank().viewedFrom());
      }
      if (has(Shown.Layer.JOINTS)) SceneMarks.patches(marks, s.joints(), Palette.JOINT.solid(0.35));
      if (showsFeet(code)) {
        SceneMarks.patches(marks, s.feet(), Palette.FORCE.solid(0.35));
        report.ifPresent(r -> SceneMarks.feet(marks, s.feet(), r));
      }
    });
  }

  private void onTop(Brush brush, Projector eye, Tableau tableau, Optional<CheckReport> report) {
    opened().ifPresent(o -> o.onTop(brush, eye, tableau));
    Optional<Code> code = bench.opened().map(Finding::code);
    survey().ifPresent(s -> {
      if (showsGaps(code)) {
        SceneMarks.gaps(brush, eye, s.gaps(), code.isPresent() || bench.chosen().isPresent() ? bench.chosen() : Optional.empty(),
            bench.units());
      }
      if (showsJoints(code)) {
        JointNumbers numbers = JointNumbers.of(bench.scene(), s.pairs());
        JointBadges.draw(brush, JointBadges.of(eye, s.joints(), numbers, brush.scale()), numbers, joints.wanted(), joints.open());
      }
      if (report.isPresent() && showsFeet(code)) {
        SceneMarks.feetWords(brush, eye, s.feet(), report.get(), bench.units());
      }
      if (showsLight(code)) {
        MapMarks.light(brush, eye, s.light(), tableau.stones());
      }
    });
    Optional<Stone> chosen = bench.chosenStone();
    if (chosen.isPresent()) {
      HeightMarks heights = new HeightMarks(brush, eye, bench.scene(), bench.units());
      if (code.filter(SceneMarksChoice::strike).isPresent()) heights.strike(chosen.get());
      bench.opened().ifPresent(f -> heights.of(f, chosen.get()));
    }
    if (chosen.isEmpty() || bench.mode() == Workbench.Mode.STAGES) return;
    weakest(report).ifPresent(w -> PushRose.draw(brush, eye, chosen.get(), w, sides(), bench.scene(), bench.units()));
    boolean free = bench.chosenPlacement().map(p -> !p.locked()).orElse(false);
    if (bench.mode() == Workbench.Mode.ARRANGE && free && hands.near()) {
      Handles.draw(brush, eye, chosen.get(), hands.lit());
    }
    if (hands.carrying()) HeldMark.draw(brush, eye, chosen.get(), bench.found());
  }

  /** The chosen rock, if its push rose is to be drawn. */
  private Optional<Stone> rosed() {
    Optional<Code> code = bench.opened().map(Finding::code);
    boolean wanted = has(Shown.Layer.ROSE) && !hands.carrying() && !code.filter(c -> !SceneMarksChoice.rose(c)).isPresent();
    return wanted && bench.mode() == Workbench.Mode.ARRANGE ? bench.chosenStone() : Optional.empty();
  }

  /** What the report says of the weakest side of that rock. */
  private Optional<CheckReport.PushLine> weakest(Optional<CheckReport> report) {
    return rosed().flatMap(s -> report.flatMap(r -> r.rocks().stream().filter(l -> l.name().equals(s.name())).findFirst()))
        .flatMap(CheckReport.RockLine::weakest);
  }

  /** Every side of it, once that is worked out. */
  private List<CheckReport.PushLine> sides() {
    return bench.judgement().rose().map(Judge.Rose::sides).orElse(List.of());
  }

  /** What the drawings on show mean. */
  private MapKeys keys(Brush brush, Tableau tableau, Optional<CheckReport> report) {
    MapKeys keys = new MapKeys(brush, bench.units());
    Optional<Code> code = bench.opened().map(Finding::code);
    if (showsPane(code)) report.flatMap(CheckReport::pane).ifPresent(keys::pane);
    if (weakest(report).isPresent()) keys.rose(bench.scene(), bench.judgement().roseLate());
    opened().ifPresent(o -> o.keys(keys));
    if (survey().isEmpty()) return keys;
    if (showsReach(code)) keys.reach(bench.scene());
    if (showsFeet(code) && report.isPresent()) keys.feet();
    if (showsGaps(code)) keys.gaps(code.isPresent() || bench.chosen().isPresent());
    if (showsJoints(code)) keys.joints();
    if (showsLight(code)) keys.light(survey().get().light().lamps());
    return keys;
  }

  private boolean showsPane(Optional<Code> code) {
    return has(Shown.Layer.PANE) || code.filter(SceneMarksChoice::pane).isPresent();
  }

  private boolean showsReach(Optional<Code> code) {
    return has(Shown.Layer.REACH) || code.filter(SceneMarksChoice::reach).isPresent();
  }

  private boolean showsFeet(Optional<Code> code) {
    return has(Shown.Layer.FEET) || code.filter(SceneMarksChoice::feet).isPresent();
  }

  private boolean showsGaps(Optional<Code> code) {
    return has(Shown.Layer.GAPS) || code.filter(SceneMarksChoice::gaps).isPresent();
  }

  private boolean showsJoints(Optional<Code> code) {
    return has(Shown.Layer.JOINTS) || code.filter(SceneMarksChoice::joints).isPresent();
  }

  private boolean showsLight(Optional<Code> code) {
    return has(Shown.Layer.LIGHT) || code.filter(SceneMarksChoice::light).isPresent();
  }

  private void pull(Brush brush, Projector eye) {
    hands.pulled().ifPresent(p -> {
      double j = p.impulseNs().norm();
      if (j < 1e-3) return;
      Projector.Spot tip = eye.spot(p.at());
      Projector.Spot tail = eye.spot(p.at().minus(p.impulseNs().times(1 / BumpWords.NS_PER_METRE)));
      brush.arrow(tail.x(), tail.y(), tip.x(), tip.y(), 4, Palette.FORCE);
      brush.tag(tail.x(), tail.y() - 18 * brush.scale(), BumpWords.inWords(j, bench.units()), Style.STRONG, Palette.INK,
          Palette.PANEL.solid(0.94));
    });
  }

  // -- input over the picture ---------------------------------------------------------------------------------------

  void panel(Layout at, Ui ui) {
    player.panel(at, ui);
    if (bench.mode() == Workbench.Mode.STAGES) stages.panel(at, ui);
  }

  /** The pointer is over what lies on the picture. */
  boolean overPanel(Layout at, Ui ui, double x, double y) {
    return player.hasSection() && SectionStrip.covers(at, ui, x, y);
  }

  void bump(Hands.Pulled p) {
    player.bump(p);
  }

  /** Opens the joint whose number is pressed; true when there was one. */
  boolean pressJoint(double x, double y, Projector eye) {
    if (!has(Shown.Layer.JOINTS) || survey().isEmpty()) return false;
    Survey s = survey().get();
    for (JointBadges.Badge b : JointBadges.of(eye, s.joints(), JointNumbers.of(bench.scene(), s.pairs()), brush.scale())) {
      if (Math.hypot(b.x() - x, b.y() - y) < 13 * brush.scale()) {
        joints.open(b.touch().a(), b.touch().b());
        return true;
      }
    }
    return false;
  }
}
