package holdfast.model.io;

import java.util.List;
import java.util.function.Function;

/** What came of reading a file: its content, or all that is wrong with it. */
public sealed interface ReadResult<T> {
  /** The file is right. */
  record Read<T>(T content) implements ReadResult<T> {}

  /** The file is wrong: at least one problem, in the order of the file. */
  record Refused<T>(List<Problem> problems) implements ReadResult<T> {
    public Refused {
      problems = List.copyOf(problems);
      if (problems.isEmpty()) throw new IllegalArgumentException("refused without a problem");
    }

    /** One line for each problem, each ended by a line feed. */
    public String rendered() {
      StringBuilder lines = new StringBuilder();
      problems.forEach(p -> lines.append(p.rendered()).append('\n'));
      return lines.toString();
    }
  }

  /** Both cases, exhaustively. */
  default <R> R match(Function<? super T, ? extends R> read, Function<? super Refused<T>, ? extends R> refused) {
    if (this instanceof Read<T> r) return read.apply(r.content());
    return refused.apply((Refused<T>) this);
  }
}
