package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every value from outside, and the page that lists them. */
class VerificationTest {
  private static List<Row> rows;

  static synchronized List<Row> rows() {
    if (rows == null) {
      List<Row> all = new ArrayList<>();
      all.addAll(StackRows.rows());
      all.addAll(SqueezeRows.rows());
      all.addAll(WallRows.rows());
      all.addAll(RoundRows.rows());
      all.addAll(TwistRows.rows());
      rows = List.copyOf(all);
    }
    return rows;
  }

  @TestFactory
  Stream<DynamicTest> everyValueFromOutsideIsMet() {
    return rows().stream().map(r -> DynamicTest.dynamicTest(r.group() + ": " + r.name(), () ->
        assertThat(r.holds()).as("%s: expected %s within %s, got %s", r.name(), r.expected(), r.tolerance(), r.ours()).isTrue()));
  }

  @Test
  void theCommittedPageIsCurrent() throws IOException {
    String page = Page.of(rows(), PushRatios.read(), Verdicts.read());
    if (Boolean.getBoolean("holdfast.verification.write")) Files.writeString(Page.file(), page);
    assertThat(Page.differences(Files.readString(Page.file()), page))
        .as("write it anew with -Dholdfast.verification.write=true").isEmpty();
  }
}
