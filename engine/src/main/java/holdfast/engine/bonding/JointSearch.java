package holdfast.engine.bonding;

import holdfast.engine.contact.PairFit;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Side;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Which joints to fix so that the tier is met at the least cost. Separate heaps are separate searches ({@link CheapestSet}).
 *
 * <p>Fixing one more joint is not known to help in every case: a bond takes the place of friction, and what slid may go over.
 * So nothing is left out by an assumed order. What is called least was compared with every cheaper set, each of which was
 * asked or is refused by proof; and whatever is returned was asked in full.
 */
public final class JointSearch {
  /** A joint that shows on a side people look through costs this much more: it only breaks ties. */
  private static final double SEEN_SHARE = 1e-3;

  private JointSearch() {}

  /** What came of the search for one separate heap. */
  public sealed interface Found {
    /**
     * These joints, added to those of the scene, meet the tier.
     *
     * @param least no cheaper set does
     * @param all why fixing every joint does not, where it does not
     * @param butSlides slides that end in a fall are left; a {@link NotEnough} says why
     */
    record Enough(List<JointSpec> joints, boolean least, Optional<String> all, boolean butSlides) implements Found {}

    /**
     * Not even fixing every joint meets it.
     *
     * @param slides what is not mended is a slide that ends in a fall
     * @param rest what else there is can be mended by joints: an {@link Enough} says by which
     * @param reason why not
     * @param joints how many can be fixed
     * @param proven no choice among them does; where false, not every choice was asked
     */
    record NotEnough(List<String> rocks, String reason, int joints, boolean proven, boolean slides, boolean rest)
        implements Found {}
  }

  /** Is told how the search goes on; nothing that it does changes what is found. */
  @FunctionalInterface
  public interface Watch {
    /** Looks away. */
    Watch NONE = (asked, of, joints) -> { };

    /**
     * @param asked cheaper sets that were asked to prove that none is enough
     * @param of how many there are; 0 while that is not known
     * @param joints how many joints the best set in hand has; 0 where there is none
     */
    void at(int asked, int of, int joints);
  }

  /** Searches every heap that does not meet the tier; empty when all do. */
  public static List<Found> search(SceneHeap scene, int threads) {
    return search(scene, threads, Slides.NONE, Watch.NONE);
  }

  /**
   * The same where slides that end in a fall are to be mended too, telling {@code watch} how it goes on. Where joints do not
   * mend those, they are sought for the rest alone.
   */
  public static List<Found> search(SceneHeap scene, int threads, Slides slides, Watch watch) {
    List<Found> out = new ArrayList<>();
    for (Heap.Part part : scene.heap().separate()) {
      List<Integer> rocks = part.bodies();
      Asking asking = new Asking(scene, rocks, candidates(scene, rocks), threads, slides);
      Optional<TierQuestion.Refusal> no = asking.refusal(new BitSet());
      if (no.isEmpty()) continue;
      Found found = search(asking, watch);
      boolean more = no.get().kind() != TierQuestion.Kind.SLIDING && found instanceof Found.NotEnough n && n.slides;
      if (!more) {
        out.add(found);
        continue;
      }
      Found rest = search(new Asking(scene, rocks, asking.candidates, threads, Slides.NONE), watch);
      Found.NotEnough left = (Found.NotEnough) found;
      out.add(new Found.NotEnough(left.rocks, left.reason, left.joints, left.proven, true, rest instanceof Found.Enough));
      out.add(rest instanceof Found.Enough e ? new Found.Enough(e.joints, e.least, e.all, true) : rest);
    }
    return out;
  }

  /** The rocks that a rock touches and could still be fixed to. */
  public static List<String> open(SceneHeap scene, int rock) {
    String name = scene.name(rock);
    List<Integer> all = IntStream.range(0, scene.rocks().size()).boxed().toList();
    return candidates(scene, all).stream().filter(j -> j.a().equals(name) || j.b().equals(name))
        .map(j -> j.a().equals(name) ? j.b() : j.a()).toList();
  }

  private static Found search(Asking asking, Watch watch) {
    List<JointSpec> candidates = asking.candidates;
    List<String> rocks = asking.rocks.stream().map(asking.scene::name).toList();
    if (candidates.isEmpty()) {
      return new Found.NotEnough(rocks, "there is no joint left to fix", 0, true, slides(asking.refusal(new BitSet())), false);
    }
    CheapestSet.Found found = CheapestSet.of(costs(asking.scene, candidates), asking, asking.threads,
        (asked, of, best) -> watch.at(asked, of, best.cardinality()));
    BitSet every = new BitSet();
    every.set(0, candidates.size());
    Optional<String> all = asking.refusal(every).map(TierQuestion.Refusal::words);
    return found.set().<Found>map(set -> new Found.Enough(of(candidates, set), found.proven(), all, false))
        .orElseGet(() -> new Found.NotEnough(rocks, all.orElseThrow(), candidates.size(), found.proven(),
            slides(asking.refusal(every)), false));
  }

