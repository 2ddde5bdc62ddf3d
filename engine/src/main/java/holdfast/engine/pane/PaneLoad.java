package holdfast.engine.pane;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that the rocks do to the floor.
 *
 * @param cases the feet in each load case that was worked out; at least one
 * @param heaviest the heaviest rock as it is carried over the tank, with the water that it then holds, for the slip estimate
 */
public record PaneLoad(Map<LoadCase, Case> cases, Optional<HeldRock> heaviest) {

  public PaneLoad {
    if (cases.isEmpty()) throw new IllegalArgumentException("at least one load case is needed");
    Map<LoadCase, Case> sorted = new EnumMap<>(LoadCase.class);
    sorted.putAll(cases);
    cases = Collections.unmodifiableMap(sorted);
  }

  /**
   * One load case.
   *
   * @param feet every foot on the floor
   * @param weightN weight of all rock in this case, newtons: no set of foot forces adds up to more
   * @param allOnFloor nothing but the floor carries it, so the forces add up to exactly the weight
   */
  public record Case(List<FootLoad> feet, double weightN, boolean allOnFloor) {
    public Case {
      feet = List.copyOf(feet);
      if (!(weightN >= 0) || !Double.isFinite(weightN)) {
        throw new IllegalArgumentException("weightN must be 0 or more, was " + weightN);
      }
    }
  }

  /** A rock in somebody's hands. */
  public record HeldRock(String name, double massKg) {
    public HeldRock {
      if (!(massKg > 0)) throw new IllegalArgumentException("massKg of '" + name + "' must be above 0, was " + massKg);
    }
  }
}
