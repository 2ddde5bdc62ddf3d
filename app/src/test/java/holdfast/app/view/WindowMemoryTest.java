package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Edit;
import holdfast.app.edit.Scenes;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import org.junit.jupiter.api.Test;

/** Memory of the window does not grow with what was done and taken back. */
class WindowMemoryTest extends WindowCase {
  /** Ten thousand edits and undos through the window's own workbench, with frames between them. */
  @Test
  void memoryStaysFlatOverTenThousandEditsAndUndos() {
    editAndUndo(1_000);
    long early = used();
    editAndUndo(10_000);
    // 10,000 kept scenes would be over 5 MB; what is left is noise of the collector.
    assertThat(used() - early).isLessThan(3_000_000L);
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
  }

  private void editAndUndo(int times) {
    for (int i = 0; i < times; i++) {
      d.bench.apply(new Edit.Move("move", "block", new Vec3(250 + i % 100, 200, 70), Quat.IDENTITY));
      if (i % 500 == 0) d.frame();
      d.bench.undo();
      if (i % 500 == 250) d.frame();
    }
    d.rest();
  }

  private static long used() {
    for (int i = 0; i < 4; i++) System.gc();
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }
}
