package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import holdfast.model.scene.Setting;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The published schema is the one that the code makes, and never refuses what the reader takes, nor the other way round. */
class SceneSchemaTest {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final JsonSchema SCHEMA =
      JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(SceneSchema.text());

  /** To publish a new one after a change of the format: run this test with {@code -Dschema.publish=true}. */
  @Test
  void thePublishedSchemaIsCurrent() throws IOException {
    Path published = SceneFolder.path().resolve("scene.schema.json");
    if (Boolean.getBoolean("schema.publish")) SceneFiles.saveText(published, SceneSchema.text());
    assertThat(Files.readString(published))
        .as("published schema; to renew it: -Dschema.publish=true")
        .isEqualTo(SceneSchema.text());
  }

  @Test
  void theSchemaIsItselfRight() throws IOException {
    JsonSchema meta = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
        .getSchema(com.networknt.schema.SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    assertThat(meta.validate(MAPPER.readTree(SceneSchema.text()))).isEmpty();
  }

  @Test
  void shippedScenesAreRightByReaderAndSchema() throws IOException {
    for (Path file : SceneFolder.scenes()) {
      String wrong = SceneReader.read(file).match(s -> "", ReadResult.Refused::rendered);
      assertThat(wrong).isEmpty();
      assertThat(SCHEMA.validate(MAPPER.readTree(file.toFile()))).as(file.toString()).isEmpty();
    }
  }

  @Test
  void bothTakeAFileWithEveryKey() throws IOException {
    assertThat(bothTake(everyKey())).isTrue();
  }

  @Test
  void theFileWithEveryKeyHasEveryKeyOfTheTable() throws IOException {
    Set<String> used = new TreeSet<>();
    visit(everyKey(), (path, object) -> object.fieldNames().forEachRemaining(k -> used.add(where(path) + k)));
    Set<String> known = new TreeSet<>();
    collect("", SceneKeys.SCENE, known);
    assertThat(used).isEqualTo(known);
  }

  @Test
  void bothRefuseAnUnknownKeyInEveryObject() throws IOException {
    forEveryObject((path, object) -> object.put("odd", 1), "an unknown key");
  }

  @Test
  void bothRefuseAValueOfAWrongTypeUnderEveryKey() throws IOException {
    for (String[] spot : everySpot()) {
      ObjectNode root = everyKey();
      ((ObjectNode) root.at(spot[0])).set(spot[1], MAPPER.createObjectNode().put("odd", 1));
      assertThat(bothRefuse(root)).as("an object under " + spot[0] + "/" + spot[1]).isTrue();
    }
  }

  @Test
  void bothHoldTheSameRanges() throws IOException {
    int tried = 0;
    for (String[] spot : everySpot()) {
      JsonNode value = everyKey().at(spot[0]).get(spot[1]);
      if (!value.isNumber()) continue;
      for (double v : new double[] {-1e7, 1e17}) {
        ObjectNode root = everyKey();
        ((ObjectNode) root.at(spot[0])).put(spot[1], v);
        assertThat(bothRefuse(root)).as(spot[0] + "/" + spot[1] + " at " + v).isTrue();
        tried++;
      }
    }
    assertThat(tried).isGreaterThan(150);
  }

  @Test
  void settingsInTheSchemaAreThoseOfTheTable() throws IOException {
    JsonNode properties = MAPPER.readTree(SceneSchema.text()).at("/$defs/settings/properties");
    List<String> names = new ArrayList<>();
    properties.fieldNames().forEachRemaining(names::add);
    assertThat(names).isEqualTo(Stream.of(Setting.values()).map(Setting::key).toList());
    for (Setting s : Setting.values()) {
      JsonNode p = properties.get(s.key());
      assertThat(p.get("minimum").doubleValue()).isEqualTo(s.least());
      assertThat(p.get("maximum").doubleValue()).isEqualTo(s.most());
      assertThat(p.get("default").doubleValue()).isEqualTo(s.initial());
      assertThat(s.admits(s.initial())).as(s.key() + " admits its own default").isTrue();
    }
  }

  /** What the schema refuses the reader refuses; the reader knows more, so not the other way round. */
  @Test
  void theSchemaIsNeverStricterThanTheReader() throws IOException {
    int refused = 0;
    List<BrokenScene> broken = Stream.of(BrokenTextTest.cases(), BrokenTankTest.cases(), BrokenRocksTest.cases(),
        BrokenLayoutTest.cases()).flatMap(c -> c).toList();
    for (BrokenScene c : broken) {
      JsonNode tree;
      try {
        tree = MAPPER.readTree(c.text());
      } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
        continue;
      }
      if (!SCHEMA.validate(tree).isEmpty()) {
        refused++;
        assertThat(readerTakes(c.text())).as(c.name()).isFalse();
      }
    }
    // Most broken files are wrong by themselves, not only in how their parts fit together.
    assertThat(refused).isGreaterThan(40);
  }

