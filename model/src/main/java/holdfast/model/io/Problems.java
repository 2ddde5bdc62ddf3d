package holdfast.model.io;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Gathers the problems of one file and hands them out in the order of the file. Used by one thread. */
final class Problems {
  /** No one reads more than this; the last line then says that there are more. */
  static final int MOST_SHOWN = 200;

  private record Placed(int order, Problem problem) {}

  private final String file;
  private final List<Placed> found = new ArrayList<>();

  Problems(String file) {
    this.file = file;
  }

  void add(Json.At at, String path, String what, String right) {
    found.add(new Placed(at.order(), new Problem(file, at.line(), path, what, right)));
  }

  /** A problem with the file itself, before any of its text. */
  void addAboutFile(String what, String right) {
    add(new Json.At(0, -1), "$", what, right);
  }

  boolean any() {
    return !found.isEmpty();
  }

  List<Problem> inFileOrder() {
    // A stable sort: problems at one place stay in the order in which they were found.
    List<Problem> sorted = found.stream().sorted(Comparator.comparingInt(Placed::order)).map(Placed::problem).toList();
    if (sorted.size() <= MOST_SHOWN) return sorted;
    List<Problem> cut = new ArrayList<>(sorted.subList(0, MOST_SHOWN));
    cut.add(new Problem(file, 0, "$", sorted.size() - MOST_SHOWN + " more problems", "mend these first"));
    return List.copyOf(cut);
  }
}
