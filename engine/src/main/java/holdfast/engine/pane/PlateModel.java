package holdfast.engine.pane;

import java.util.List;

/** One way in which the bottom pane is carried. */
interface PlateModel {
  Plate plate();

  /** Bending under a total of one newton spread evenly over a patch. Work that does not depend on the place is done here. */
  UnitLoad unitLoad(Patch patch);

  /**
   * Bending per newton of every load at one place.
   *
   * @return xx, yy, xy of the first load, then of the next
   */
  default double[] influences(List<UnitLoad> loads, double x, double y) {
    double[] all = new double[3 * loads.size()];
    double[] k = new double[3];
    double nu = plate().poisson();
    for (int i = 0; i < loads.size(); i++) {
      k[0] = 0;
      k[1] = 0;
      k[2] = 0;
      loads.get(i).addCurvature(x, y, k);
      all[3 * i] = k[0] + nu * k[1];
      all[3 * i + 1] = k[1] + nu * k[0];
      all[3 * i + 2] = (1 - nu) * k[2];
    }
    return all;
  }

  /** Bending per newton of one load at one place. */
  default Bending bending(UnitLoad load, double x, double y) {
    double[] m = influences(List.of(load), x, y);
    return new Bending(m[0], m[1], m[2]);
  }

  /** {@link #influences} of one load at every node of a net, node by node. */
  default double[] influences(UnitLoad load, Net net) {
    double[] all = new double[3 * net.nodes()];
    for (int n = 0; n < net.nodes(); n++) {
      System.arraycopy(influences(List.of(load), net.x(n), net.y(n)), 0, all, 3 * n, 3);
    }
    return all;
  }

  /** Bending under one pascal of water everywhere. */
  Bending unitWater(double x, double y);

  /** Deflection, metres downward, under several patches and water, as a function of place. */
  Deflection deflection(List<UnitLoad> loads, double[] forcesN, double waterPa);

  /** One newton on a patch, prepared for asking at many places. */
  interface UnitLoad {
    Patch patch();

    /** Adds stiffness times minus the curvatures xx, yy, xy at a place. */
    void addCurvature(double x, double y, double[] k);
  }

  /** Deflection in metres, downward positive. */
  @FunctionalInterface
  interface Deflection {
    double atM(double x, double y);

    /** The same at the nodes of a net over the whole pane, row by row from the front. */
    default double[] onNet(Net net) {
      double[] all = new double[net.nodes()];
      for (int n = 0; n < all.length; n++) all[n] = atM(net.x(n), net.y(n));
      return all;
    }
  }

  /** Nodes evenly spaced over a pane, its rim included, numbered row by row from the front. */
  record Net(Plate plate, int columns, int rows) {
    int nodes() {
      return columns * rows;
    }

    double x(int node) {
      return plate.lengthM() * (node % columns) / (columns - 1);
    }

    double y(int node) {
      return plate.widthM() * (node / columns) / (rows - 1);
    }
  }
}
