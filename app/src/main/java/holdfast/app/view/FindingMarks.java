package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The drawings that come with an opened finding alone, and that nothing on the Show page brings: what is lifted, what the
 * opening keeps out, what floats, dead water, the bottom pane as a plate.
 */
record FindingMarks(Finding finding, Scene scene, Optional<Handling> handling, Units units) {
  /** Metres: the arrows over a rock that floats, and how far to either side of its middle, by its size. */
  private static final double FLOAT_M = 0.08;
  private static final double ASIDE = 0.28;

  /** The stones hide it: they are seen through, and water and sand left out. */
  boolean under() {
    return SceneMarksChoice.hollow(finding.code()) || SceneMarksChoice.plate(finding.code());
  }

  /** Names of the stones that stand back, so that the piece is seen apart from them. */
  Set<String> standingBack() {
    if (piece().isEmpty()) return Set.of();
    Set<String> names = new HashSet<>();
    for (Placement p : scene.placements()) if (!finding.about().contains(p.rock())) names.add(p.rock());
    return names;
  }

  private Optional<Piece> piece() {
    if (!SceneMarksChoice.lift(finding.code()) && !SceneMarksChoice.opening(finding.code())) return Optional.empty();
    return handling.flatMap(s -> s.pieces().stream().filter(p -> p.module().rocks().equals(finding.about())).findFirst());
  }

  private Optional<PieceMarks> pieceMarks() {
    return piece().map(p -> new PieceMarks(scene, p, finding, units));
  }

  private Optional<HollowMarks> hollows() {
    return handling.filter(s -> SceneMarksChoice.hollow(finding.code()))
        .map(s -> new HollowMarks(scene, s.hollows(), finding, units));
  }

  private Optional<PlateMarks> plate() {
    return Optional.of(new PlateMarks(scene, finding, units)).filter(p -> SceneMarksChoice.plate(finding.code()));
  }

  void amongStones(Marks marks) {
    if (SceneMarksChoice.opening(finding.code())) pieceMarks().ifPresent(p -> p.opening(marks));
    hollows().ifPresent(h -> h.cells(marks));
    plate().ifPresent(p -> p.plate(marks));
  }

  void onTop(Brush brush, Projector eye, Tableau tableau) {
    if (SceneMarksChoice.lift(finding.code())) pieceMarks().ifPresent(p -> p.lift(brush, eye));
    boolean turned = finding.code() == Code.OPENING_TURN;
    if (SceneMarksChoice.opening(finding.code())) pieceMarks().ifPresent(p -> p.openingWords(brush, eye, turned));
    if (SceneMarksChoice.floats(finding.code())) floating(brush, eye, tableau.stones());
    hollows().ifPresent(h -> h.words(brush, eye));
    plate().ifPresent(p -> p.words(brush, eye));
  }

  /** Three arrows over the rock, and how much more the water lifts than the stone weighs. */
  private void floating(Brush brush, Projector eye, List<Stone> stones) {
    stones.stream().filter(s -> finding.about().contains(s.name())).findFirst().ifPresent(s -> {
      Vec3 top = new Vec3(s.centreInTank().x(), s.centreInTank().y(), s.high().z());
      double aside = ASIDE * Math.min(s.high().x() - s.low().x(), s.high().y() - s.low().y());
      for (int i = -1; i <= 1; i++) {
        Vec3 from = top.plusTimes(i * aside, eye.camera().right());
        Projector.Spot a = eye.spot(from);
        Projector.Spot b = eye.spot(from.plusTimes(FLOAT_M, Vec3.Z));
        if (!a.inFront() || !b.inFront()) return;
        brush.arrow(a.x(), a.y(), b.x(), b.y(), 4, Palette.FAIL);
        if (i == 0 && finding.figure().isPresent()) {
          brush.tagBehind(b.x(), b.y(), 0, -1, "lifted by " + Scale.load(-finding.figure().getAsDouble(), units), Style.STRONG);
        }
      }
    });
  }

  void keys(MapKeys keys) {
    if (SceneMarksChoice.lift(finding.code()) && piece().isPresent()) keys.lift(finding.severity());
    if (SceneMarksChoice.opening(finding.code()) && piece().isPresent()) keys.opening(scene);
    if (SceneMarksChoice.floats(finding.code())) keys.floats();
    if (hollows().isPresent()) keys.hollow(scene);
    if (plate().isPresent()) keys.plate(scene.tank().bottomSupport());
    if (SceneMarksChoice.amount(finding.code())) keys.amount(scene, finding);
  }
}
