package holdfast.app.report;

import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The numbers of a scene's joints, the same on the build sheet, in the window and in words: those that are fixed first, in
 * the order of the scene, then those where rocks only rest on each other, in the order in which they were found. The sheet
 * shows the fixed ones alone, so its numbers have no holes.
 *
 * @param pairs the joints in the order of their numbers, the first being joint 1
 * @param fixed how many of them, from the first, are fixed
 */
public record JointNumbers(List<Pair> pairs, int fixed) {

  /** Two rocks, in either order. */
  public record Pair(String a, String b) {
    public boolean is(String p, String q) {
      return a.equals(p) && b.equals(q) || a.equals(q) && b.equals(p);
    }
  }

  public JointNumbers {
    pairs = List.copyOf(pairs);
    if (fixed < 0 || fixed > pairs.size()) throw new IllegalArgumentException(fixed + " fixed of " + pairs.size() + " joints");
  }

  /** The numbers of the joints that are fixed. */
  public static JointNumbers of(Scene scene) {
    return of(scene, List.of());
  }

  /** The numbers of the joints that are fixed, and of all others where rocks touch. */
  public static JointNumbers of(Scene scene, List<Pair> touching) {
    List<Pair> out = new ArrayList<>();
    for (JointSpec j : scene.joints()) {
      if (counts(scene, j)) out.add(new Pair(j.a(), j.b()));
    }
    int fixed = out.size();
    for (Pair t : touching) {
      if (out.stream().noneMatch(p -> p.is(t.a(), t.b()))) out.add(t);
    }
    return new JointNumbers(out, fixed);
  }

  /** A bond between two rocks that are both in the tank. */
  private static boolean counts(Scene scene, JointSpec j) {
    return j.bond() != JointSpec.Bond.NONE && scene.placement(j.a()).isPresent() && scene.placement(j.b()).isPresent();
  }

  /** The number of the joint between two rocks, from 1; empty when they have none. */
  public Optional<Integer> number(String a, String b) {
    for (int i = 0; i < pairs.size(); i++) if (pairs.get(i).is(a, b)) return Optional.of(i + 1);
    return Optional.empty();
  }
}
