package holdfast.engine.bench;

import holdfast.engine.contact.Solid;
import holdfast.engine.motion.MotionBody;
import holdfast.engine.motion.MotionWorld;
import holdfast.engine.motion.MotionWorlds;
import holdfast.engine.motion.WorldOptions;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** Thirty rounded stones that have come to lie in a pit: one simulated second of the 3D engine. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class MotionBenchmark {
  private static final int STONES = 30;
  private static final double RADIUS_M = 0.05;
  private static final double DENSITY = 1800;
  private static final double FALL_S = 3;

  private MotionWorld world;

  @Setup
  public void setUp() {
    world = MotionWorlds.open(WorldOptions.of(WorldOptions.Friction.uniform(0.6))).match(w -> w, why -> {
      throw new IllegalStateException(why);
    });
    box(-0.4, -0.4, -0.1, 0.4, 0.4, 0);
    box(-0.5, -0.4, 0, -0.2, 0.4, 0.3);
    box(0.2, -0.4, 0, 0.5, 0.4, 0.3);
    box(-0.4, -0.5, 0, 0.4, -0.2, 0.3);
    box(-0.4, 0.2, 0, 0.4, 0.5, 0.3);
    Random random = new Random(1);
    for (int i = 0; i < STONES; i++) {
      Hull stone = stone(random);
      MassProperties m = Polyhedra.massProperties(stone);
      Vec3 at = new Vec3(0.12 * (i % 3 - 1), 0.12 * (i / 3 % 3 - 1), 0.07 + 0.12 * (i / 9));
      world.addBody(new MotionBody("stone " + i, Solid.Surface.ROCK, List.of(stone), DENSITY * m.volumeM3(), m.centre(),
          m.inertia().times(DENSITY), new Pose(at, Quat.IDENTITY)));
    }
    for (double t = 0; t < FALL_S; t += world.stepS()) world.step();
  }

  private void box(double x0, double y0, double z0, double x1, double y1, double z1) {
    List<Vec3> c = new ArrayList<>();
    for (double x : new double[] {x0, x1}) for (double y : new double[] {y0, y1}) for (double z : new double[] {z0, z1}) {
      c.add(new Vec3(x, y, z));
    }
    world.addFixed(new Solid("side", Solid.Surface.GLASS, true, List.of(hull(c))));
  }

  private static Hull stone(Random random) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      Vec3 d = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      p.add(d.times(RADIUS_M * (0.85 + 0.15 * random.nextDouble())));
    }
    return hull(p);
  }

  private static Hull hull(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> h, why -> {
      throw new IllegalStateException(why);
    });
  }

  @Benchmark
  public Object simulatedSecond() {
    for (double t = 0; t < 1 - 1e-9; t += world.stepS()) world.step();
    return world.pose(0);
  }

  @TearDown
  public void tearDown() {
    world.close();
  }
}
