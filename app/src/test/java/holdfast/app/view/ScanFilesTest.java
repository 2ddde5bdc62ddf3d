package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Polyhedra;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Settings;
import holdfast.model.shape.MeshResult;
import holdfast.model.shape.RockShapes;
import holdfast.model.shape.ShapeResult;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The same box of 100 x 80 x 60 mm in each of the four file formats, written by hand after their specifications (OBJ and
 * STL: as commonly documented; PLY: G. Turk 1994; GLB: glTF 2.0, section 4; all published). Its volume is exact.
 */
class ScanFilesTest {
  private static final double[][] CORNERS = new double[8][];
  private static final int[][] FACES = {
    {0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4}, {2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5}
  };

  static {
    for (int i = 0; i < 8; i++) CORNERS[i] = new double[] {(i & 1) * 100.0, (i >> 1 & 1) * 80.0, (i >> 2) * 60.0};
  }

  @TempDir
  Path folder;

  /** Writes the box under a name whose ending tells the format. */
  static Path box(Path folder, String ending) throws IOException {
    Path file = folder.resolve("box." + ending);
    return switch (ending) {
      case "obj" -> Files.writeString(file, obj());
      case "ply" -> Files.writeString(file, ply());
      case "stl" -> Files.writeString(file, stl());
      default -> Files.write(file, glb());
    };
  }

  private static String obj() {
    StringBuilder s = new StringBuilder();
    for (double[] p : CORNERS) s.append("v ").append(p[0]).append(' ').append(p[1]).append(' ').append(p[2]).append('\n');
    for (int[] f : FACES) s.append("f ").append(f[0] + 1).append(' ').append(f[1] + 1).append(' ').append(f[2] + 1).append('\n');
    return s.toString();
  }

  private static String ply() {
    StringBuilder s = new StringBuilder("ply\nformat ascii 1.0\nelement vertex 8\nproperty float x\nproperty float y\n"
        + "property float z\nelement face 12\nproperty list uchar int vertex_indices\nend_header\n");
    for (double[] p : CORNERS) s.append(p[0]).append(' ').append(p[1]).append(' ').append(p[2]).append('\n');
    for (int[] f : FACES) s.append("3 ").append(f[0]).append(' ').append(f[1]).append(' ').append(f[2]).append('\n');
    return s.toString();
  }

  private static String stl() {
    StringBuilder s = new StringBuilder("solid box\n");
    for (int[] f : FACES) {
      s.append("facet normal 0 0 0\nouter loop\n");
      for (int i : f) s.append("vertex ").append(CORNERS[i][0]).append(' ').append(CORNERS[i][1]).append(' ').append(CORNERS[i][2]).append('\n');
      s.append("endloop\nendfacet\n");
    }
    return s.append("endsolid box\n").toString();
  }

  private static byte[] glb() {
    ByteBuffer data = ByteBuffer.allocate(8 * 12 + 36 * 2).order(ByteOrder.LITTLE_ENDIAN);
    for (double[] p : CORNERS) for (double v : p) data.putFloat((float) v);
    for (int[] f : FACES) for (int i : f) data.putShort((short) i);
    String text = "{\"asset\":{\"version\":\"2.0\"},\"scene\":0,\"scenes\":[{\"nodes\":[0]}],\"nodes\":[{\"mesh\":0}],"
        + "\"meshes\":[{\"primitives\":[{\"attributes\":{\"POSITION\":0},\"indices\":1}]}],"
        + "\"buffers\":[{\"byteLength\":" + data.capacity() + "}],"
        + "\"bufferViews\":[{\"buffer\":0,\"byteOffset\":0,\"byteLength\":96},{\"buffer\":0,\"byteOffset\":96,\"byteLength\":72}],"
        + "\"accessors\":[{\"bufferView\":0,\"componentType\":5126,\"count\":8,\"type\":\"VEC3\",\"min\":[0,0,0],\"max\":[100,80,60]},"
        + "{\"bufferView\":1,\"componentType\":5123,\"count\":36,\"type\":\"SCALAR\"}]}";
    byte[] json = (text + " ".repeat((4 - text.length() % 4) % 4)).getBytes(StandardCharsets.US_ASCII);
    ByteBuffer out = ByteBuffer.allocate(12 + 8 + json.length + 8 + data.capacity()).order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(0x46546C67).putInt(2).putInt(out.capacity());
    out.putInt(json.length).putInt(0x4E4F534A).put(json);
    out.putInt(data.capacity()).putInt(0x004E4942).put(data.array());
    return out.array();
  }

  @ParameterizedTest
  @ValueSource(strings = {"obj", "ply", "stl", "glb"})
  void sameBoxFromEachFormat(String ending) throws IOException {
    Path file = box(folder, ending);
    Rock rock = new Rock("scanned", Rock.Kind.DRY, new Rock.Mesh(file.getFileName().toString(), 1),
        new Rock.Weighed(0.8, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty());
    ShapeResult shaped = RockShapes.body(rock, Settings.DEFAULT, name -> ScanFiles.load(folder, name));
    assertThat(shaped).as(String.valueOf(shaped)).isInstanceOf(ShapeResult.Shaped.class);
    double volume = ((ShapeResult.Shaped) shaped).body().lobes().stream().mapToDouble(ScanFilesTest::volume).sum();
    assertThat(volume).isCloseTo(0.1 * 0.08 * 0.06, within(1e-9));
  }

  private static double volume(Hull h) {
    return Polyhedra.volume(h);
  }

  @Test
  void saysWhatCannotBeRead() throws IOException {
    Files.writeString(folder.resolve("torn.ply"), "ply\nformat ascii 1.0\nelement vertex 3\n");
    Files.writeString(folder.resolve("rock.txt"), "no mesh");
    for (String name : new String[] {"torn.ply", "rock.txt", "missing.obj"}) {
      assertThat(ScanFiles.load(folder, name)).as(name).isInstanceOf(MeshResult.Unreadable.class);
    }
  }
}
