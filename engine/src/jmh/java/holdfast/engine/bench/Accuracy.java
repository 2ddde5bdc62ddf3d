package holdfast.engine.bench;

import holdfast.engine.check.Questions;
import holdfast.engine.statics.balance.Margin;
import java.util.ArrayList;
import java.util.List;

/**
 * The same push margins by cones and by pyramids of 8 and 16 facets, over what 64 facets find, which lack 0.1 % of the
 * friction (derived). All of them are about the same forces at the corners of every contact; the cones tell two figures, what
 * forces carry and what a mechanism caps.
 *
 * @param open pushes for which the cones gave no bound
 * @param cones the least of what is carried, and the greatest of what is capped
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
      Margin ours = p.enclosed();
      if (ours instanceof Margin.Undecided) open++;
      ours.match(l -> cones.addAll(List.of(l.factor() / fine, l.bound() / fine)), b -> cones.add(b.cap() / fine),
          f -> cones.add(0.0), u -> false);
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
