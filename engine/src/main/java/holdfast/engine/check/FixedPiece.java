package holdfast.engine.check;

import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What a scene fixes together, by bonds of any kind: it goes over, slides and is moved as one. */
final class FixedPiece {
  private FixedPiece() {}

  /** The rocks that are fixed to a rock, directly or by way of others, and itself, in the scene's order. */
  static List<String> of(Scene scene, String rock) {
    Set<String> piece = new LinkedHashSet<>(List.of(rock));
    List<JointSpec> left = new ArrayList<>(scene.joints().stream().filter(j -> j.bond() != JointSpec.Bond.NONE).toList());
    boolean more = true;
    while (more) {
      more = left.removeIf(j -> {
        boolean joins = piece.contains(j.a()) || piece.contains(j.b());
        if (joins) piece.addAll(List.of(j.a(), j.b()));
        return joins;
      });
    }
    return scene.rocks().stream().map(Rock::name).filter(piece::contains).toList();
  }

  /** "the piece of a, b and c"; the rock itself where nothing is fixed to it. */
  static String words(Scene scene, String rock) {
    List<String> piece = of(scene, rock);
    return piece.size() == 1 ? rock : "the piece of " + Draft.names(piece);
  }
}
