package holdfast.engine.motion;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import physx.PxTopLevelFunctions;
import physx.common.PxDefaultCpuDispatcher;
import physx.common.PxTransform;
import physx.common.PxVec3;
import physx.geometry.PxSphereGeometry;
import physx.physics.PxCombineModeEnum;
import physx.physics.PxContactPair;
import physx.physics.PxContactPairHeader;
import physx.physics.PxFilterData;
import physx.physics.PxMaterial;
import physx.physics.PxMaterialFlagEnum;
import physx.physics.PxPairFlagEnum;
import physx.physics.PxRigidActor;
import physx.physics.PxRigidDynamic;
import physx.physics.PxRigidStatic;
import physx.physics.PxScene;
import physx.physics.PxSceneDesc;
import physx.physics.PxSceneFlagEnum;
import physx.physics.PxShape;
import physx.physics.PxShapeFlagEnum;
import physx.physics.PxShapeFlags;
import physx.physics.PxSimulationEventCallbackImpl;
import physx.physics.PxSolverTypeEnum;
import physx.support.NativeArrayHelpers;
import physx.support.PassThroughFilterShaderImpl;
import physx.support.PxArray_PxContactPairPoint;

/**
 * The 3D engine laid bare for the judge: the same shapes, scale and settings as {@link PhysxWorld}, but its contact points
 * can be read, thinned out by the engine or not, or replaced by given ones.
 *
 * <p>Convex stones make contact at up to five points a pair as the engine comes ({@link Contacts#THINNED}), or at all that
 * its older routine finds ({@link Contacts#ALL}). With {@link Contacts#GIVEN} the hulls do not touch each other at all; each
 * given point is a small ball in the upper stone, whose lowest point it is, and touches the one stone beneath. A ball on a
 * face has exactly one contact point, so nothing can be lost there.
 */
public final class ContactEngine implements AutoCloseable {
  private static final double UNITS = Tolerances.UNITS_PER_M;
  private static final int BALL = 1 << 30;
  private static final double BALL_M = 4e-3;
  private static final int MOST_POINTS = 64;

  /** Where stones touch. */
  public enum Contacts {
    THINNED, ALL, GIVEN
  }

  /** A contact point that the engine made. */
  public record Touch(int first, int second, Vec3 at) {}

  /** A given contact point: of {@code upper}, in the face of {@code lower}, with the normal out of that face. */
  public record Foot(int upper, int lower, Vec3 at, Vec3 normal) {}

  /** Lets the two kinds of shape meet that are meant to, and asks for the points. */
  private static final class Filter extends PassThroughFilterShaderImpl {
    @Override
    public int filterShader(int a0, int category0, int mask0, int u0, int v0, int a1, int category1, int mask1, int u1, int v1) {
      // Set anew for every pair: the engine starts each with the usual flags.
      setOutputPairFlags(PxPairFlagEnum.eCONTACT_DEFAULT.value | PxPairFlagEnum.eNOTIFY_TOUCH_FOUND.value
          | PxPairFlagEnum.eNOTIFY_CONTACT_POINTS.value);
      return (category0 & mask1) != 0 && (category1 & mask0) != 0 ? 0 : 1;
    }
  }

  private final class Reader extends PxSimulationEventCallbackImpl {
    @Override
    public void onContact(PxContactPairHeader header, PxContactPair pairs, int count) {
      int first = numbers.get(header.getActors(0).getAddress());
      int second = numbers.get(header.getActors(1).getAddress());
      PxArray_PxContactPairPoint room = new PxArray_PxContactPairPoint(MOST_POINTS);
      for (int i = 0; i < count; i++) {
        int n = NativeArrayHelpers.getContactPairAt(pairs, i).extractContacts(room.begin(), MOST_POINTS);
        for (int k = 0; k < n; k++) {
          touches.add(new Touch(Math.min(first, second), Math.max(first, second),
              PhysxShapes.get(room.get(k).getPosition()).times(1 / UNITS)));
        }
      }
      room.destroy();
    }
  }

  private final PhysxRuntime runtime;
  private final PhysxShapes shapes;
  private final PxDefaultCpuDispatcher dispatcher;
  private final Filter filter;
  private final Reader reader;
  private final PxScene scene;
  private final PxMaterial material;
  private final List<PxRigidDynamic> stones = new ArrayList<>();
  private final List<Vec3> centres = new ArrayList<>();
  private final PxRigidStatic floor;
  private final Map<Long, Integer> numbers = new LinkedHashMap<>();
  private final List<Touch> touches = new ArrayList<>();
  private final double stepS;

