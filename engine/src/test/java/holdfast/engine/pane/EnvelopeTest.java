package holdfast.engine.pane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The greatest moment over admissible foot forces against a search through directions, each solved exactly. */
class EnvelopeTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void findsTheWorstForces(long seed) {
    Random random = new Random(seed);
    int n = 2 + random.nextInt(5);
    List<FootLoad> feet = new ArrayList<>();
    double[] influence = new double[3 * n];
    double least = 0;
    double most = 0;
    for (int i = 0; i < n; i++) {
      double low = 10 * random.nextDouble();
      double high = low + 40 * random.nextDouble();
      least += low;
      most += high;
      feet.add(new FootLoad("rock", List.of(new Vec3(i, 0, 0)), low, high, true));
      for (int k = 0; k < 3; k++) influence[3 * i + k] = 0.2 * random.nextDouble() - (k == 2 ? 0.1 : 0.02);
    }
    double weight = least + (most - least) * random.nextDouble();
    Bending water = new Bending(random.nextDouble(), random.nextDouble(), 0);
    Envelope.Peak peak = new Envelope(new PaneLoad.Case(feet, weight, true)).at(influence, water);

    double best = 0;
    for (int step = 0; step < 720; step++) {
      double c = Math.cos(step * Math.PI / 720);
      double s = Math.sin(step * Math.PI / 720);
      double spare = weight - least;
      double sum = water.xx() * c * c + water.yy() * s * s + 2 * water.xy() * s * c;
      List<double[]> gains = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        double gain = influence[3 * i] * c * c + influence[3 * i + 1] * s * s + 2 * influence[3 * i + 2] * s * c;
        sum += gain * feet.get(i).leastN();
        gains.add(new double[] {gain, feet.get(i).mostN() - feet.get(i).leastN()});
      }
      gains.sort((p, q) -> Double.compare(q[0], p[0]));
      for (double[] g : gains) {
        if (g[0] <= 0) break;
        double add = Math.min(spare, g[1]);
        spare -= add;
        sum += g[0] * add;
      }
      best = Math.max(best, sum);
    }
    assertThat(peak.momentNm()).as("seed %d", seed).isCloseTo(best, within(1e-3 * best));
    // The pane turned over: every moment stretches the other face, and as much.
    double[] over = Arrays.stream(influence).map(v -> -v).toArray();
    Envelope.Peak hog = new Envelope(new PaneLoad.Case(feet, weight, true)).at(over, Bending.ZERO.plusTimes(-1, water));
    assertThat(hog.momentNm()).as("seed %d, turned over", seed).isCloseTo(-best, within(1e-3 * best));
    double total = 0;
    for (int i = 0; i < n; i++) {
      assertThat(peak.forcesN()[i]).isBetween(feet.get(i).leastN() - 1e-9, feet.get(i).mostN() + 1e-9);
      total += peak.forcesN()[i];
    }
    assertThat(total).isLessThanOrEqualTo(weight + 1e-9);
  }
}
