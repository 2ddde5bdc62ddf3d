package holdfast.engine.pane;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Scenes without rocks, and feet set down by hand. */
final class PaneScenes {
  static final Floor BARE = new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty());
  static final Floor SHEET = new Floor(Floor.Kind.SHEET, 12.7, 0, 6, 0, Optional.empty());

  private PaneScenes() {}

  static Tank tank(Tank.BottomSupport support, double bottomMm) {
    return new Tank(740, 440, 590, 8, bottomMm, support, false, false, List.of(), List.of(), List.of());
  }

  static Scene scene(Tank tank, Floor floor, double levelMm) {
    return new Scene("pane", tank, floor, new Scene.Sand(0, 1.5), new Scene.Water(levelMm, 35, 25), List.of(), List.of(),
        List.of(), List.of(), List.of(), Settings.DEFAULT);
  }

  /** A regular pentagon standing on the floor. */
  static FootLoad foot(String rock, Floor floor, double xM, double yM, double radiusM, double leastN, double mostN) {
    List<Vec3> polygon = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      double a = 2 * Math.PI * i / 5;
      polygon.add(new Vec3(xM + radiusM * Math.cos(a), yM + radiusM * Math.sin(a), 1e-3 * floor.topMm()));
    }
    return new FootLoad(rock, polygon, leastN, mostN, true);
  }

  /** Filled as given, dry at 1.6 and drained at 2 times the forces. */
  static PaneLoad load(double weightN, FootLoad... feet) {
    Map<LoadCase, PaneLoad.Case> cases = new EnumMap<>(LoadCase.class);
    cases.put(LoadCase.FILLED, times(1, weightN, feet));
    cases.put(LoadCase.DRY, times(1.6, weightN, feet));
    cases.put(LoadCase.DRAINED, times(2, weightN, feet));
    return new PaneLoad(cases, Optional.of(new PaneLoad.HeldRock("table slab", 7.4)));
  }

  private static PaneLoad.Case times(double factor, double weightN, FootLoad... feet) {
    List<FootLoad> scaled = new ArrayList<>();
    for (FootLoad f : feet) {
      double most = f.bounded() ? factor * f.mostN() : f.mostN();
      scaled.add(new FootLoad(f.rock(), f.polygon(), factor * f.leastN(), most, f.bounded()));
    }
    return new PaneLoad.Case(scaled, factor * weightN, true);
  }
}
