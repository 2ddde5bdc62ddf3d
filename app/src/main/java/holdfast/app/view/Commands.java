package holdfast.app.view;

import holdfast.app.edit.Edit;
import holdfast.app.edit.Lowering;
import holdfast.app.report.SeverityLook;
import holdfast.app.view.draw.Stone;
import holdfast.engine.motion.SceneBodies;
import holdfast.engine.motion.Settle;
import holdfast.engine.motion.SettleJob;
import holdfast.engine.motion.SettleResult;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.shape.RockBody;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What buttons and keys do: each a few lines over the workbench. */
final class Commands {
  private static final double DUPLICATE_ASIDE_MM = 25.4;
  private final Workbench bench;
  private Optional<Sheets.Kind> sheet = Optional.empty();
  private Optional<Runnable> leaving = Optional.empty();
  private boolean quit;
  private Optional<Path> scanToAdd = Optional.empty();

  Commands(Workbench bench) {
    this.bench = bench;
  }

  // -- sheets -------------------------------------------------------------------------------------------------------

  Optional<Sheets.Kind> sheet() {
    return sheet;
  }

  void openSheet(Sheets.Kind kind) {
    sheet = Optional.of(kind);
  }

  void closeSheet() {
    sheet = Optional.empty();
  }

  void mode(Workbench.Mode m) {
    bench.setMode(m);
  }

  void quit() {
    leave(() -> quit = true);
  }

  /** Leaves the scene for something else; asks first when there is work that the file does not have. */
  private void leave(Runnable next) {
    leaving = Optional.of(next);
    if (bench.document().unsaved()) openSheet(Sheets.Kind.QUIT);
    else leaveAnyway();
  }

  /** Goes on with what was asked for. */
  void leaveAnyway() {
    Optional<Runnable> next = leaving;
    leaving = Optional.empty();
    next.ifPresent(Runnable::run);
  }

  void stay() {
    leaving = Optional.empty();
    closeSheet();
  }

  boolean wantsToQuit() {
    return quit;
  }

  // -- file ---------------------------------------------------------------------------------------------------------

  void save() {
    if (bench.filing().file().isEmpty()) {
      openSheet(Sheets.Kind.SCENES);
      bench.tell("Give the scene a file name, then save.", SeverityLook.NOTE);
      return;
    }
    save(false);
  }

  /** Saves; {@code over} writes over what somebody else has put into the file. */
  void save(boolean over) {
    try {
      if (bench.filing().save(bench.document(), over)) {
        bench.tell("Saved " + bench.filing().file().orElseThrow(), SeverityLook.FINE);
      }
      else openSheet(Sheets.Kind.CHANGED);
    } catch (IOException e) {
      bench.tell("Not saved: " + e.getMessage(), SeverityLook.FAIL);
    }
  }

  boolean saveAs(Path path) {
    try {
      bench.filing().saveAs(path, bench.document());
      bench.tell("Saved " + path, SeverityLook.FINE);
      return true;
    } catch (IOException e) {
      bench.tell("Not saved: " + e.getMessage(), SeverityLook.FAIL);
      return false;
    }
  }

  /** A file that was dropped on the window: a scan becomes a rock to be described, anything else is opened as a scene. */
  void dropped(Path path) {
    if (ScanFiles.isScan(path.getFileName().toString())) {
      scanToAdd = Optional.of(path);
      openSheet(Sheets.Kind.ADD_ROCK);
    } else {
      open(path);
    }
  }

  /** The scan that was dropped on the window since the last call. */
  Optional<Path> takeScan() {
    Optional<Path> s = scanToAdd;
    scanToAdd = Optional.empty();
    return s;
  }

  /** Opens a scene file; offers what an earlier run could not save. */
  boolean open(Path path) {
    return bench.filing().read(path).match(scene -> {
      leave(() -> {
        bench.show(scene, Optional.of(path));
        closeSheet();
        if (bench.filing().found().isPresent()) openSheet(Sheets.Kind.RESTORE);
      });
      return true;
    }, refused -> {
      bench.tell(refused.problems().get(0).rendered(), SeverityLook.FAIL);
      return false;
    });
  }

  /** A start without a scene: work that an earlier run could not save, or the choice of a tank. */
  void begin() {
    openSheet(bench.filing().found().isPresent() ? Sheets.Kind.RESTORE : Sheets.Kind.FIRST);
  }

