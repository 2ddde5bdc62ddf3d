package holdfast.engine.bench;

import holdfast.engine.check.Questions;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.Comparator;
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

/** The questions of the check, one by one, about one layout. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class HeapBenchmark {
  /** Metres by which an edit moves a rock. */
  private static final double EDIT_M = 1e-6;

  @Param("pile 30")
  public String layout;

  private Layout of;
  private SceneHeap heap;
  /** Made when one is first asked, while it warms up: the other questions want none. */
  private List<Questions.OnePush> pushes;
  private int next;
  private int top;
  private int moved;
  private final Recall recall = new Recall();

  @Setup
  public void setUp() {
    of = Layout.of(layout);
    heap = of.heap();
    top = of.placed().stream().max(Comparator.comparingDouble(p -> p.centre().z())).orElseThrow().index();
  }

  @Benchmark
  public Object contacts() {
    return Questions.contacts(of.scene(), of.placed());
  }

  @Benchmark
  public int stands() {
    return Questions.stands(heap);
  }

  @Benchmark
  public int stays() {
    return Questions.stays(heap);
  }

  /** Each time another rock and direction: the median is that of all pushes. */
  @Benchmark
  public double push() {
    if (pushes == null) pushes = Questions.centrePushes(heap, Table.CAP_N);
    next = (next + 37) % pushes.size();
    return pushes.get(next).atMostN();
  }

  @Benchmark
  public double[] margins() {
    return Questions.centreMargins(heap, Table.CAP_N);
  }

  @Benchmark
  public boolean verdict() {
    return Questions.verdict(heap);
  }

  @Benchmark
  public Object weakest() {
    return Questions.weakest(heap);
  }

  @Benchmark
  public Object roses() {
    return Questions.roses(heap);
  }

  @Benchmark
  public Object check() {
    return Questions.check(of.scene(), of.shapes());
  }

  @Benchmark
  public boolean recheck() {
    // A new place each time: an old one would be recalled.
    moved++;
    List<PlacedRock> placed = new ArrayList<>(of.placed());
    PlacedRock was = placed.get(top);
    Vec3 by = new Vec3(EDIT_M * moved, 0, 0);
    placed.set(top, was.at(new Pose(was.pose().at().plus(by), was.pose().turn())));
    return Questions.recheck(of.scene(), placed, recall);
  }

  @Benchmark
  public Object vary() {
    return Questions.vary(heap, Table.VARIATIONS);
  }
}
