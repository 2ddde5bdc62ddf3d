package holdfast.model.io;

import holdfast.model.geom.Vec3;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Reads {@code loose-blocks/1} and reports problems as {@link SceneReader} does. */
public final class LooseBlocksReader {
  static final String FORMAT_NAME = "loose-blocks/1";

  static final Key.Text ID = new Key.Text("id", true, 80, "a name, different for every block");
  static final Key.Flag FIXED = new Key.Flag("fixed", "false", "does not move");
  static final Key.Num DENSITY = new Key.Num("density_kg_m3", true, 1e-3, 1e5, "kg/m3", OptionalDouble.empty(), false,
      "the block's density", Optional.empty());
  static final Key.Cloud VERTICES = new Key.Cloud("vertices_m", false, 1e4, "m", "points whose convex hull is the block");
  static final Keys BLOCK = Keys.of("a block", ID, FIXED, DENSITY, VERTICES);
  static final Key.Word LOAD_KIND = new Key.Word("kind", List.of("fraction_of_weight"), "", "how the load grows");
  static final Key.Vector DIRECTION = new Key.Vector("direction", true, 3, -1e6, 1e6, "", "the way the load pushes: x, y, z");
  static final Keys LOAD = Keys.of("a load", LOAD_KIND, DIRECTION);
  static final Key.Format FORMAT = new Key.Format("format", FORMAT_NAME, "names this format");
  static final Key.Text NAME = new Key.Text("name", false, 200, "a title for people");
  static final Key.Num FRICTION = new Key.Num("friction", true, 0, 100, "", OptionalDouble.empty(), false,
      "coefficient of friction of every contact", Optional.empty());
  static final Key.Parts BLOCKS = new Key.Parts("blocks", true, 10_000, BLOCK, "the blocks");
  static final Key.Part BODY_LOAD = new Key.Part("load", false, LOAD, "a load to be raised until the heap fails");
  static final Keys FILE = Keys.of("a file of loose blocks", FORMAT, NAME, FRICTION, BLOCKS, BODY_LOAD,
      new Key.Ignored("source", "where the case comes from"), new Key.Ignored("expected", "what it should give"));

  private final Problems problems;

  private LooseBlocksReader(Problems problems) {
    this.problems = problems;
  }

  public static ReadResult<LooseBlocks> read(Path file) {
    return SceneReader.readFile(file, LooseBlocksReader::read);
  }

  /** Reads text; {@code label} names it in messages. */
  public static ReadResult<LooseBlocks> read(String json, String label) {
    Problems problems = new Problems(label);
    LooseBlocksReader reader = new LooseBlocksReader(problems);
    return SceneReader.result(JsonText.parse(json, problems).flatMap(reader::file), problems);
  }

  private Optional<LooseBlocks> file(Json root) {
    if (root instanceof Json.Obj o && o.member("format").isPresent()) {
      Json format = o.member("format").get().value();
      if (!(format instanceof Json.Str s && s.text().equals(FORMAT_NAME))) {
        String hint = format instanceof Json.Str s && s.text().equals(SceneKeys.FORMAT_NAME)
            ? " (a scene is for 'holdfast check')" : "";
        problems.add(format.at(), "$.format", format.shown(), "must be \"" + FORMAT_NAME + "\"" + hint);
        return Optional.empty();
      }
    }
    return ObjectWalk.over(root, "$", FILE, problems).flatMap(this::blocks);
  }

  private Optional<LooseBlocks> blocks(ObjectWalk walk) {
    if (!walk.has(FORMAT)) walk.refuse(FORMAT, "must be \"" + FORMAT_NAME + "\"");
    String name = walk.text(NAME);
    double friction = walk.number(FRICTION);
    List<LooseBlocks.Block> blocks = new ArrayList<>();
    Set<String> ids = new HashSet<>();
    List<ObjectWalk> walks = walk.parts(BLOCKS);
    for (ObjectWalk b : walks) {
      String id = b.text(ID);
      if (!id.isEmpty() && !ids.add(id)) b.refuse(ID, "must be different for every block");
      boolean fixed = b.flag(FIXED, false);
      double density = b.number(DENSITY);
      if (!b.has(VERTICES)) b.refuse(VERTICES, "must be given: " + VERTICES.about());
      b.cloud(VERTICES).ifPresent(v -> blocks.add(new LooseBlocks.Block(id, fixed, density, v.get(0))));
    }
    if (walk.value(BLOCKS).orElse(null) instanceof Json.Arr a && a.items().isEmpty()) {
      walk.refuse(BLOCKS, "must have at least one block");
    }
    Optional<LooseBlocks.BodyLoad> load = walk.part(BODY_LOAD).flatMap(this::load);
    return problems.any() ? Optional.empty() : Optional.of(new LooseBlocks(name, friction, blocks, load));
  }

  private Optional<LooseBlocks.BodyLoad> load(ObjectWalk walk) {
    walk.word(LOAD_KIND, new String[] {"fraction_of_weight"});
    Optional<Vec3> direction = walk.vec3(DIRECTION);
    if (direction.isPresent() && direction.get().norm() < 1e-9) {
      walk.refuse(DIRECTION, "must point somewhere");
      return Optional.empty();
    }
    return direction.map(d -> new LooseBlocks.BodyLoad(d.unit()));
  }
}
