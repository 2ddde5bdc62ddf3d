package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.engine.contact.Solid.Surface;
import holdfast.engine.statics.heap.Twist;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import physx.PxTopLevelFunctions;
import physx.common.PxDefaultCpuDispatcher;
import physx.common.PxQuat;
import physx.common.PxTransform;
import physx.common.PxVec3;
import physx.extensions.PxFixedJoint;
import physx.extensions.PxJoint;
import physx.extensions.PxRigidBodyExt;
import physx.extensions.PxSphericalJoint;
import physx.physics.PxActor;
import physx.physics.PxCombineModeEnum;
import physx.physics.PxConstraintFlagEnum;
import physx.physics.PxForceModeEnum;
import physx.physics.PxMaterial;
import physx.physics.PxPairFlagEnum;
import physx.physics.PxRigidDynamic;
import physx.physics.PxRigidStatic;
import physx.physics.PxScene;
import physx.physics.PxSceneDesc;
import physx.physics.PxSceneFlagEnum;
import physx.physics.PxSolverTypeEnum;
import physx.support.PassThroughFilterShaderImpl;

/**
 * {@link MotionWorld} on PhysX 5 (temporal Gauss-Seidel solver, single precision), set up for stones of centimetres:
 * lengths scaled up ({@link Tolerances#UNITS_PER_M}), contact made only within a millimetre, faces kept as they were
 * given, no sleeping, no bounce, one thread.
 *
 * <p>An engine body's origin is the centre of mass, which keeps its rotations exact.
 */
final class PhysxWorld implements MotionWorld {
  private static final double UNITS = Tolerances.UNITS_PER_M;
  /** Filter word of everything fixed. */
  private static final int FIXED = 1 << 30;

  private final PhysxRuntime runtime;
  private final WorldOptions options;
  private final double stepS;
  private final PxDefaultCpuDispatcher dispatcher;
  private final Filter filter;
  private final PxScene scene;
  private final Map<Surface, PxMaterial> looseMaterials = new EnumMap<>(Surface.class);
  private final List<PxMaterial> fixedMaterials = new ArrayList<>();
  private final List<Fixed> fixedActors = new ArrayList<>();
  private final PhysxShapes shapes;
  private final List<Entry> bodies = new ArrayList<>();
  private final List<Bond> bonds = new ArrayList<>();
  // Scratch that crosses to native code in every call.
  private final PxVec3 va = new PxVec3(0, 0, 0);
  private final PxVec3 vb = new PxVec3(0, 0, 0);
  private boolean closed;

  private record Entry(MotionBody body, PxRigidDynamic actor) {}

  private record Fixed(String name, PxActor actor) {}

  private record Bond(int a, int b, PxJoint joint, Vec3 atInA, boolean ball) {}

  /**
   * Lets a fixed shape meet only the kind of loose surface that its material was made for. A fixed thing is handed over
   * once per kind of loose surface, since the engine knows friction by material and not by pair.
   */
  private static final class Filter extends PassThroughFilterShaderImpl {
    private static final int KILL = 1;

    @Override
    public int filterShader(
        int attributes0, int category0, int mask0, int unused02, int unused03,
        int attributes1, int category1, int mask1, int unused12, int unused13) {
      return (category0 & mask1) != 0 && (category1 & mask0) != 0 ? 0 : KILL;
    }
  }

  PhysxWorld(PhysxRuntime runtime, WorldOptions options) {
    this.runtime = runtime;
    this.shapes = new PhysxShapes(runtime);
    this.options = options;
    this.stepS = 1 / options.stepHz();
    dispatcher = PxTopLevelFunctions.DefaultCpuDispatcherCreate(0);
    filter = new Filter();
    filter.setOutputPairFlags(PxPairFlagEnum.eCONTACT_DEFAULT.value);
    PxSceneDesc desc = new PxSceneDesc(runtime.scale);
    PhysxShapes.set(va, new Vec3(0, 0, -Gravity.G * UNITS));
    desc.setGravity(va);
    desc.setCpuDispatcher(dispatcher);
    PxTopLevelFunctions.setupPassThroughFilterShader(desc, filter);
    desc.setSolverType(PxSolverTypeEnum.eTGS);
    desc.getFlags().raise(PxSceneFlagEnum.eENABLE_ENHANCED_DETERMINISM);
    desc.getFlags().raise(PxSceneFlagEnum.eENABLE_FRICTION_EVERY_ITERATION);
    scene = runtime.physics.createScene(desc);
    desc.destroy();
    if (scene == null) throw new IllegalStateException("the motion engine made no scene: " + runtime.lastMessage());
  }

