package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.Shapes;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Shipped scenes and the real judge, with fewer directions of pushing than usual; each scene is judged once a run. */
final class Judged {
  private static final Map<Judge.Depth, Map<Scene, CheckReport>> KNOWN = new EnumMap<>(Judge.Depth.class);

  private Judged() {}

  static Path folder() {
    Path p = Path.of("").toAbsolutePath();
    while (!Files.isRegularFile(p.resolve("scenes/cube.json"))) p = p.getParent();
    return p.resolve("scenes");
  }

  /** A shipped scene, or one of this package's own. */
  static Scene scene(String name) {
    Path shipped = folder().resolve(name + ".json");
    Path file = Files.exists(shipped) ? shipped : Path.of("src/test/resources/holdfast/app/view/" + name + ".json");
    Scene s = SceneReader.read(file).match(x -> x, refused -> {
      throw new AssertionError(refused.rendered());
    });
    Map<Setting, Double> given = new EnumMap<>(Setting.class);
    given.putAll(s.settings().given());
    given.put(Setting.PUSH_DIRECTIONS, 8.0);
    return s.withSettings(new Settings(given));
  }

  /** The real judge, which works nothing out twice. */
  static final Judge.Work WORK = new Judge.Work() {
    @Override
    public CheckReport judge(Scene scene, Shapes shapes, Judge.Depth depth, CheckWatch watch) throws Exception {
      return Judged.judge(scene, shapes, depth, watch);
    }

    @Override
    public List<CheckReport.PushLine> rose(Scene scene, Shapes shapes, String rock) throws Exception {
      return Viewport.judging().rose(scene, shapes, rock);
    }
  };

  static CheckReport judge(Scene scene, Shapes shapes, Judge.Depth depth, CheckWatch watch) throws Exception {
    synchronized (KNOWN) {
      Map<Scene, CheckReport> known = KNOWN.computeIfAbsent(depth, d -> new LinkedHashMap<>());
      CheckReport r = known.get(scene);
      if (r == null) {
        r = Viewport.judging().judge(scene, shapes, depth, watch);
        known.put(scene, r);
      }
      assertThat(r.scene()).isEqualTo(scene);
      return r;
    }
  }
}