  // -- helpers ------------------------------------------------------------------------------------------------------

  private interface Visitor {
    void at(String path, ObjectNode object);
  }

  /** The full scene of the round trip with every setting and, in one placement, degrees in place of a quaternion. */
  private static ObjectNode everyKey() throws IOException {
    ObjectNode root = (ObjectNode) MAPPER.readTree(RoundTripTest.FULL);
    ObjectNode settings = root.putObject("settings");
    for (Setting s : Setting.values()) settings.put(s.key(), s.initial());
    ObjectNode first = (ObjectNode) root.at("/placements/0");
    first.putArray("turn_deg").add(10).add(0).add(0);
    ((ObjectNode) root.get("floor")).put("kind", "grid");
    ((ObjectNode) root.at("/rocks/0/mass")).put("state", "dry");
    return root;
  }

  private static List<String[]> everySpot() throws IOException {
    List<String[]> spots = new ArrayList<>();
    visit(everyKey(), (path, object) -> object.fieldNames().forEachRemaining(k -> spots.add(new String[] {path, k})));
    return spots;
  }

  private static void forEveryObject(Visitor spoil, String what) throws IOException {
    List<String> paths = new ArrayList<>();
    visit(everyKey(), (path, object) -> paths.add(path));
    for (String path : paths) {
      ObjectNode root = everyKey();
      spoil.at(path, (ObjectNode) root.at(path));
      assertThat(bothRefuse(root)).as(what + " at '" + path + "'").isTrue();
    }
  }

  private static void visit(ObjectNode root, Visitor visitor) {
    visit("", root, visitor);
  }

  private static void visit(String path, JsonNode node, Visitor visitor) {
    if (node instanceof ObjectNode o) {
      visitor.at(path, o);
      o.fieldNames().forEachRemaining(k -> visit(path + "/" + k, o.get(k), visitor));
    } else if (node instanceof ArrayNode a) {
      for (int i = 0; i < a.size(); i++) visit(path + "/" + i, a.get(i), visitor);
    }
  }

  /** A JSON pointer without the numbers of lists. */
  private static String where(String path) {
    return path.replaceAll("/\\d+", "") + "/";
  }

  private static void collect(String path, Keys keys, Set<String> names) {
    for (Key k : keys.all()) {
      names.add(path + "/" + k.name());
      if (k instanceof Key.Part p) collect(path + "/" + k.name(), p.keys(), names);
      if (k instanceof Key.Parts p) collect(path + "/" + k.name(), p.keys(), names);
    }
  }

  private static boolean bothTake(ObjectNode root) {
    return SCHEMA.validate(root).isEmpty() && readerTakes(root.toString());
  }

  private static boolean bothRefuse(ObjectNode root) {
    return !SCHEMA.validate(root).isEmpty() && !readerTakes(root.toString());
  }

  private static boolean readerTakes(String json) {
    return SceneReader.read(json, "scene.json").match(s -> true, r -> false);
  }
}
