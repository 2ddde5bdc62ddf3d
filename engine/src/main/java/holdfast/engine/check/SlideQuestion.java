package holdfast.engine.check;

import holdfast.engine.bonding.Slides;
import holdfast.engine.check.PushStudy.PushFound;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.work.Parallel;
import holdfast.model.geom.Vec3;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Slides that end in a fall, asked of a scene with other joints in the way in which the check itself asks. */
final class SlideQuestion implements Slides {
  private final int threads;
  private final Recall recall;

  /**
   * @param recall what earlier studies of the scene found
   */
  SlideQuestion(int threads, Recall recall) {
    this.threads = threads;
    this.recall = recall;
  }

  @Override
  public Optional<Slide> first(SceneHeap scene, Collection<Integer> rocks) {
    HeapStudy study = new HeapStudy(scene, threads, false, recall);
    return Parallel.map(List.copyOf(rocks), threads, rock -> ask(study, rock)).stream().flatMap(Optional::stream).findFirst();
  }

  @Override
  public boolean falls(SceneHeap scene, int rock) {
    return ask(new HeapStudy(scene, 1, false, recall), rock).isPresent();
  }

  private static Optional<Slide> ask(HeapStudy study, int rock) {
    if (!study.safeUnderWeight(rock)) return Optional.empty();
    return endingInAFall(study, rock, sliding(study.pushes().below(rock)), true)
        .map(p -> new Slide(rock, p.state(), Vec3.heading(p.degrees())));
  }

  /** Of the sides from which a rock bears less than the tier those on which it slides. */
  static List<PushFound> sliding(List<PushFound> below) {
    return below.stream().filter(p -> p.movement() == Movement.SLIDES).toList();
  }

  /**
   * Of the sides toward which a rock slides below the tier the weakest after which the heap falls.
   *
   * @param slides the weakest first
   * @param everySide a rock that may go one way may still go over the edge on the other; one that topples fails as it is, and
   *     only its weakest side is tried
   */
  static Optional<PushFound> endingInAFall(HeapStudy study, int rock, List<PushFound> slides, boolean everySide) {
    if (slides.isEmpty()) return Optional.empty();
    if (SlideTest.fallsTurning(study, rock, slides.get(0))) return Optional.of(slides.get(0));
    for (PushFound p : everySide ? slides : slides.subList(0, 1)) {
      if (SlideTest.falls(study, rock, p)) return Optional.of(p);
    }
    return Optional.empty();
  }
}