  @Override
  public void addFixed(Solid solid) {
    for (Surface loose : List.of(Surface.ROCK, Surface.SLIMY_ROCK)) {
      PxMaterial material = shapes.material(0);
      material.setFrictionCombineMode(PxCombineModeEnum.eMULTIPLY);
      double mu = options.friction().between(loose, solid.surface()) / looseFriction(loose);
      material.setStaticFriction((float) mu);
      material.setDynamicFriction((float) mu);
      fixedMaterials.add(material);
      Vec3 middle = middle(solid.lobes());
      PxTransform pose = PhysxShapes.transform(middle, Quat.IDENTITY);
      PxRigidStatic actor = runtime.physics.createRigidStatic(pose);
      pose.destroy();
      for (Hull lobe : solid.lobes()) shapes.attach(actor, lobe, middle, 1, material, FIXED, category(loose));
      scene.addActor(actor);
      fixedActors.add(new Fixed(solid.name(), actor));
    }
  }

  @Override
  public void removeFixed(String name) {
    fixedActors.removeIf(f -> {
      if (!f.name.equals(name)) return false;
      scene.removeActor(f.actor);
      f.actor.release();
      return true;
    });
  }

  @Override
  public int addBody(MotionBody body, double size) {
    PxTransform pose = PhysxShapes.transform(body.centreInWorld(), body.pose().turn());
    PxRigidDynamic actor = runtime.physics.createRigidDynamic(pose);
    pose.destroy();
    PxMaterial material = looseMaterials.computeIfAbsent(loose(body.surface()), s -> shapes.material(looseFriction(s)));
    for (Hull lobe : body.lobes()) {
      shapes.attach(actor, lobe, body.centre(), size, material, category(loose(body.surface())), -1);
    }
    actor.setMass((float) body.massKg());
    PrincipalAxes axes = PrincipalAxes.of(body.inertia());
    PxTransform frame = PhysxShapes.transform(Vec3.ZERO, axes.turn());
    actor.setCMassLocalPose(frame);
    frame.destroy();
    PhysxShapes.set(va, axes.moments().times(UNITS * UNITS));
    actor.setMassSpaceInertiaTensor(va);
    actor.setSleepThreshold(0);
    actor.setStabilizationThreshold(0);
    actor.setLinearDamping(0);
    actor.setAngularDamping(0);
    actor.setMaxDepenetrationVelocity(Tolerances.DEPENETRATION_SPEED);
    actor.setSolverIterationCounts(options.iterations(), 1);
    scene.addActor(actor);
    actor.setWakeCounter(1e6f);
    bodies.add(new Entry(body, actor));
    return bodies.size() - 1;
  }

  @Override
  public void removeBody(int body) {
    for (int i = 0; i < bonds.size(); i++) {
      Bond bond = bonds.get(i);
      if (bond != null && (bond.a == body || bond.b == body)) breakBond(i);
    }
    Entry e = bodies.set(body, null);
    if (e == null) return;
    scene.removeActor(e.actor);
    e.actor.release();
  }

  @Override
  public int addBond(int a, int b, Vec3 at) {
    Pose pa = pose(a);
    Pose pb = pose(b);
    Entry ea = bodies.get(a);
    Entry eb = bodies.get(b);
    // The joint's frame lies at the centre of a, where the engine's moment is about the frame and about the centre alike;
    // its axes are those of the world now. A rigid joint acts the same wherever its frame is.
    Vec3 centre = pa.apply(ea.body.centre());
    PxTransform fa = PhysxShapes.transform(Vec3.ZERO, pa.turn().conjugate());
    PxTransform fb = PhysxShapes.transform(pb.applyInverse(centre).minus(eb.body.centre()), pb.turn().conjugate());
    PxFixedJoint joint = PxTopLevelFunctions.FixedJointCreate(runtime.physics, ea.actor, fa, eb.actor, fb);
    fa.destroy();
    fb.destroy();
    joint.setConstraintFlag(PxConstraintFlagEnum.eDISABLE_PREPROCESSING, true);
    bonds.add(new Bond(a, b, joint, pa.applyInverse(at), false));
    return bonds.size() - 1;
  }

  @Override
  public int addBall(int a, int b, Vec3 at) {
    Pose pa = pose(a);
    Pose pb = pose(b);
    Entry ea = bodies.get(a);
    Entry eb = bodies.get(b);
    PxTransform fa = PhysxShapes.transform(pa.applyInverse(at).minus(ea.body.centre()), pa.turn().conjugate());
    PxTransform fb = PhysxShapes.transform(pb.applyInverse(at).minus(eb.body.centre()), pb.turn().conjugate());
    PxSphericalJoint joint = PxTopLevelFunctions.SphericalJointCreate(runtime.physics, ea.actor, fa, eb.actor, fb);
    fa.destroy();
    fb.destroy();
    joint.setConstraintFlag(PxConstraintFlagEnum.eCOLLISION_ENABLED, true);
    bonds.add(new Bond(a, b, joint, pa.applyInverse(at), true));
    return bonds.size() - 1;
  }

