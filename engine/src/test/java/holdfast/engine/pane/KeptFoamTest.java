package holdfast.engine.pane;

import static holdfast.engine.pane.PaneScenes.BARE;
import static holdfast.engine.pane.PaneScenes.foot;
import static holdfast.engine.pane.PaneScenes.load;
import static holdfast.engine.pane.PaneScenes.scene;
import static holdfast.engine.pane.PaneScenes.tank;
import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank.BottomSupport;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A pane on foam that is kept while feet come, go and press otherwise says what a new one says, to the last bit (definition). */
class KeptFoamTest {
  @ParameterizedTest
  @EnumSource(BottomSupport.class)
  void whatIsKeptChangesNoReport(BottomSupport support) {
    Random random = new Random(9);
    Map<List<Object>, FoamPlate> kept = new HashMap<>();
    for (Floor floor : List.of(BARE, Floor.DEFAULT)) {
      Scene scene = scene(tank(support, 10), floor, 500);
      List<FootLoad> feet = new ArrayList<>();
      for (int edit = 0; edit < 5; edit++) {
        if (edit == 3) feet.remove(0);
        double least = 20 * random.nextDouble();
        // One by the rim, where a load has a mesh of its own.
        double x = edit == 2 ? 0.02 : 0.05 + 0.6 * random.nextDouble();
        feet.add(foot("rock " + edit, floor, x, 0.05 + 0.3 * random.nextDouble(), 0.01, least, least + 30 * random.nextDouble()));
        PaneLoad load = load(200, feet.toArray(new FootLoad[0]));
        PaneReport report = BottomPane.judge(scene, load,
            (plate, foam) -> kept.computeIfAbsent(List.of(plate, foam), k -> new FoamPlate(plate, foam)));
        assertThat(report).as("edit %d", edit).isEqualTo(BottomPane.judge(scene, load));
      }
    }
    assertThat(kept).as("one for each foam").hasSize(support == BottomSupport.EDGES ? 0 : 2);
  }
}
