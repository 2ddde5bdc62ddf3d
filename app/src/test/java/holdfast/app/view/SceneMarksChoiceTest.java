package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.check.Code;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each kind of finding has its drawing; of some it is enough to be shown which rock or which tank they are about. */
class SceneMarksChoiceTest {
  @ParameterizedTest
  @EnumSource(Code.class)
  void everyKindOfFindingIsDrawn(Code c) {
    boolean drawn = SceneMarksChoice.rose(c) || SceneMarksChoice.gaps(c) || SceneMarksChoice.feet(c) || SceneMarksChoice.joints(c)
        || SceneMarksChoice.light(c) || SceneMarksChoice.moves(c) || SceneMarksChoice.pane(c) || SceneMarksChoice.reach(c)
        || SceneMarksChoice.height(c) || SceneMarksChoice.strike(c);
    boolean plain = switch (c) {
      case PANE_THICKNESS, PANE_SUPPORT, FLOATS, HEAVY_LIFT, OPENING, DEAD_WATER, ROCK_AMOUNT -> true;
      default -> false;
    };
    assertThat(drawn).as(c.word()).isEqualTo(!plain);
  }
}
