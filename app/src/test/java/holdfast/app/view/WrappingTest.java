package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Lines are told by letters here: each is one wide. */
class WrappingTest {
  private static List<String> lines(String words, int width) {
    return Wrapping.broken(words, width, String::length);
  }

  @Test
  void breaksBetweenWordsOnly() {
    assertThat(lines("a push of any strength", 10)).containsExactly("a push of", "any", "strength");
    assertThat(lines("one word is toolongforit", 8)).containsExactly("one word", "is", "toolongforit");
  }

  @Test
  void keepsFigureAndUnitTogether() {
    assertThat(lines("slides at 15.9 N. It", 14)).containsExactly("slides at", "15.9 N. It");
    assertThat(lines("bends to 5800 psi; on", 13)).containsExactly("bends to", "5800 psi; on");
    assertThat(lines("at 0.3 N/mm², with", 10)).containsExactly("at", "0.3 N/mm²,", "with");
  }

  @Test
  void keepsParagraphs() {
    assertThat(lines("one\ntwo three", 20)).containsExactly("one", "two three");
  }
}
