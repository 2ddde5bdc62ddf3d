package holdfast.engine.bonding;

import holdfast.engine.contact.PairFit;
import holdfast.engine.statics.SceneHeap;
import holdfast.model.scene.JointSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Which joints to fix so that the tier is met. Everything that could be fixed is fixed first; if that is enough, joints are
 * taken out again one by one, the dearest first, as long as the tier is still met. What is left is irreducible: no single
 * joint of it can go. It need not be the cheapest of all sets. The tier question is asked once more of the set chosen.
 */
public final class JointSearch {
  private JointSearch() {}

  /** What came of the search. */
  public sealed interface Found {
    /** These joints, added to those of the scene, meet the tier. */
    record Enough(List<JointSpec> joints) implements Found {}

    /** Not even fixing every joint meets it. */
    record NotEnough(String reason, int joints) implements Found {}

    /** The scene meets the tier as it is. */
    record NotNeeded() implements Found {}
  }

  /** Searches with mortar in amounts by the size of the smaller rock. */
  public static Found search(SceneHeap scene) {
    return search(scene, candidates(scene), set -> TierQuestion.unmet(scene.withJoints(with(scene, set))).isEmpty());
  }

  static Found search(SceneHeap scene, List<JointSpec> candidates, Predicate<List<JointSpec>> meets) {
    if (meets.test(List.of())) return new Found.NotNeeded();
    if (candidates.isEmpty()) return new Found.NotEnough("there is no joint left to fix", 0);
    if (!meets.test(candidates)) {
      Optional<String> why = TierQuestion.unmet(scene.withJoints(with(scene, candidates)));
      return new Found.NotEnough(why.orElse("the tier is not met"), candidates.size());
    }
    List<JointSpec> chosen = new ArrayList<>(candidates);
    List<JointSpec> dearestFirst = new ArrayList<>(candidates);
    dearestFirst.sort(Comparator.comparingDouble(JointSpec::amountMl).reversed());
    for (JointSpec j : dearestFirst) {
      List<JointSpec> fewer = new ArrayList<>(chosen);
      fewer.remove(j);
      if (meets.test(fewer)) chosen = fewer;
    }
    if (!meets.test(chosen)) return new Found.NotEnough("the set found did not hold when it was checked again", chosen.size());
    return new Found.Enough(List.copyOf(chosen));
  }

  /** Every pair of rocks that touch and are not fixed yet, but for those that are to stay removable. */
  static List<JointSpec> candidates(SceneHeap scene) {
    List<JointSpec> out = new ArrayList<>();
    for (PairFit f : scene.contacts().fits()) {
      if (f.kind() == PairFit.Kind.HOVERS || f.b() >= scene.rocks().size()) continue;
      String a = scene.name(f.a());
      String b = scene.name(f.b());
      if (scene.scene().joint(a, b).filter(j -> j.bond() != JointSpec.Bond.NONE).isPresent()) continue;
      if (scene.rocks().get(f.a()).rock().removable() || scene.rocks().get(f.b()).rock().removable()) continue;
      double kg = Math.min(scene.rocks().get(f.a()).body().dryMassKg(), scene.rocks().get(f.b()).body().dryMassKg());
      out.add(JointSpec.paste(a, b, JointSpec.Bond.MORTAR, usualMl(kg)));
    }
    return out;
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
