package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckReport.PushLine;
import holdfast.engine.statics.heap.State;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshResult;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * The box 100 x 100 x 200 mm of 4 kg through the whole check: bare floor, friction 0.6, supports not drawn in, pushed
 * along its centre line at 0.9 of its height. Derived: it tips about an edge at W b / (2 y).
 */
class SubmergedBoxTest {
  private static final double B = 0.1;
  private static final double Y = 0.18;

  /** 25 degrees on the scale of 1968, that of the equation of state's check value, on the scale of 1990. */
  private static final double DEGREES_C = 25 / 1.00024;

  private static Scene scene(double levelMm) {
    Tank tank = new Tank(900, 600, 600, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    Rock box = new Rock("box", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 100, 100, 200, 1), new Rock.BulkDensity(2), 0,
        false, false, OptionalDouble.empty());
    Settings settings = Settings.DEFAULT.with(Setting.CONTACT_INSET_MM, 0).with(Setting.PUSH_OFFSET, 0)
        .with(Setting.FRICTION_ROCK_GLASS, 0.6);
    return new Scene("one box", tank, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()), new Scene.Sand(0, 1.5),
        new Scene.Water(levelMm, 35, DEGREES_C), List.of(), List.of(), List.of(box),
        List.of(new Placement("box", new Vec3(450, 300, 0), Quat.IDENTITY, false)), List.of(), settings);
  }

  private static List<PushLine> rose(double levelMm) {
    Scene scene = scene(levelMm);
    Shapes shapes = Shapes.of(scene, file -> new MeshResult.Unreadable("none"));
    return Check.run(scene, shapes, new CheckOptions(1, CheckOptions.Pushes.ROSES, 0, 1, true)).rocks().get(0).rose();
  }

  private static void bears(List<PushLine> rose, double weightN) {
    assertThat(rose).hasSize(16);
    for (PushLine p : rose) {
      // The far edge, or corner, along the push: b / 2 over the larger of cosine and sine. Sliding begins at 0.6 W.
      double rad = Math.toRadians(p.degrees());
      double tips = weightN * B / (2 * Y) / Math.max(Math.abs(Math.cos(rad)), Math.abs(Math.sin(rad)));
      assertThat(p.marginN()).as("%s degrees", p.degrees()).isCloseTo(Math.min(tips, 0.6 * weightN), within(1e-6));
    }
  }

  @Test
  void dryItTipsAtTheEdge() {
    bears(rose(0), 4 * 9.81);
    assertThat(4 * 9.81 * B / (2 * Y)).isCloseTo(10.9, within(1e-9));
  }

  @Test
  void underWaterItTipsUnderItsSubmergedWeight() {
    // Sea water of 35 at 25 degrees: 1023.34306 kg/m3, UNESCO Technical Papers in Marine Science 44 (1983) (published).
    // Mineral 2780 kg/m3; pores flood.
    List<PushLine> rose = rose(450);
    assertThat(rose).allMatch(p -> p.state() == State.FILLED);
    bears(rose, 4 * 9.81 * (1 - 1023.34306 / 2780));
  }
}
