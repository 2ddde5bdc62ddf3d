package holdfast.engine.bench;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Runs benchmarks and keeps their medians. */
final class Measured {
  /** Seconds: what took longer than this when tried once, cold, is not measured further. */
  private static final double LONG_S = 2.5;

  /** Seconds: what is expected to take longer than this is not begun. */
  static final double TOO_LONG_S = 100;

  /** Of both, in a quick run. */
  private static final double QUICK_SHARE = 0.2;

  /** Milliseconds of warming up. */
  private static final int WARM_MS = 800;

  /** The same for questions of many parts: the compiler needs seconds for all of them. */
  private static final int LONG_WARM_MS = 6000;

  private final boolean quick;
  private final Map<String, Cell> cells = new LinkedHashMap<>();

  Measured(boolean quick) {
    this.quick = quick;
  }

  /**
   * One figure.
   *
   * @param ms median, milliseconds
   * @param bytes allocated by one call; not a number where unknown
   * @param once it is one cold run
   */
  record Cell(double ms, double bytes, boolean once) {}

  /** Measures questions of one class about layouts, each pair in a Java machine of its own. */
  void run(Class<?> of, Collection<String> questions, Collection<String> layouts) {
    run(of, questions, layouts, WARM_MS);
  }

  private void run(Class<?> of, Collection<String> questions, Collection<String> layouts, int warmMs) {
    String named = of.getName().replace(".", "\\.") + "\\.(" + String.join("|", questions) + ")$";
    OptionsBuilder options = new OptionsBuilder();
    options.include(named).forks(1).jvmArgs("-Xmx1g", "-XX:+UseSerialGC").verbosity(VerboseMode.SILENT)
        .addProfiler(GCProfiler.class).shouldFailOnError(true)
        .warmupIterations(1).warmupTime(TimeValue.milliseconds(quick ? 150 : warmMs))
        .measurementIterations(quick ? 1 : 3).measurementTime(TimeValue.milliseconds(quick ? 150 : 400));
    if (!layouts.isEmpty()) options.param("layout", layouts.toArray(String[]::new));
    try {
      for (RunResult r : new Runner(options.build()).run()) keep(r);
    } catch (RunnerException e) {
      throw new IllegalStateException(e);
    }
  }

  @SuppressWarnings("rawtypes")
  private void keep(RunResult r) {
    String benchmark = r.getParams().getBenchmark();
    String question = benchmark.substring(benchmark.lastIndexOf('.') + 1);
    String layout = r.getParams().getParam("layout");
    double bytes = Double.NaN;
    for (Map.Entry<String, Result> e : r.getSecondaryResults().entrySet()) {
      if (e.getKey().endsWith("gc.alloc.rate.norm")) bytes = e.getValue().getScore();
    }
    put(question, layout == null ? "" : layout, new Cell(r.getPrimaryResult().getStatistics().getPercentile(50), bytes, false));
  }

  private void put(String question, String layout, Cell cell) {
    cells.put(question + "|" + layout, cell);
    System.out.printf("  %-10s %-14s %10.3f ms%s%n", question, layout, cell.ms, cell.once ? " (one cold run)" : "");
  }

  /**
   * The same for what may take long: not begun when expected to, or when not a number is expected; tried once first, and left
   * at that if it does.
   *
   * @param mostS seconds; what is expected to take longer is not begun
   */
  void carefully(Class<?> of, String question, String layout, double expectedMs, double mostS, Supplier<?> once) {
    double share = quick ? QUICK_SHARE : 1;
    if (!(expectedMs <= 1e3 * mostS * share)) return;
    Map<Long, Long> before = allocated();
    long start = System.nanoTime();
    once.get();
    double ms = (System.nanoTime() - start) / 1e6;
    if (ms > 1e3 * LONG_S * share) put(question, layout, new Cell(ms, since(before), true));
    else run(of, List.of(question), List.of(layout), LONG_WARM_MS);
  }

  /** What every thread has allocated so far, bytes. */
  private static Map<Long, Long> allocated() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long[] ids = threads.getAllThreadIds();
    long[] bytes = threads.getThreadAllocatedBytes(ids);
    Map<Long, Long> out = new HashMap<>();
    for (int i = 0; i < ids.length; i++) if (bytes[i] >= 0) out.put(ids[i], bytes[i]);
    return out;
  }

  /** What has been allocated since by the threads that there are; those that worked on a question outlive it. */
  private static double since(Map<Long, Long> before) {
    double sum = 0;
    for (Map.Entry<Long, Long> e : allocated().entrySet()) sum += e.getValue() - before.getOrDefault(e.getKey(), 0L);
    return sum;
  }

  void carefully(Class<?> of, String question, String layout, double expectedMs, Supplier<?> once) {
    carefully(of, question, layout, expectedMs, TOO_LONG_S, once);
  }

  OptionalDouble ms(String question, String layout) {
    Cell c = cells.get(question + "|" + layout);
    return c == null ? OptionalDouble.empty() : OptionalDouble.of(c.ms);
  }

  Cell cell(String question, String layout) {
    return cells.get(question + "|" + layout);
  }

  /** Exponent of time over number by least squares of the logarithms; empty for fewer than three figures. */
  static OptionalDouble exponent(List<double[]> countAndMs) {
    if (countAndMs.size() < 3) return OptionalDouble.empty();
    double meanX = countAndMs.stream().mapToDouble(c -> Math.log(c[0])).average().orElseThrow();
    double meanY = countAndMs.stream().mapToDouble(c -> Math.log(c[1])).average().orElseThrow();
    double xy = 0;
    double xx = 0;
    for (double[] c : countAndMs) {
      xy += (Math.log(c[0]) - meanX) * (Math.log(c[1]) - meanY);
      xx += (Math.log(c[0]) - meanX) * (Math.log(c[0]) - meanX);
    }
    return OptionalDouble.of(xy / xx);
  }
}
