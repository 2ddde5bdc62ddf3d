package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.statics.Balance;
import holdfast.engine.statics.ForceBalance;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.Margin;
import holdfast.engine.statics.Wrench;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Disabled;
import org.junit.jupiter.api.Test;

/** A known failure, kept so that it can be run. */
class BoundUnderTwistTest {
  @Test
  @Disabled("where joints twist, the factor of the force balance is a local maximum over the centres of pressure: here the heap "
      + "still stands 5 % above it, so 'at most' is too low. It errs to the safe side.")
  void nothingStandsAboveTheForceBalance() {
    long seed = 6685785;
    RandomHeap made = RandomHeap.of(seed, 8);
    Random r = new Random(~seed);
    int rock = r.nextInt(made.rocks().size());
    Vec3 direction = Vec3.heading(360 * r.nextDouble());
    Heap heap = made.heap();
    List<Wrench> dead = RandomHeap.weights(heap);
    List<Wrench> live = made.push(heap, rock, direction);
    ForceBalance balance = new ForceBalance(heap, ForceBalance.typicalN(dead));
    double factor = ((Margin.Limited) balance.margin(dead, live, 1000, 1e-8)).factor();
    List<Wrench> above = new ArrayList<>();
    for (int i = 0; i < dead.size(); i++) above.add(dead.get(i).plus(live.get(i).times(1.05 * factor)));
    assertThat(balance.stands(above)).isNotInstanceOf(Balance.Stands.class);
  }
}
