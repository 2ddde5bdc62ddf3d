package holdfast.model.shape;

import holdfast.model.geom.Vec3;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Reads the two plain mesh formats that every scanner writes: Wavefront OBJ (corners and faces; all else is passed over)
 * and STL, text or binary. The bytes come from the caller.
 */
public final class MeshFiles {
  private static final int STL_HEADER = 84;
  private static final int STL_RECORD = 50;

  private MeshFiles() {}

  /** The mesh in these bytes; the format goes by the name's ending. */
  public static MeshResult parse(String name, byte[] bytes) {
    String lower = name.toLowerCase(Locale.ROOT);
    if (lower.endsWith(".obj")) return obj(new String(bytes, StandardCharsets.UTF_8));
    if (lower.endsWith(".stl")) return binaryStl(bytes) ? stl(bytes) : stl(new String(bytes, StandardCharsets.UTF_8));
    return new MeshResult.Unreadable("'" + name + "' ends in neither .obj nor .stl");
  }

  /** A text file may not start with "solid" and a binary one may: only the length tells for certain. */
  private static boolean binaryStl(byte[] bytes) {
    return bytes.length >= STL_HEADER
        && STL_HEADER + (long) STL_RECORD * Integer.toUnsignedLong(little(bytes).getInt(STL_HEADER - 4)) == bytes.length;
  }

  private static ByteBuffer little(byte[] bytes) {
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static MeshResult stl(byte[] bytes) {
    ByteBuffer in = little(bytes);
    List<Vec3> points = new ArrayList<>();
    for (int at = STL_HEADER; at < bytes.length; at += STL_RECORD) {
      for (int i = 0; i < 3; i++) {
        int p = at + 12 + 12 * i;
        points.add(new Vec3(in.getFloat(p), in.getFloat(p + 4), in.getFloat(p + 8)));
      }
    }
    return soup(points);
  }

  private static MeshResult stl(String text) {
    List<Vec3> points = new ArrayList<>();
    int number = 0;
    for (String line : text.split("\n")) {
      number++;
      String[] w = line.strip().split("\\s+");
      if (!w[0].equalsIgnoreCase("vertex")) continue;
      try {
        if (w.length < 4) throw new NumberFormatException();
        points.add(new Vec3(Double.parseDouble(w[1]), Double.parseDouble(w[2]), Double.parseDouble(w[3])));
      } catch (NumberFormatException e) {
        return new MeshResult.Unreadable("line " + number + ": '" + line.strip() + "' should be vertex and three numbers");
      }
    }
    if (points.size() % 3 != 0) return new MeshResult.Unreadable(points.size() + " corners do not make whole triangles");
    return soup(points);
  }

  private static MeshResult soup(List<Vec3> points) {
    if (points.isEmpty()) return new MeshResult.Unreadable("no triangles found");
    List<TriangleMesh.Triangle> triangles = new ArrayList<>();
    for (int i = 0; i < points.size(); i += 3) triangles.add(new TriangleMesh.Triangle(i, i + 1, i + 2));
    return new MeshResult.Read(new TriangleMesh(points, triangles).welded());
  }

  private static MeshResult obj(String text) {
    List<Vec3> points = new ArrayList<>();
    List<TriangleMesh.Triangle> triangles = new ArrayList<>();
    int number = 0;
    for (String line : text.split("\n")) {
      number++;
      String[] w = line.strip().split("\\s+");
      try {
        if (w[0].equals("v")) {
          if (w.length < 4) throw new NumberFormatException();
          points.add(new Vec3(Double.parseDouble(w[1]), Double.parseDouble(w[2]), Double.parseDouble(w[3])));
        } else if (w[0].equals("f")) {
          if (w.length < 4) throw new NumberFormatException();
          int first = corner(w[1], points.size());
          for (int i = 2; i + 1 < w.length; i++) {
            triangles.add(new TriangleMesh.Triangle(first, corner(w[i], points.size()), corner(w[i + 1], points.size())));
          }
        }
      } catch (NumberFormatException e) {
        return new MeshResult.Unreadable("line " + number + ": '" + line.strip() + "' should be "
            + (w[0].equals("v") ? "v and three numbers" : "f and at least three numbers of corners given above it"));
      }
    }
    if (triangles.isEmpty()) return new MeshResult.Unreadable("no faces found");
    return new MeshResult.Read(new TriangleMesh(points, triangles).welded());
  }

  /** "7", "7/1", "7//3" or "-1" (counted back from the last corner). */
  private static int corner(String word, int known) {
    int n = Integer.parseInt(word.split("/", 2)[0]);
    int i = n < 0 ? known + n : n - 1;
    if (i < 0 || i >= known) throw new NumberFormatException();
    return i;
  }
}
