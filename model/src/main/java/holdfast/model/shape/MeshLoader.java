package holdfast.model.shape;

/** Where the meshes of scanned rocks come from; the application reads files beside the scene. */
@FunctionalInterface
public interface MeshLoader {
  /** For scenes without scans. */
  MeshLoader NONE = file -> new MeshResult.Unreadable("no mesh files can be read here");

  /** The mesh named in the scene, in the units of its file. */
  MeshResult load(String file);
}