  void startNew(Scene scene) {
    leave(() -> {
      bench.show(scene, Optional.empty());
      closeSheet();
    });
  }

  void restore() {
    bench.filing().found().ifPresent(f -> bench.takeBack(f.scene()));
    closeSheet();
  }

  void dropRescue() {
    try {
      bench.filing().forget();
    } catch (IOException e) {
      bench.tell("The side copy could not be removed: " + e.getMessage(), SeverityLook.WARN);
    }
    closeSheet();
  }

  // -- rocks --------------------------------------------------------------------------------------------------------

  /** Sets a rock of the tray down where there is most room, as near the middle as can be. */
  void setDown(String rock) {
    setDown(rock, bench.newGesture());
  }

  /** The same as a part of a gesture, such as adding the rock. */
  void setDown(String rock, long gesture) {
    bench.stones().update(bench.scene());
    Optional<RockBody> body = bench.stones().body(rock);
    if (body.isEmpty() || bench.scene().placement(rock).isPresent()) return;
    Scene s = bench.scene();
    List<Hull> others = hulls("");
    Vec3 best = null;
    double bestCost = Double.POSITIVE_INFINITY;
    for (int i = 1; i < 12; i++) {
      for (int j = 1; j < 6; j++) {
        Vec3 at = new Vec3(s.tank().lengthMm() * i / 12, s.tank().widthMm() * j / 6, 0);
        double z = restingMm(body.get().lobes(), at, Quat.IDENTITY, others, s);
        double aside = Math.hypot(at.x() - s.tank().lengthMm() / 2, at.y() - s.tank().widthMm() / 2);
        double cost = z + 0.25 * aside + (inside(body.get().lobes(), at, s) ? 0 : 1e4);
        if (cost < bestCost) {
          bestCost = cost;
          best = new Vec3(at.x(), at.y(), z);
        }
      }
    }
    if (bench.apply(new Edit.Place(rock, best, Quat.IDENTITY), gesture)) bench.choose(Optional.of(rock));
  }

  private static boolean inside(List<Hull> lobes, Vec3 atMm, Scene s) {
    return lobes.stream().allMatch(h ->
        1e3 * h.reach(Vec3.X) + atMm.x() < s.tank().lengthMm() && 1e3 * h.reach(Vec3.X.negated()) - atMm.x() < 0
            && 1e3 * h.reach(Vec3.Y) + atMm.y() < s.tank().widthMm() && 1e3 * h.reach(Vec3.Y.negated()) - atMm.y() < 0);
  }

  private static double restingMm(List<Hull> lobes, Vec3 atMm, Quat turn, List<Hull> others, Scene s) {
    double high = s.tank().heightMm() / 1e3 + 2;
    Pose p = new Pose(new Vec3(atMm.x() / 1e3, atMm.y() / 1e3, high), turn);
    double fall = Lowering.heightAbove(lobes.stream().map(h -> h.moved(p)).toList(), others, s.floor().topMm() / 1e3);
    return 1e3 * (high - fall);
  }

  private List<Hull> hulls(String without) {
    List<Hull> out = new ArrayList<>();
    for (Stone o : bench.tableau().stones()) {
      if (!o.name().equals(without)) for (Hull h : o.lobes()) out.add(h.moved(o.pose()));
    }
    return out;
  }

  /** Lets the chosen rock straight down onto whatever is below. */
  void drop() {
    Optional<Stone> s = bench.chosenStone();
    Optional<Placement> p = bench.chosenPlacement();
    if (s.isEmpty() || p.isEmpty()) return;
    double fall = Lowering.heightAbove(
        s.get().lobes().stream().map(h -> h.moved(s.get().pose())).toList(), hulls(s.get().name()),
        bench.scene().floor().topMm() / 1e3);
    if (fall < 0) {
      // It is inside something: it comes to lie on top.
      double z = restingMm(s.get().lobes(), p.get().atMm(), p.get().turn(), hulls(s.get().name()), bench.scene());
      bench.apply(new Edit.Move("drop", s.get().name(), new Vec3(p.get().atMm().x(), p.get().atMm().y(), z), p.get().turn()));
    } else {
      bench.apply(new Edit.Move("drop", s.get().name(), p.get().atMm().minus(Vec3.Z.times(1e3 * fall)), p.get().turn()));
    }
  }

