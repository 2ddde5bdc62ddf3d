package holdfast.engine.bench;

import holdfast.engine.check.Questions;
import java.util.ArrayList;
import java.util.List;

/**
 * The same push margins by cones and by pyramids of 8 and 16 facets, over what 64 facets find, which lack 0.1 % of the
 * friction (derived). All three pyramids allow the twist of forces at corners, the cones allow less.
 *
 * @param open pushes for which the cones gave no bound
 */
record Accuracy(String layout, int pushes, int open, double[] cones, double[] eight, double[] sixteen) {
  private static final int FINE = 64;

  static Accuracy of(String name, int count) {
    List<Questions.OnePush> all = Questions.centrePushes(Layout.of(name).heap(), Table.CAP_N);
    List<Double> cones = new ArrayList<>();
    List<Double> eight = new ArrayList<>();
    List<Double> sixteen = new ArrayList<>();
    int open = 0;
    for (int i = 0; i < count; i++) {
      Questions.OnePush p = all.get((i * 37 + 5) % all.size());
      double fine = RivalBenchmark.linear(p, FINE);
      if (!(fine > 0)) continue;
      double ours = p.atMostN();
      if (Double.isNaN(ours)) open++;
      else cones.add(ours / fine);
      eight.add(RivalBenchmark.linear(p, 8) / fine);
      sixteen.add(RivalBenchmark.linear(p, 16) / fine);
    }
    return new Accuracy(name, count, open, range(cones), range(eight), range(sixteen));
  }

  private static double[] range(List<Double> of) {
    return new double[] {
      of.stream().mapToDouble(d -> d).min().orElse(Double.NaN), of.stream().mapToDouble(d -> d).max().orElse(Double.NaN)};
  }
}
