package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import physx.PxTopLevelFunctions;
import physx.common.PxQuat;
import physx.common.PxTransform;
import physx.common.PxVec3;
import physx.cooking.PxConvexFlagEnum;
import physx.cooking.PxConvexFlags;
import physx.cooking.PxConvexMeshDesc;
import physx.geometry.PxConvexMesh;
import physx.geometry.PxConvexMeshGeometry;
import physx.physics.PxCombineModeEnum;
import physx.physics.PxFilterData;
import physx.physics.PxMaterial;
import physx.physics.PxMaterialFlagEnum;
import physx.physics.PxRigidActor;
import physx.physics.PxShape;
import physx.physics.PxShapeFlagEnum;
import physx.physics.PxShapeFlags;
import physx.support.PxArray_PxVec3;

/**
 * What a {@link PhysxWorld} is made of: hulls as the engine's shapes, materials, and the way to and from its numbers (single
 * precision, lengths scaled by {@link Tolerances#UNITS_PER_M}).
 */
final class PhysxShapes {
  private static final double UNITS = Tolerances.UNITS_PER_M;

  private final PhysxRuntime runtime;
  private final List<PxConvexMesh> meshes = new ArrayList<>();
  private final PxVec3 scratch = new PxVec3(0, 0, 0);

  PhysxShapes(PhysxRuntime runtime) {
    this.runtime = runtime;
  }

  /** Gives an actor the shape of a hull about {@code origin}, made {@code size} times as large. */
  void attach(
      PxRigidActor actor, Hull lobe, Vec3 origin, double size, PxMaterial material, int category, int mask) {
    PxConvexMesh mesh = mesh(lobe, origin, size);
    meshes.add(mesh);
    PxConvexMeshGeometry geometry = new PxConvexMeshGeometry(mesh);
    PxShapeFlags flags = new PxShapeFlags((byte) PxShapeFlagEnum.eSIMULATION_SHAPE.value);
    PxShape shape = runtime.physics.createShape(geometry, material, true, flags);
    PxFilterData data = new PxFilterData(category, mask, 0, 0);
    shape.setSimulationFilterData(data);
    shape.setContactOffset(Tolerances.CONTACT_OFFSET);
    shape.setRestOffset(0);
    actor.attachShape(shape);
    shape.release();
    data.destroy();
    flags.destroy();
    geometry.destroy();
  }

  private PxConvexMesh mesh(Hull lobe, Vec3 origin, double size) {
    PxArray_PxVec3 points = new PxArray_PxVec3();
    for (Vec3 p : lobe.corners()) {
      set(scratch, p.minus(origin).times(size * UNITS));
      points.pushBack(scratch);
    }
    PxConvexMeshDesc desc = new PxConvexMeshDesc();
    PxConvexFlags flags = new PxConvexFlags((short) PxConvexFlagEnum.eCOMPUTE_CONVEX.value);
    desc.setFlags(flags);
    desc.getPoints().setCount(points.size());
    desc.getPoints().setStride(PxVec3.SIZEOF);
    desc.getPoints().setData(points.begin());
    PxConvexMesh mesh = PxTopLevelFunctions.CreateConvexMesh(runtime.cooking, desc);
    flags.destroy();
    desc.destroy();
    points.destroy();
    if (mesh == null) {
      throw new IllegalStateException("the motion engine refused a hull of " + lobe.corners().size() + " corners: "
          + runtime.lastMessage());
    }
    return mesh;
  }

  PxMaterial material(double mu) {
    PxMaterial material = runtime.physics.createMaterial((float) mu, (float) mu, 0);
    material.setFrictionCombineMode(PxCombineModeEnum.eMIN);
    material.setRestitutionCombineMode(PxCombineModeEnum.eMIN);
    // Without it a patch's two anchors each carry the whole friction.
    material.setFlag(PxMaterialFlagEnum.eIMPROVED_PATCH_FRICTION, true);
    return material;
  }

  void close() {
    meshes.forEach(PxConvexMesh::release);
    scratch.destroy();
  }

  static PxTransform transform(Vec3 at, Quat turn) {
    PxVec3 p = new PxVec3((float) (at.x() * UNITS), (float) (at.y() * UNITS), (float) (at.z() * UNITS));
    PxQuat q = new PxQuat((float) turn.x(), (float) turn.y(), (float) turn.z(), (float) turn.w());
    PxTransform t = new PxTransform(p, q);
    p.destroy();
    q.destroy();
    return t;
  }

  static void set(PxVec3 to, Vec3 from) {
    to.setX((float) from.x());
    to.setY((float) from.y());
    to.setZ((float) from.z());
  }

  static Vec3 get(PxVec3 v) {
    return new Vec3(v.getX(), v.getY(), v.getZ());
  }
}