  @Override
  public Wrench bondLoad(int bond) {
    Bond j = bonds.get(bond);
    if (j == null) return Wrench.ZERO;
    j.joint.getConstraint().getForce(va, vb);
    Vec3 force = PhysxShapes.get(va).times(1 / UNITS);
    if (j.ball) return new Wrench(force, Vec3.ZERO);
    Vec3 aboutCentre = PhysxShapes.get(vb).times(1 / (UNITS * UNITS));
    Pose pose = pose(j.a);
    Vec3 arm = pose.apply(bodies.get(j.a).body.centre()).minus(pose.apply(j.atInA));
    return new Wrench(force, aboutCentre.plus(arm.cross(force)));
  }

  @Override
  public void breakBond(int bond) {
    Bond j = bonds.set(bond, null);
    if (j != null) j.joint.release();
  }

  @Override
  public double stepS() {
    return stepS;
  }

  @Override
  public void step() {
    scene.simulate((float) stepS);
    scene.fetchResults(true);
  }

  @Override
  public Pose pose(int body) {
    Entry e = bodies.get(body);
    PxTransform t = e.actor.getGlobalPose();
    PxQuat q = t.getQ();
    Quat turn = new Quat(q.getW(), q.getX(), q.getY(), q.getZ()).unit();
    Vec3 centre = PhysxShapes.get(t.getP()).times(1 / UNITS);
    return new Pose(centre.minus(turn.rotate(e.body.centre())), turn);
  }

  @Override
  public Twist velocity(int body) {
    PxRigidDynamic actor = bodies.get(body).actor;
    return new Twist(PhysxShapes.get(actor.getLinearVelocity()).times(1 / UNITS), PhysxShapes.get(actor.getAngularVelocity()));
  }

  @Override
  public void setVelocity(int body, Twist velocity) {
    PxRigidDynamic actor = bodies.get(body).actor;
    PhysxShapes.set(va, velocity.velocity().times(UNITS));
    actor.setLinearVelocity(va);
    PhysxShapes.set(va, velocity.spin());
    actor.setAngularVelocity(va);
  }

  @Override
  public void applyWrench(int body, Wrench wrench) {
    PxRigidDynamic actor = bodies.get(body).actor;
    PhysxShapes.set(va, wrench.force().times(UNITS));
    actor.addForce(va, PxForceModeEnum.eFORCE);
    PhysxShapes.set(va, wrench.moment().times(UNITS * UNITS));
    actor.addTorque(va, PxForceModeEnum.eFORCE);
  }

  @Override
  public void applyImpulse(int body, Vec3 impulseNs, Vec3 at) {
    PhysxShapes.set(va, impulseNs.times(UNITS));
    PhysxShapes.set(vb, at.times(UNITS));
    PxRigidBodyExt.addForceAtPos(bodies.get(body).actor, va, vb, PxForceModeEnum.eIMPULSE);
  }

  @Override
  public void setDamping(double linear, double angular) {
    for (Entry e : bodies) {
      if (e == null) continue;
      e.actor.setLinearDamping((float) linear);
      e.actor.setAngularDamping((float) angular);
    }
  }

  @Override
  public void close() {
    if (closed) return;
    closed = true;
    for (int i = 0; i < bonds.size(); i++) breakBond(i);
    for (int i = 0; i < bodies.size(); i++) removeBody(i);
    for (Fixed f : fixedActors) {
      scene.removeActor(f.actor);
      f.actor.release();
    }
    scene.release();
    shapes.close();
    fixedMaterials.forEach(PxMaterial::release);
    looseMaterials.values().forEach(PxMaterial::release);
    filter.destroy();
    dispatcher.destroy();
    va.destroy();
    vb.destroy();
  }

  // -- making things ------------------------------------------------------------------------------------------------

  private static Surface loose(Surface surface) {
    return surface == Surface.SLIMY_ROCK ? Surface.SLIMY_ROCK : Surface.ROCK;
  }

  private static int category(Surface loose) {
    return 1 << loose.ordinal();
  }

  /** Friction of a loose surface on its own kind; never quite zero, since fixed materials are relative to it. */
  private double looseFriction(Surface loose) {
    return Math.max(options.friction().between(loose, loose), 1e-6);
  }

  private static Vec3 middle(List<Hull> lobes) {
    Vec3 sum = Vec3.ZERO;
    int n = 0;
    for (Hull h : lobes) {
      for (Vec3 p : h.corners()) {
        sum = sum.plus(p);
        n++;
      }
    }
    return sum.times(1.0 / n);
  }
}
