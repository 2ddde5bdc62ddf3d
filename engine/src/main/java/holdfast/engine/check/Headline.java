package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.check.PushStudy.PushFound;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The one line on top. */
final class Headline {
  /** So many kinds of fault are told by name. */
  private static final int NAMED = 4;

  private Headline() {}

  static String of(HeapStudy study, CheckReport.Verdict verdict, List<Finding> findings, List<PushFound> weakest) {
    double tier = study.scene().scene().settings().get(Setting.PUSH_TIER_N);
    return switch (verdict) {
      case PASSES -> text("Stands and stays in every state; nothing topples under a push of %s N on any rock from any side%s.",
          Draft.plain(tier), first(study, weakest)) + left(study.scene().scene());
      case NOTHING -> "No rock is placed yet. Give each rock of the heap its place, then check again."
          + left(study.scene().scene());
      case UNDECIDED -> "Could not be settled: treat it as not safe until it is.";
      case FAILS -> "Not safe as it is: " + kinds(findings) + ".";
    };
  }

  /** What fails, the gravest kinds by name and how many more there are. */
  private static String kinds(List<Finding> findings) {
    List<String> kinds = findings.stream().filter(f -> f.severity() == Severity.FAIL).map(f -> f.code().title()).distinct().toList();
    // Not one alone under "more": its name takes no more room.
    if (kinds.size() <= NAMED + 1) return String.join(", ", kinds);
    return String.join(", ", kinds.subList(0, NAMED)) + text(" and %d more kinds of fault", kinds.size() - NAMED);
  }

  /** Rocks that have no place are not judged, and it is said that they are not. */
  private static String left(Scene scene) {
    List<String> out = scene.rocks().stream().map(Rock::name).filter(r -> scene.placement(r).isEmpty()).toList();
    return out.isEmpty() ? "" : text(" Not placed, and not judged: %s.", Draft.names(out));
  }

  private static String first(HeapStudy study, List<PushFound> weakest) {
    return IntStream.range(0, weakest.size()).boxed().filter(i -> !weakest.get(i).unlimited())
        .min(Comparator.comparingDouble(i -> weakest.get(i).marginN()))
        .map(i -> text("; the first to move is %s, which %s at %.1f N", study.scene().name(i), weakest.get(i).movement().word(),
            Draft.down(weakest.get(i).marginN())))
        .orElse("");
  }
}