  /**
   * Bodies at rest where they are, on a fixed ground whose number comes after theirs.
   *
   * @param given what {@link Contacts#GIVEN} takes, else unused
   */
  public ContactEngine(
      List<MotionBody> bodies, Hull ground, double friction, Contacts contacts, List<Foot> given, double stepHz, int rounds) {
    runtime = PhysxRuntime.get().match(r -> r, why -> {
      throw new IllegalStateException(why);
    });
    // After the runtime: native things need its allocator.
    shapes = new PhysxShapes(runtime);
    dispatcher = PxTopLevelFunctions.DefaultCpuDispatcherCreate(0);
    filter = new Filter();
    reader = new Reader();
    stepS = 1 / stepHz;
    PxSceneDesc desc = new PxSceneDesc(runtime.scale);
    PxVec3 v = new PxVec3(0, 0, (float) (-Gravity.G * UNITS));
    desc.setGravity(v);
    v.destroy();
    desc.setCpuDispatcher(dispatcher);
    PxTopLevelFunctions.setupPassThroughFilterShader(desc, filter);
    desc.setSolverType(PxSolverTypeEnum.eTGS);
    desc.getFlags().raise(PxSceneFlagEnum.eENABLE_ENHANCED_DETERMINISM);
    desc.getFlags().raise(PxSceneFlagEnum.eENABLE_FRICTION_EVERY_ITERATION);
    if (contacts != Contacts.THINNED) desc.getFlags().clear(PxSceneFlagEnum.eENABLE_PCM);
    scene = runtime.physics.createScene(desc);
    desc.destroy();
    scene.setSimulationEventCallback(reader);
    material = shapes.material(friction);
    // One point a ball: its whole friction acts there, and the other anchor has nothing to share.
    if (contacts == Contacts.GIVEN) material.setFlag(PxMaterialFlagEnum.eIMPROVED_PATCH_FRICTION, false);
    material.setFrictionCombineMode(PxCombineModeEnum.eMIN);
    boolean own = contacts == Contacts.GIVEN;
    Vec3 middle = Polyhedra.massProperties(ground).centre();
    PxTransform at = PhysxShapes.transform(middle, Quat.IDENTITY);
    floor = runtime.physics.createRigidStatic(at);
    at.destroy();
    shapes.attach(floor, ground, middle, 1, material, 1 << bodies.size(), own ? BALL : -1);
    scene.addActor(floor);
    numbers.put(floor.getAddress(), bodies.size());
    for (MotionBody b : bodies) add(b, own, given, rounds);
  }

  private void add(MotionBody body, boolean own, List<Foot> given, int rounds) {
    int number = stones.size();
    PxTransform at = PhysxShapes.transform(body.centreInWorld(), body.pose().turn());
    PxRigidDynamic stone = runtime.physics.createRigidDynamic(at);
    at.destroy();
    for (Hull lobe : body.lobes()) shapes.attach(stone, lobe, body.centre(), 1, material, 1 << number, own ? BALL : -1);
    if (own) given.stream().filter(f -> f.upper() == number).forEach(f -> ball(stone, body, f));
    stone.setMass((float) body.massKg());
    PrincipalAxes axes = PrincipalAxes.of(body.inertia());
    PxTransform frame = PhysxShapes.transform(Vec3.ZERO, axes.turn());
    stone.setCMassLocalPose(frame);
    frame.destroy();
    PxVec3 moments = new PxVec3(0, 0, 0);
    PhysxShapes.set(moments, axes.moments().times(UNITS * UNITS));
    stone.setMassSpaceInertiaTensor(moments);
    moments.destroy();
    stone.setSleepThreshold(0);
    stone.setStabilizationThreshold(0);
    stone.setLinearDamping(0);
    stone.setAngularDamping(0);
    stone.setMaxDepenetrationVelocity(Tolerances.DEPENETRATION_SPEED);
    stone.setSolverIterationCounts(rounds, 1);
    scene.addActor(stone);
    stone.setWakeCounter(1e6f);
    numbers.put(stone.getAddress(), number);
    stones.add(stone);
    centres.add(body.centreInWorld());
  }

  private void ball(PxRigidActor stone, MotionBody body, Foot foot) {
    PxSphereGeometry geometry = new PxSphereGeometry((float) (BALL_M * UNITS));
    PxShapeFlags flags = new PxShapeFlags((byte) PxShapeFlagEnum.eSIMULATION_SHAPE.value);
    PxShape shape = runtime.physics.createShape(geometry, material, true, flags);
    // The body's frame in the engine has its origin at the centre of mass.
    Vec3 middle = body.pose().applyInverse(foot.at().plusTimes(BALL_M, foot.normal())).minus(body.centre());
    PxTransform at = PhysxShapes.transform(middle, Quat.IDENTITY);
    shape.setLocalPose(at);
    PxFilterData data = new PxFilterData(BALL, 1 << foot.lower(), 0, 0);
    shape.setSimulationFilterData(data);
    shape.setContactOffset(Tolerances.CONTACT_OFFSET);
    shape.setRestOffset(0);
    stone.attachShape(shape);
    shape.release();
    data.destroy();
    at.destroy();
    flags.destroy();
    geometry.destroy();
  }

  /** One step on. */
  public void step() {
    scene.simulate((float) stepS);
    scene.fetchResults(true);
  }

  /** Points at which touch began in the steps so far. */
  public List<Touch> touches() {
    return List.copyOf(touches);
  }

  /** How far a stone's centre is from where it was, metres. */
  public double movedM(int stone) {
    PxTransform t = stones.get(stone).getGlobalPose();
    return PhysxShapes.get(t.getP()).times(1 / UNITS).distanceTo(centres.get(stone));
  }

  /** The farthest that any stone's centre goes, metres; played no further once one is {@code enoughM} away. */
  public double farthestM(double seconds, double enoughM) {
    double far = 0;
    for (double t = 0; t < seconds && far < enoughM; t += stepS) {
      step();
      for (int i = 0; i < stones.size(); i++) far = Math.max(far, movedM(i));
    }
    return far;
  }

  @Override
  public void close() {
    for (PxRigidDynamic s : stones) {
      scene.removeActor(s);
      s.release();
    }
    scene.removeActor(floor);
    floor.release();
    scene.release();
    shapes.close();
    material.release();
    reader.destroy();
    filter.destroy();
    dispatcher.destroy();
  }
}
