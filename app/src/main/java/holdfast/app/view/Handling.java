package holdfast.app.view;

import holdfast.engine.gap.DeadWater;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.util.List;

/** What is measured for the drawings of single findings only: the pieces that go in and out, pockets of dead water. */
record Handling(List<Piece> pieces, List<Hollow> hollows) {
  static Handling of(Scene scene, Shapes shapes) {
    List<PlacedRock> placed = shapes.placed();
    List<DeadWater.Pocket> pockets = DeadWater.of(
        scene, placed.stream().map(p -> p.rock().name()).toList(), placed.stream().map(PlacedRock::lobes).toList());
    return new Handling(Piece.all(scene, placed), pockets.stream().map(Hollow::of).toList());
  }
}
