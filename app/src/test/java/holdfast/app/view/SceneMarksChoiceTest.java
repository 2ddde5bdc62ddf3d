package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.check.Code;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each kind of finding has its drawing. */
class SceneMarksChoiceTest {
  @ParameterizedTest
  @EnumSource(Code.class)
  void everyKindOfFindingIsDrawn(Code c) {
    assertThat(SceneMarksChoice.rose(c) || SceneMarksChoice.gaps(c) || SceneMarksChoice.feet(c) || SceneMarksChoice.joints(c)
        || SceneMarksChoice.light(c) || SceneMarksChoice.moves(c) || SceneMarksChoice.pane(c) || SceneMarksChoice.reach(c)
        || SceneMarksChoice.height(c) || SceneMarksChoice.strike(c) || SceneMarksChoice.lift(c) || SceneMarksChoice.opening(c)
        || SceneMarksChoice.floats(c) || SceneMarksChoice.hollow(c) || SceneMarksChoice.plate(c) || SceneMarksChoice.amount(c))
        .as(c.word()).isTrue();
  }
}
