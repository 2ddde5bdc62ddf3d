package holdfast.model.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Settings;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Expected values: boxes and prisms (derived, exact). */
class MeshTest {
  private static final String CUBE = """
      # a cube of side 2
      v 0 0 0
      v 2 0 0
      v 2 2 0
      v 0 2 0
      v 0 0 2
      v 2 0 2
      v 2 2 2
      v 0 2 2
      vn 0 0 1
      f 4 3 2 1
      f 5/1 6/2 7/3 8/4
      f 1//1 2//1 6//1 5//1
      f -7 -6 -2 -3
      f 3 4 8 7
      f 4 1 5 8
      """;

  private static MeshResult parse(String name, String text) {
    return MeshFiles.parse(name, text.getBytes(StandardCharsets.UTF_8));
  }

  private static TriangleMesh mesh(MeshResult r) {
    return r.match(m -> m, why -> {
      throw new AssertionError(why);
    });
  }

  private static String why(MeshResult r) {
    return r.match(m -> "read", w -> w);
  }

  /** A prism: a polygon in the x z plane (counter-clockwise seen from the front, -y), as fan from its corner 0. */
  private static TriangleMesh prism(double depth, double[][] xz, int[][] caps) {
    int n = xz.length;
    java.util.ArrayList<Vec3> p = new java.util.ArrayList<>();
    for (double[] q : xz) p.add(new Vec3(q[0], 0, q[1]));
    for (double[] q : xz) p.add(new Vec3(q[0], depth, q[1]));
    java.util.ArrayList<TriangleMesh.Triangle> t = new java.util.ArrayList<>();
    for (int[] c : caps) {
      t.add(new TriangleMesh.Triangle(c[0], c[1], c[2]));
      t.add(new TriangleMesh.Triangle(n + c[0], n + c[2], n + c[1]));
    }
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      t.add(new TriangleMesh.Triangle(i, n + i, j));
      t.add(new TriangleMesh.Triangle(j, n + i, n + j));
    }
    return new TriangleMesh(p, t);
  }

  /** A gate 200 wide, 150 high, 80 deep, with a passage of 100 x 100 under the lintel. */
  private static TriangleMesh gate() {
    double[][] xz = {{0, 0}, {50, 0}, {50, 100}, {150, 100}, {150, 0}, {200, 0}, {200, 150}, {0, 150}};
    int[][] caps = {{0, 1, 2}, {0, 2, 7}, {2, 6, 7}, {2, 3, 6}, {3, 4, 5}, {3, 5, 6}};
    return prism(80, xz, caps);
  }

  @Test
  void readsObj() {
    TriangleMesh m = mesh(parse("cube.OBJ", CUBE));
    assertThat(m.points()).hasSize(8);
    assertThat(m.triangles()).hasSize(12);
    assertThat(m.volume()).isCloseTo(8, within(1e-12));
    assertThat(m.flaw()).isEmpty();
  }

  @Test
  void readsBothKindsOfStl() {
    TriangleMesh cube = mesh(parse("cube.obj", CUBE));
    StringBuilder text = new StringBuilder("solid cube\n");
    ByteBuffer bytes = ByteBuffer.allocate(84 + 50 * cube.triangles().size()).order(ByteOrder.LITTLE_ENDIAN);
    bytes.put("solid misleading".getBytes(StandardCharsets.US_ASCII)).position(80);
    bytes.putInt(cube.triangles().size());
    for (TriangleMesh.Triangle t : cube.triangles()) {
      text.append("facet normal 0 0 0\n outer loop\n");
      bytes.putFloat(0).putFloat(0).putFloat(0);
      for (int i : new int[] {t.a(), t.b(), t.c()}) {
        Vec3 p = cube.points().get(i);
        text.append("  vertex ").append(p.x()).append(' ').append(p.y()).append(' ').append(p.z()).append('\n');
        bytes.putFloat((float) p.x()).putFloat((float) p.y()).putFloat((float) p.z());
      }
      text.append(" endloop\nendfacet\n");
      bytes.putShort((short) 0);
    }
    for (MeshResult r : List.of(parse("a.stl", text + "endsolid\n"), MeshFiles.parse("b.stl", bytes.array()))) {
      assertThat(mesh(r).points()).hasSize(8);
      assertThat(mesh(r).volume()).isCloseTo(8, within(1e-12));
      assertThat(mesh(r).flaw()).isEmpty();
    }
  }

  @Test
  void saysWhatIsWrongWithAFile() {
    assertThat(why(parse("stone.ply", ""))).isEqualTo("'stone.ply' ends in neither .obj nor .stl");
    assertThat(why(parse("stone.obj", "v 1 2\n"))).isEqualTo("line 1: 'v 1 2' should be v and three numbers");
    assertThat(why(parse("stone.obj", "v 1 2 x\n"))).isEqualTo("line 1: 'v 1 2 x' should be v and three numbers");
    assertThat(why(parse("stone.obj", "v 1 2 3\nf 1 2 3\n")))
        .isEqualTo("line 2: 'f 1 2 3' should be f and at least three numbers of corners given above it");
    assertThat(why(parse("stone.obj", ""))).isEqualTo("no faces found");
    assertThat(why(parse("stone.stl", "solid\nvertex 1 2\n")))
        .isEqualTo("line 2: 'vertex 1 2' should be vertex and three numbers");
    assertThat(why(parse("stone.stl", "solid\nvertex 1 2 3\n"))).isEqualTo("1 corners do not make whole triangles");
    assertThat(why(parse("stone.stl", ""))).isEqualTo("no triangles found");
  }

  @Test
  void refusesWhatBoundsNoSolid() {
    String open = CUBE.substring(0, CUBE.lastIndexOf("f 4"));
    assertThat(mesh(parse("a.obj", open)).flaw())
        .contains("the mesh is open: 4 edges have a triangle on one side only; close its holes first");
    String flipped = CUBE.replace("f 4 1 5 8", "f 8 5 1 4");
    assertThat(mesh(parse("a.obj", flipped)).flaw().orElseThrow()).startsWith("the mesh is not one clean surface: 4 edges");
    assertThat(mesh(parse("a.obj", CUBE.replace("v 2 2 2", "v 2 NaN 2"))).flaw())
        .contains("corner 7 of the mesh is not a finite number");
  }

  @Test
  void aConvexMeshIsOneLobeWhicheverWayItsTrianglesFace() {
    TriangleMesh cube = mesh(parse("cube.obj", CUBE));
    List<Hull> lobes = MeshSplitter.lobes(cube);
    assertThat(lobes).hasSize(1);
    assertThat(Polyhedra.volume(lobes.get(0))).isCloseTo(8, within(1e-12));
    TriangleMesh inside = new TriangleMesh(cube.points(),
        cube.triangles().stream().map(t -> new TriangleMesh.Triangle(t.a(), t.c(), t.b())).toList());
    assertThat(MeshSplitter.lobes(inside)).hasSize(1);
  }

  @Test
  void anLIsTwoBoxesAndAGateThree() {
    // L: 2 x 2 less a quarter, in a hull of 3.5: filled to 0.857, so it is cut.
    double[][] l = {{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}};
    TriangleMesh ell = prism(1, l, new int[][] {{0, 1, 2}, {0, 2, 3}, {0, 3, 5}, {3, 4, 5}});
    assertThat(ell.flaw()).isEmpty();
    assertThat(ell.volume()).isCloseTo(3, within(1e-12));
    List<Hull> two = MeshSplitter.lobes(ell);
    assertThat(two).hasSize(2);
    assertThat(Unions.massProperties(two).map(MassProperties::volumeM3).orElseThrow()).isCloseTo(3, within(1e-9));

    assertThat(gate().flaw()).isEmpty();
    assertThat(gate().volume()).isCloseTo(80 * (200 * 150 - 100 * 100), within(1e-6));
    List<Hull> three = MeshSplitter.lobes(gate());
    assertThat(three).hasSize(3);
    double v = Unions.massProperties(three.stream().toList()).map(MassProperties::volumeM3).orElseThrow();
    assertThat(v).isCloseTo(80 * (200 * 150 - 100 * 100), within(1.0));
  }

  @Test
  void aMeshRockComesOutInMetres() {
    Rock rock = Rocks.rock(new Rock.Mesh("gate.obj", 1), Rocks.dry(3));
    RockBody b = RockShapes.body(rock, Settings.DEFAULT, f -> new MeshResult.Read(gate())).match(x -> x, why -> {
      throw new AssertionError(why);
    });
    assertThat(b.solid().volumeM3()).isCloseTo(1.6e-3, within(1e-9));
    assertThat(b.centre().x()).isCloseTo(0.1, within(1e-6));
    Rock feet = Rocks.rock(new Rock.Mesh("gate.obj", 304.8), Rocks.dry(3));
    Double times = RockShapes.body(feet, Settings.DEFAULT, f -> new MeshResult.Read(gate())).match(
        x -> x.solid().volumeM3() / b.solid().volumeM3(), why -> 0.0);
    assertThat(times).isCloseTo(Math.pow(304.8, 3), within(1e3));
  }

  @Test
  void aFineScanIsThinnedWithoutLosingMuch() {
    // A sphere of radius 50 as a mesh of latitude and longitude: the hull of all corners, thinned, keeps over 93 % of it.
    int rings = 60;
    int around = 120;
    java.util.ArrayList<Vec3> p = new java.util.ArrayList<>(List.of(new Vec3(0, 0, -50), new Vec3(0, 0, 50)));
    Random random = new Random(4);
    for (int i = 1; i < rings; i++) {
      for (int j = 0; j < around; j++) {
        double a = Math.PI * i / rings;
        double b = 2 * Math.PI * j / around;
        double r = 50 - 0.2 * random.nextDouble();
        p.add(new Vec3(r * Math.sin(a) * Math.cos(b), r * Math.sin(a) * Math.sin(b), -r * Math.cos(a)));
      }
    }
    java.util.ArrayList<TriangleMesh.Triangle> t = new java.util.ArrayList<>();
    for (int j = 0; j < around; j++) {
      int k = (j + 1) % around;
      t.add(new TriangleMesh.Triangle(0, 2 + k, 2 + j));
      int last = 2 + (rings - 2) * around;
      t.add(new TriangleMesh.Triangle(1, last + j, last + k));
      for (int i = 0; i < rings - 2; i++) {
        int a = 2 + i * around;
        t.add(new TriangleMesh.Triangle(a + j, a + k, a + around + j));
        t.add(new TriangleMesh.Triangle(a + k, a + around + k, a + around + j));
      }
    }
    TriangleMesh m = new TriangleMesh(p, t);
    assertThat(m.flaw()).isEmpty();
    List<Hull> lobes = MeshSplitter.lobes(m);
    assertThat(lobes).hasSize(1);
    assertThat(lobes.get(0).corners().size()).isBetween(60, 90);
    double sphere = 4 * Math.PI / 3 * 50 * 50 * 50;
    assertThat(Polyhedra.volume(lobes.get(0)) / sphere).isBetween(0.9, 1.0);
  }
}
