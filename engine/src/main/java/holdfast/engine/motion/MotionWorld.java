package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.engine.statics.heap.Twist;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;

/**
 * A world of rigid bodies under gravity, stepped at a fixed rate: all that is asked of an engine. Metres, kilograms,
 * seconds, z up. Bodies and bonds are numbered from zero in the order in which they were added, and that order decides
 * nothing but the bytes of the result: same calls, same bytes.
 *
 * <p>Not for threads: one world belongs to one thread. Close it, since its memory lies outside the heap of the JVM.
 */
public interface MotionWorld extends AutoCloseable {

  /** Adds something that never moves: floor, pane, device, a locked rock. Its lobes are taken in world coordinates. */
  void addFixed(Solid solid);

  /** Takes away all that was added under a name and never moved. */
  void removeFixed(String name);

  /** Adds a body at rest; its number comes back. */
  default int addBody(MotionBody body) {
    return addBody(body, 1);
  }

  /** The same with its outside made {@code size} times as large about its centre of mass. */
  int addBody(MotionBody body, double size);

  /** Takes a body out of the world; its number stays used. */
  void removeBody(int body);

  /**
   * Fixes two bodies to each other as they now stand, and stops them colliding with each other.
   *
   * @param at where the bond is, world, metres
   * @return the bond's number
   */
  int addBond(int a, int b, Vec3 at);

  /**
   * Joins two bodies at a point, about which they turn as they like; they go on colliding with each other.
   *
   * @param at where the bond is, world, metres
   * @return the bond's number
   */
  int addBall(int a, int b, Vec3 at);

  /** Force and moment that the bond passed on in the last step, on the first body about the bond's place; world axes. */
  Wrench bondLoad(int bond);

  /** Breaks a bond; what it joined collides again. */
  void breakBond(int bond);

  /** Length of a step in seconds. */
  double stepS();

  /** Goes one step on. */
  void step();

  Pose pose(int body);

  /** Velocity of the centre of mass, and spin. */
  Twist velocity(int body);

  void setVelocity(int body, Twist velocity);

  /** A force and moment about the centre of mass that act during the next step only; several add up. */
  void applyWrench(int body, Wrench wrench);

  /** A blow at a point of the world, newton seconds; felt at once. */
  void applyImpulse(int body, Vec3 impulseNs, Vec3 at);

  /** Drag that is no physics, to let things down gently: rates at which velocity and spin die away, 1/s. */
  void setDamping(double linear, double angular);

  @Override
  void close();
}
