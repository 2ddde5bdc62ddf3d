package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.Solid;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SupportsTest {
  private static Contact touch(int a, int b, Vec3 normal) {
    return new Contact(a, b, 0, 0, normal, List.of(Vec3.ZERO), 0);
  }

  @Test
  void readsWhatRestsOnWhat() {
    List<Solid> solids = List.of(
        new Solid("top", Solid.Surface.ROCK, false, List.of()), new Solid("base", Solid.Surface.ROCK, false, List.of()),
        new Solid("beside", Solid.Surface.ROCK, false, List.of()), new Solid("floor", Solid.Surface.GRID, true, List.of()));
    Supports s = Supports.of(solids, 3, List.of(
        touch(0, 1, Vec3.Z), touch(1, 3, Vec3.Z), touch(1, 2, Vec3.X), touch(0, 2, Vec3.Z.negated()), touch(2, 3, Vec3.Z)));
    assertThat(s.below()).containsExactly(Set.of(1), Set.of(), Set.of(0));
    assertThat(s.base()).containsExactly(1, 2);
  }
}