  /** Lets the chosen rock find a rest on real contacts; everything else stays where it is. */
  void steadyRest() {
    Optional<Placement> p = bench.chosenPlacement();
    if (p.isEmpty() || p.get().locked()) return;
    String rock = p.get().rock();
    Scene scene = bench.scene();
    long revision = bench.document().revision();
    List<RockBody> bodies = List.copyOf(bench.stones().shapes(scene).bodies().values());
    bench.tellUntilDone("Looking for a steady rest for " + rock + "…");
    bench.chores().start(() -> {
      SettleJob job = SceneBodies.settleJob(scene, bodies);
      Set<String> still = new LinkedHashSet<>();
      scene.placements().forEach(q -> still.add(q.rock()));
      still.remove(rock);
      return Settle.settle(new SettleJob(job.bodies(), still, job.fixed(), List.of(), job.bondReachM(), job.friction()));
    }, result -> settled(result, rock, revision), why -> bench.tell("No rest was found: " + why, SeverityLook.WARN));
  }

  private void settled(SettleResult result, String rock, long revision) {
    if (bench.document().revision() != revision) {
      bench.tell("The scene was changed meanwhile: " + rock + " is left where it is.", SeverityLook.NOTE);
      return;
    }
    result.match(done -> {
      SettleResult.Move m = done.moves().stream().filter(x -> x.rock().equals(rock)).findFirst().orElseThrow();
      bench.apply(new Edit.Move("settle", rock, m.pose().at().times(1e3), m.pose().turn()));
      bench.tell(done.atRest() ? rock + " rests here." : rock + " did not come to rest; this is how far it got.",
          done.atRest() ? SeverityLook.FINE : SeverityLook.WARN);
      return null;
    }, none -> {
      bench.tell(none.reason(), SeverityLook.WARN);
      return null;
    });
  }

  void duplicate() {
    Optional<Rock> r = bench.chosenRock();
    if (r.isEmpty()) return;
    String name = freeName(bench.scene(), r.get().name());
    Rock copy = renamed(r.get(), name);
    List<Edit> edits = new ArrayList<>(List.of(new Edit.Add(copy)));
    bench.chosenPlacement().ifPresent(p ->
        edits.add(new Edit.Place(name, p.atMm().plus(new Vec3(DUPLICATE_ASIDE_MM, 0, 0)), p.turn())));
    if (bench.apply(new Edit.Together("duplicate " + r.get().name(), edits))) bench.choose(Optional.of(name));
  }

  /** The name with the next number that is free. */
  static String freeName(Scene s, String name) {
    String stem = name.replaceFirst(" \\d+$", "");
    for (int i = 2; ; i++) {
      String next = stem + " " + i;
      if (s.rock(next).isEmpty()) return next;
    }
  }

  static Rock renamed(Rock r, String name) {
    return new Rock(name, r.kind(), r.form(), r.mass(), r.sealedVolumeMl(), r.slimy(), r.removable(), r.pricePerKg());
  }

  void takeOut() {
    bench.chosenPlacement().ifPresent(p -> bench.apply(new Edit.TakeOut(p.rock())));
  }

  void remove() {
    bench.chosen().ifPresent(n -> bench.apply(new Edit.Remove(n)));
  }

  void lock() {
    bench.chosenPlacement().ifPresent(p -> bench.apply(new Edit.Lock(p.rock(), !p.locked())));
  }

  /** Moves the chosen rock by so many millimetres. */
  void nudge(double right, double back, double up) {
    bench.chosenPlacement().ifPresent(p ->
        bench.apply(new Edit.Move("move", p.rock(), p.atMm().plus(new Vec3(right, back, up)), p.turn())));
  }

  void turn(Vec3 axis, double degrees) {
    bench.chosenPlacement().ifPresent(p -> bench.chosenStone().ifPresent(s -> bench.apply(Hands.turned(s, p, axis, degrees))));
  }

  /** The next rock in the tank, or the one before. */
  void chooseNext(int step) {
    List<Placement> all = bench.scene().placements();
    if (all.isEmpty()) return;
    int at = -1;
    for (int i = 0; i < all.size(); i++) if (bench.chosen().filter(all.get(i).rock()::equals).isPresent()) at = i;
    int next = at < 0 ? 0 : Math.floorMod(at + step, all.size());
    bench.choose(Optional.of(all.get(next).rock()));
  }
}
