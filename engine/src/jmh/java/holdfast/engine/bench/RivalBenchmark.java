package holdfast.engine.bench;

import holdfast.engine.check.Questions;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.heap.SceneHeap;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** One push as a linear program, and one push played in the 3D engine; each time another rock and direction. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class RivalBenchmark {
  @Param("pile 30")
  public String layout;

  private List<Questions.OnePush> pushes;
  private EnginePlay engine;
  private int next;

  @Setup
  public void setUp() {
    Layout of = Layout.of(layout);
    SceneHeap heap = of.heap();
    pushes = Questions.centrePushes(heap, Table.CAP_N);
    engine = new EnginePlay(of);
  }

  private Questions.OnePush another() {
    next = (next + 37) % pushes.size();
    return pushes.get(next);
  }

  static double linear(Questions.OnePush p, int facets) {
    return new LinearProgram(p.heap(), facets, ForceBalance.typicalN(p.dead())).margin(p.dead(), p.live(), p.capN());
  }

  @Benchmark
  public double linear8() {
    return linear(another(), 8);
  }

  @Benchmark
  public double linear16() {
    return linear(another(), 16);
  }

  /** Does the tier's push move anything? */
  @Benchmark
  public boolean engine() {
    return engine.moves(another());
  }
}
