package holdfast.engine.pane;

import java.util.List;

/** One way in which the bottom pane is carried. */
interface PlateModel {
  Plate plate();

  /** Bending under a total of one newton spread evenly over a patch. Work that does not depend on the place is done here. */
  UnitLoad unitLoad(Patch patch);

  /** Bending under one pascal of water everywhere. */
  Bending unitWater(double x, double y);

  /** Deflection, metres downward, under several patches and water, as a function of place. */
  Deflection deflection(List<UnitLoad> loads, double[] forcesN, double waterPa);

  /** Bending per newton as a function of place. */
  interface UnitLoad {
    Patch patch();

    Bending at(double x, double y);
  }

  /** Deflection in metres, downward positive. */
  @FunctionalInterface
  interface Deflection {
    double atM(double x, double y);
  }
}
