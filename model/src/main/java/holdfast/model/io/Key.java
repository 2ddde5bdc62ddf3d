package holdfast.model.io;

import holdfast.model.scene.Grade;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one key of a file may hold. The reader checks against it, the schema and the table of defaults are made from it.
 * {@code about} says what the value is, as a phrase that fits into a message.
 */
sealed interface Key {
  String name();

  boolean required();

  String about();

  /** How far a default can be trusted and where it comes from; absent where there is no default worth a remark. */
  record Source(Grade grade, String from) {}

  /**
   * A number.
   *
   * @param unit empty for a plain number
   * @param initial the default; absent when the key is required or simply may be left out
   * @param whole only integers
   */
  record Num(String name, boolean required, double least, double most, String unit, OptionalDouble initial, boolean whole,
      String about, Optional<Source> source) implements Key {
    /** The range as a message says it: {@code from 50 to 10000 mm}. */
    String range() {
      return (whole ? "a whole number " : "") + "from " + JsonLayout.number(least) + " to " + JsonLayout.number(most)
          + (unit.isEmpty() ? "" : " " + unit);
    }

    boolean admits(double v) {
      return v >= least && v <= most && (!whole || v == Math.rint(v));
    }
  }

  /** True or false. */
  record Flag(String name, String initial, String about) implements Key {
    @Override
    public boolean required() {
      return false;
    }
  }

  /** One of some words; {@code initial} is empty when the key is required. */
  record Word(String name, List<String> words, String initial, String about) implements Key {
    @Override
    public boolean required() {
      return initial.isEmpty();
    }
  }

  /** A list of different words out of some. */
  record Words(String name, List<String> words, List<String> initial, String about) implements Key {
    @Override
    public boolean required() {
      return false;
    }
  }

  /** Words for people, on one line. */
  record Text(String name, boolean required, int longest, String about) implements Key {}

  /** The one string that names the format. */
  record Format(String name, String value, String about) implements Key {
    @Override
    public boolean required() {
      return true;
    }
  }

  /** Two different names of rocks. */
  record Pair(String name, String about) implements Key {
    @Override
    public boolean required() {
      return true;
    }
  }

  /** A fixed count of numbers in one range. */
  record Vector(String name, boolean required, int size, double least, double most, String unit, String about)
      implements Key {
    String range() {
      // Without a unit it is a direction or a turn, whose own check says more than a range.
      return size + " numbers" + (unit.isEmpty() ? "" : " from " + JsonLayout.number(least) + " to "
          + JsonLayout.number(most) + " " + unit);
    }
  }

  /** Points of three numbers each; {@code lobes}: a list of such lists. */
  record Cloud(String name, boolean lobes, double reach, String unit, String about) implements Key {
    /** A solid needs four corners. */
    static final int FEWEST = 4;
    static final int MOST = 20_000;
    static final int MOST_LOBES = 200;

    @Override
    public boolean required() {
      return false;
    }
  }

  /** An object inside the object. */
  record Part(String name, boolean required, Keys keys, String about) implements Key {}

  /** A list of objects. */
  record Parts(String name, boolean required, int most, Keys keys, String about) implements Key {}

  /** Anything at all; it is not looked into. */
  record Ignored(String name, String about) implements Key {
    @Override
    public boolean required() {
      return false;
    }
  }
}
