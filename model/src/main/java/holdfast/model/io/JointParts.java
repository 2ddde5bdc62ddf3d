package holdfast.model.io;

import holdfast.model.scene.JointSpec;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Reads the joints: two rocks that there are, each pair once, and what its bond needs. */
final class JointParts {
  private final Problems problems;
  private final RockTable rocks;

  JointParts(Problems problems, RockTable rocks) {
    this.problems = problems;
    this.rocks = rocks;
  }

  List<JointSpec> read(List<ObjectWalk> walks) {
    List<JointSpec> joints = new ArrayList<>();
    Set<Set<String>> seen = new HashSet<>();
    for (ObjectWalk walk : walks) {
      Optional<List<Json.Str>> pair = walk.pair(SceneKeys.BETWEEN);
      pair.ifPresent(p -> checkPair(walk, p, seen));
      Optional<JointSpec.Bond> bond = walk.word(SceneKeys.BOND, JointSpec.Bond.values());
      bond.flatMap(b -> pair.map(p -> joint(walk, p.get(0).text(), p.get(1).text(), b))).ifPresent(joints::add);
      if (pair.isEmpty()) bond.ifPresent(b -> joint(walk, "", "", b));
    }
    return joints;
  }

  private void checkPair(ObjectWalk walk, List<Json.Str> pair, Set<Set<String>> seen) {
    for (int i = 0; i < 2; i++) {
      Json.Str name = pair.get(i);
      if (!rocks.knows(name.text())) {
        problems.add(name.at(), Paths.item(walk.pathOf(SceneKeys.BETWEEN), i), name.shown(), rocks.hint(name.text()));
      }
    }
    String a = pair.get(0).text();
    String b = pair.get(1).text();
    if (a.equals(b)) {
      walk.refuse(SceneKeys.BETWEEN, "must name two different rocks");
    } else if (!seen.add(Set.of(a, b))) {
      walk.refuse(SceneKeys.BETWEEN, JsonLayout.quoted(a) + " and " + JsonLayout.quoted(b) + " a second time",
          "must be one joint for each pair");
    }
  }

  private static JointSpec joint(ObjectWalk walk, String a, String b, JointSpec.Bond bond) {
    boolean paste = bond == JointSpec.Bond.MORTAR || bond == JointSpec.Bond.PUTTY || bond == JointSpec.Bond.GEL;
    boolean rod = bond == JointSpec.Bond.ROD;
    String why = "must be left out beside bond \"" + bond.word() + "\"";
    if (bond == JointSpec.Bond.NONE) walk.notBeside(SceneKeys.MADE_IN, why);
    if (!paste) walk.notBeside(SceneKeys.AMOUNT, why);
    if (!rod) Stream.of(SceneKeys.ROD_DIAMETER, SceneKeys.ROD_DEPTH, SceneKeys.ROD_GLUED).forEach(k -> walk.notBeside(k, why));
    return new JointSpec(a, b, bond,
        paste ? walk.number(SceneKeys.AMOUNT) : 0,
        rod ? walk.number(SceneKeys.ROD_DIAMETER) : 0,
        rod ? walk.number(SceneKeys.ROD_DEPTH) : 0,
        rod && walk.flag(SceneKeys.ROD_GLUED, false),
        walk.word(SceneKeys.MADE_IN, JointSpec.MadeIn.values()).orElse(JointSpec.MadeIn.BENCH));
  }
}
