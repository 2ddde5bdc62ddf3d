package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.model.geom.Vec3;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Stones that lie on one another to the last digit of rounding, and were missed. */
class MirroredContactTest {
  @ParameterizedTest
  @ValueSource(longs = {43, 703, 720, 773, 804, 1321, 2141, 2364, 2578})
  void aMirrorImageHasTheSameContacts(long seed) {
    RandomHeap heap = RandomHeap.of(seed, 8);
    RandomHeap mirrored = heap.placed(p -> new Vec3(-p.x(), p.y(), p.z()));
    assertThat(ContactFinder.find(mirrored.solids(), ContactRules.DEFAULT).contacts())
        .hasSameSizeAs(ContactFinder.find(heap.solids(), ContactRules.DEFAULT).contacts());
  }
}