  private static boolean slides(Optional<TierQuestion.Refusal> no) {
    return no.filter(r -> r.kind() == TierQuestion.Kind.SLIDING).isPresent();
  }

  /** The tier question, asked of sets of joints. What was asked in full is not asked again. */
  static final class Asking implements CheapestSet.Questions<TierQuestion.Refusal> {
    private final SceneHeap scene;
    private final List<Integer> rocks;
    private final List<JointSpec> candidates;
    private final int threads;
    private final Slides slides;
    private final Map<BitSet, Optional<TierQuestion.Refusal>> answers = new HashMap<>();

    Asking(SceneHeap scene, List<Integer> rocks, List<JointSpec> candidates, int threads, Slides slides) {
      this.scene = scene;
      this.rocks = rocks;
      this.candidates = candidates;
      this.threads = threads;
      this.slides = slides;
    }

    @Override
    public Optional<TierQuestion.Refusal> refusal(BitSet set) {
      Optional<TierQuestion.Refusal> known = answers.get(set);
      if (known != null) return known;
      Optional<TierQuestion.Refusal> answer = TierQuestion.refusal(fixed(set), rocks, threads, slides);
      answers.put((BitSet) set.clone(), answer);
      return answer;
    }

    @Override
    public int refusedBy(BitSet set, List<TierQuestion.Refusal> known) {
      return known.isEmpty() ? -1 : TierQuestion.refusedBy(fixed(set), known, slides);
    }

    @Override
    public boolean refusedWithAny(BitSet most, TierQuestion.Refusal known) {
      return TierQuestion.refusedWithAny(fixed(new BitSet()), fixed(most), known);
    }

    private SceneHeap fixed(BitSet set) {
      return scene.withJoints(with(scene, of(candidates, set)));
    }
  }

  private static List<JointSpec> of(List<JointSpec> all, BitSet set) {
    return set.stream().mapToObj(all::get).toList();
  }

  /** Every pair of rocks that touch and are not fixed yet, but for those that are to stay removable. */
  static List<JointSpec> candidates(SceneHeap scene, List<Integer> rocks) {
    List<JointSpec> out = new ArrayList<>();
    for (PairFit f : scene.contacts().fits()) {
      if (f.kind() == PairFit.Kind.HOVERS || !rocks.contains(f.a()) || !rocks.contains(f.b())) continue;
      String a = scene.name(f.a());
      String b = scene.name(f.b());
      if (scene.scene().joint(a, b).filter(j -> j.bond() != JointSpec.Bond.NONE).isPresent()) continue;
      if (scene.rocks().get(f.a()).rock().removable() || scene.rocks().get(f.b()).rock().removable()) continue;
      double kg = Math.min(scene.rocks().get(f.a()).body().dryMassKg(), scene.rocks().get(f.b()).body().dryMassKg());
      out.add(JointSpec.paste(a, b, JointSpec.Bond.MORTAR, usualMl(kg)));
    }
    return out;
  }

  /** Mixed mortar, with a little more for a joint that shows on a side people look through. */
  static double[] costs(SceneHeap scene, List<JointSpec> candidates) {
    double[] cost = new double[candidates.size()];
    Vec3 middle = new Vec3(scene.scene().tank().lengthMm(), scene.scene().tank().widthMm(), 0).times(0.5e-3);
    for (int i = 0; i < cost.length; i++) {
      JointSpec j = candidates.get(i);
      Vec3 at = place(scene, j).minus(middle);
      double seen = 0;
      for (Side s : scene.scene().tank().viewedFrom()) seen += Math.max(0, at.dot(s.outward()));
      cost[i] = j.amountMl() * (1 + SEEN_SHARE * seen);
    }
    return cost;
  }

  private static Vec3 place(SceneHeap scene, JointSpec j) {
    for (PairFit f : scene.contacts().fits()) {
      if (f.b() < scene.rocks().size() && j.joins(scene.name(f.a()), scene.name(f.b()))) return f.onA();
    }
    return Vec3.ZERO;
  }

  /** Mixed mortar in a joint by the mass of the smaller rock, millilitres (derived from common practice). */
  public static double usualMl(double smallerKg) {
    return smallerKg < 1 ? 15 : smallerKg < 4 ? 40 : 90;
  }

  private static List<JointSpec> with(SceneHeap scene, List<JointSpec> added) {
    List<JointSpec> all = new ArrayList<>();
    for (JointSpec j : scene.scene().joints()) {
      if (added.stream().noneMatch(n -> n.joins(j.a(), j.b()))) all.add(j);
    }
    all.addAll(added);
    return all;
  }
}
