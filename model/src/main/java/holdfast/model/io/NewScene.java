package holdfast.model.io;

import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.List;

/** Scenes to begin with: a tank with its water and floor grid, and no rock yet. */
public final class NewScene {
  private NewScene() {}

  /** A tank of a common size, looked at from the front. */
  public static Scene of(TankSize size) {
    Tank tank = new Tank(size.lengthMm(), size.widthMm(), size.heightMm(), size.glassMm(), size.glassMm(), size.support(),
        false, false, List.of(), List.of(Side.FRONT), List.of());
    return of("tank " + size.name(), tank);
  }

  /** Any tank, filled to 25 mm below the rim with sea water at 25 degrees. */
  public static Scene of(String name, Tank tank) {
    Scene.Water water = new Scene.Water(tank.heightMm() - SceneKeys.WATER_BELOW_RIM_MM,
        SceneKeys.SALINITY.initial().orElseThrow(), SceneKeys.TEMPERATURE.initial().orElseThrow());
    return new Scene(name, tank, Floor.DEFAULT, Scene.Sand.DEFAULT, water, List.of(), List.of(), List.of(), List.of(), List.of(),
        Settings.DEFAULT);
  }
}
