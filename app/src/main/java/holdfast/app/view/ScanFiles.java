package holdfast.app.view;

import holdfast.model.geom.Vec3;
import holdfast.model.shape.MeshFiles;
import holdfast.model.shape.MeshResult;
import holdfast.model.shape.TriangleMesh;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lwjgl.assimp.AIFace;
import org.lwjgl.assimp.AIMesh;
import org.lwjgl.assimp.AIScene;
import org.lwjgl.assimp.AIVector3D;
import org.lwjgl.assimp.Assimp;
import org.lwjgl.system.MemoryUtil;

/** Meshes of scanned rocks: OBJ and STL by the model's own reader, PLY and GLB by the import library. */
public final class ScanFiles {
  private static final long MOST_BYTES = 400_000_000L;

  private ScanFiles() {}

  /** The mesh in a file beside the scene. */
  public static MeshResult load(Path folder, String name) {
    try {
      Path file = folder.resolve(name);
      if (Files.size(file) > MOST_BYTES) {
        return new MeshResult.Unreadable("the file is larger than 400 MB; thin the scan out first");
      }
      byte[] bytes = Files.readAllBytes(file);
      String ending = ending(name);
      if (ending.equals("obj") || ending.equals("stl")) return MeshFiles.parse(name, bytes);
      if (ending.equals("ply") || ending.equals("glb")) return imported(bytes, ending);
      return new MeshResult.Unreadable("'" + name + "' ends in none of .obj, .ply, .stl and .glb");
    } catch (NoSuchFileException e) {
      return new MeshResult.Unreadable("there is no file '" + name + "' in " + folder);
    } catch (IOException e) {
      return new MeshResult.Unreadable("'" + name + "' could not be read: " + e.getMessage());
    }
  }

  /** A file whose name tells that it is a scan. */
  static boolean isScan(String name) {
    return List.of("obj", "ply", "stl", "glb").contains(ending(name));
  }

  /** Millimetres of a unit: glTF counts in metres (glTF 2.0, section 3.4, published), the other formats do not say. */
  static double usualUnitMm(String name) {
    return ending(name).equals("glb") ? 1000 : 1;
  }

  private static String ending(String name) {
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  private static MeshResult imported(byte[] bytes, String ending) {
    ByteBuffer data = MemoryUtil.memAlloc(bytes.length).put(bytes).flip();
    AIScene scene = null;
    try {
      scene = Assimp.aiImportFileFromMemory(data,
          Assimp.aiProcess_Triangulate | Assimp.aiProcess_JoinIdenticalVertices | Assimp.aiProcess_PreTransformVertices, ending);
      if (scene == null) return new MeshResult.Unreadable("not a readable mesh: " + Assimp.aiGetErrorString());
      List<Vec3> corners = new ArrayList<>();
      List<TriangleMesh.Triangle> triangles = new ArrayList<>();
      for (int m = 0; m < scene.mNumMeshes(); m++) {
        AIMesh mesh = AIMesh.create(scene.mMeshes().get(m));
        int first = corners.size();
        // GLB has y up by its standard (glTF 2.0, section 3.4); here z is up.
        boolean yUp = ending.equals("glb");
        for (AIVector3D v : mesh.mVertices()) {
          corners.add(yUp ? new Vec3(v.x(), -v.z(), v.y()) : new Vec3(v.x(), v.y(), v.z()));
        }
        for (AIFace f : mesh.mFaces()) {
          if (f.mNumIndices() != 3) continue;
          triangles.add(new TriangleMesh.Triangle(
              first + f.mIndices().get(0), first + f.mIndices().get(1), first + f.mIndices().get(2)));
        }
      }
      return new MeshResult.Read(new TriangleMesh(corners, triangles));
    } finally {
      if (scene != null) Assimp.aiReleaseImport(scene);
      MemoryUtil.memFree(data);
    }
  }
}
