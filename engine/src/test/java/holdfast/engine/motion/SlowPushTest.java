package holdfast.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.Solid;
import holdfast.engine.statics.LooseBlocksSolver;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.HeapAssembly;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.verification.PushRatios;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The engine's slow push against the statics' push margin, on towers of two to four boxes set askew. The two know nothing
 * of each other: the statics solve the balance of forces, the engine steps through time. Engines tip stacks a few degrees
 * early, so the engine's push should come out at or somewhat under the margin.
 */
class SlowPushTest {
  private static final double FRICTION = 0.6;

  /** One tower in both; empty where the statics find no margin to compare with. */
  static Optional<PushRatios.Line> compare(long seed) {
    Random random = new Random(seed);
    int n = 2 + random.nextInt(3);
    List<MotionBody> tower = new ArrayList<>();
    double z = 0;
    for (int i = 0; i < n; i++) {
      double height = 0.04 + 0.05 * random.nextDouble();
      double width = 0.14 - 0.02 * i;
      Quat turn = Quat.ofDegreesZyx(60 * random.nextDouble(), 0, 0);
      tower.add(TestBodies.box("s" + i, width, width * (0.7 + 0.3 * random.nextDouble()), height,
          TestBodies.at(0.015 * (random.nextDouble() - 0.5), 0.015 * (random.nextDouble() - 0.5), z + height / 2, turn)));
      z += height;
    }
    int number = random.nextInt(n);
    MotionBody pushed = tower.get(number);
    Vec3 at = PushPoint.of(pushed, 0.9);
    Vec3 toward = Vec3.heading(360 * random.nextDouble());
    OptionalDouble margin = margin(tower, pushed, at, toward);
    if (margin.isEmpty()) return Optional.empty();
    PlayJob job = PlayJob.dry(tower, List.of(TestBodies.floor()), WorldOptions.Friction.uniform(FRICTION)).withStepHz(240);
    OptionalDouble push = SlowPush.leastN(job, pushed.name(), at, toward, 0, 1.5 * margin.getAsDouble(), 0.02);
    return Optional.of(new PushRatios.Line(seed, n, number, margin.getAsDouble(), push.orElse(1.5 * margin.getAsDouble())));
  }

  /** The margin confirmed by staying, newtons. */
  private static OptionalDouble margin(List<MotionBody> tower, MotionBody pushed, Vec3 at, Vec3 toward) {
    List<Solid> solids = new ArrayList<>();
    List<Heap.Body> bodies = new ArrayList<>();
    List<Wrench> dead = new ArrayList<>();
    List<Wrench> live = new ArrayList<>();
    for (MotionBody b : tower) {
      Solid solid = b.solid(false);
      solids.add(solid);
      bodies.add(new Heap.Body(b.name(), b.centreInWorld(), solid.sizeM(), b.massKg()));
      double weight = b.massKg() * 9.81;
      dead.add(new Wrench(new Vec3(0, 0, -weight), Vec3.ZERO));
      live.add(b == pushed ? Wrench.of(toward.times(weight), at, b.centreInWorld()) : Wrench.ZERO);
    }
    solids.add(TestBodies.floor());
    Heap heap = new Heap(bodies, HeapAssembly.bearings(
        solids, ContactFinder.find(solids, ContactRules.DEFAULT).contacts(), (a, b) -> FRICTION, 0));
    OptionalDouble factor = LooseBlocksSolver.judge(heap, dead, Optional.of(live)).nonAssociative();
    return factor.isEmpty() ? factor : OptionalDouble.of(factor.getAsDouble() * pushed.massKg() * 9.81);
  }

  @Test
  void theEngineMovesNearTheMarginOfTheStatics() {
    for (long seed = 1; seed <= 4; seed++) {
      assertThat(compare(seed).orElseThrow().ratio()).as("seed %d", seed).isBetween(0.85, 1.05);
    }
  }

  /** The table on the page of outside values is that of fifty towers, and holds. */
  @Test
  void theKeptTableHolds() throws IOException {
    holds(PushRatios.read());
  }

  @Test
  @Tag("slow")
  void fiftyTowers() throws IOException {
    List<PushRatios.Line> lines = new ArrayList<>();
    for (long seed = 1; lines.size() < 50; seed++) compare(seed).ifPresent(lines::add);
    PushRatios ratios = new PushRatios(lines);
    if (Boolean.getBoolean("holdfast.verification.write")) ratios.write();
    holds(ratios);
  }

  private static void holds(PushRatios ratios) {
    double[] r = ratios.sorted();
    assertThat(r).hasSize(50);
    // The step of the bisection is 0.012; the few early ones creep, the few late ones topple too slowly to be seen in the time.
    assertThat(r[0]).isGreaterThan(0.85);
    assertThat(r[r.length / 10]).isGreaterThan(0.92);
    assertThat(r[r.length / 2]).isBetween(0.97, 1.03);
    assertThat(r[r.length - 1]).isLessThan(1.2);
  }
}
