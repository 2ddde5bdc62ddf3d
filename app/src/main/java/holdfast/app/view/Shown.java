package holdfast.app.view;

import java.util.EnumSet;
import java.util.Set;

/** Which parts and drawings are on show, and where the picture is cut open. */
final class Shown {
  /** What can be shown or hidden. */
  enum Layer {
    WATER("water"), SAND("sand"), GLASS("glass"), CELLS("cell numbers"), NAMES("names"), JOINTS("joints"), FEET("feet"),
    GAPS("gaps"), ROSE("push rose"), PANE("pane stress"), LIGHT("light"), REACH("reach of the cleaner");

    private final String word;

    Layer(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /** The ways of cutting. */
  enum CutWay {
    NONE("no cut"), ACROSS("front to back"), ALONG("left to right"), LEVEL("level");

    private final String word;

    CutWay(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  private final Set<Layer> layers = EnumSet.of(Layer.WATER, Layer.SAND, Layer.GLASS, Layer.CELLS, Layer.ROSE);
  private CutWay cutWay = CutWay.NONE;
  private double cutShare = 0.5;

  boolean has(Layer layer) {
    return layers.contains(layer);
  }

  void set(Layer layer, boolean on) {
    if (on) layers.add(layer);
    else layers.remove(layer);
  }

  CutWay cutWay() {
    return cutWay;
  }

  double cutShare() {
    return cutShare;
  }

  void cut(CutWay way, double share) {
    cutWay = way;
    cutShare = Math.max(0.02, Math.min(0.98, share));
  }
}
