package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.scene.Scene;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** What holds for every scene and every text. jqwik prints the seed of a failing try. */
class SceneIoProperties {
  private static final List<String> SCRAPS = List.of("{", "}", "[", "]", ",", ":", "\"", "null", "-", "1e999", "NaN", "0",
      "true", "\\",
      "\u0000", "\uD800", "12345678901234567890", "\"at_mm\"", "[[[[", "// ", "Infinity", "1e-400", "\"\\ud800\"", " ", "\n",
          "-0.0");

  @Property(tries = 300)
  void everyValidSceneComesBack(@ForAll long seed) {
    Scene scene = RandomScenes.of(seed);
    String text = SceneWriter.write(scene);
    Scene again = RoundTripTest.scene(text);
    assertThat(again).isEqualTo(scene);
    assertThat(SceneWriter.write(again)).isEqualTo(text);
  }

  @Property(tries = 3000)
  void noTextMakesTheReaderThrow(@ForAll long seed) {
    Random random = new Random(seed);
    String text = mutated(random.nextBoolean() ? RoundTripTest.FULL : BrokenScene.GOOD, random);
    ReadResult<Scene> result = SceneReader.read(text, "mutated.json");
    boolean writable = result.match(s -> !SceneWriter.write(s).isEmpty(), r -> !r.rendered().isBlank());
    assertThat(writable).isTrue();
    // One line a problem, whatever the text held.
    result.match(s -> null, r -> {
      assertThat(r.rendered().lines().count()).isEqualTo(r.problems().size());
      return null;
    });
  }

  @Property(tries = 1000)
  void noTextMakesTheBlocksReaderThrow(@ForAll long seed) {
    Random random = new Random(seed);
    boolean right = LooseBlocksReader.read(mutated(LooseBlocksReaderTest.GOOD, random), "mutated.json")
        .match(b -> !b.blocks().isEmpty(), r -> !r.problems().isEmpty());
    assertThat(right).isTrue();
  }

  @Property(tries = 2000)
  void numbersAreShortAndExact(@ForAll double value) {
    String text = JsonLayout.number(value);
    assertThat(Double.parseDouble(text)).isEqualTo(value + 0.0);
    // Never longer than what Java itself prints, but for the zeros that stand in place of an exponent.
    int digits = new BigDecimal(text).stripTrailingZeros().precision();
    assertThat(digits).isLessThanOrEqualTo(new BigDecimal(Double.toString(value)).stripTrailingZeros().precision());
  }

  @Property(tries = 1000)
  void lengthsAreWrittenWithoutAnExponent(@ForAll @DoubleRange(min = 0.01, max = 10000) double tenths) {
    double mm = tenths / 10;
    assertThat(JsonLayout.number(mm)).doesNotContainIgnoringCase("e").doesNotEndWith(".0");
  }

  /** A few pieces cut out, put in, doubled or swapped; strings and digits alike. */
  private static String mutated(String text, Random random) {
    StringBuilder out = new StringBuilder(text);
    for (int i = 1 + random.nextInt(4); i > 0 && out.length() > 10; i--) {
      int at = random.nextInt(out.length() - 8);
      switch (random.nextInt(6)) {
        case 0 -> out.delete(at, at + 1 + random.nextInt(8));
        case 1 -> out.insert(at, SCRAPS.get(random.nextInt(SCRAPS.size())));
        case 2 -> out.setCharAt(at, (char) random.nextInt(0x10000));
        case 3 -> out.insert(at, out.substring(at, at + 1 + random.nextInt(7)));
        case 4 -> replaceNumber(out, at, random);
        default -> out.setLength(random.nextInt(20) == 0 ? at : out.length());
      }
    }
    return out.toString();
  }

  /** The next number after a place becomes another value, so that the text often stays JSON. */
  private static void replaceNumber(StringBuilder out, int from, Random random) {
    int start = from;
    while (start < out.length() && !Character.isDigit(out.charAt(start))) start++;
    int end = start;
    while (end < out.length() && Character.isDigit(out.charAt(end))) end++;
    List<String> values = List.of("-1", "0", "1e999", "NaN", "1e300", "-1e-320", "null", "\"7\"", "[1]", "{}", "true", "99999");
    if (end > start) out.replace(start, end, values.get(random.nextInt(values.size())));
  }
}
