package holdfast.engine.motion;

import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.dyn4j.dynamics.Body;
import org.dyn4j.dynamics.joint.Joint;
import org.dyn4j.dynamics.joint.RevoluteJoint;
import org.dyn4j.dynamics.joint.WeldJoint;
import org.dyn4j.geometry.Vector2;
import org.dyn4j.world.World;

/**
 * The bonds of a section: welds, and pins for what carries no moment. What a joint passes on per metre of depth, times the
 * depth of the rock that is carried by the other, loads the bond, which breaks as in three dimensions. Bending across the
 * plane and twist are not seen.
 */
final class SectionBonds {
  /** A bond this share of the smaller rock's extent beside the plane is no part of it. */
  private static final double OFF_SHARE = 0.25;

  private final World<Body> world;
  private final SectionCut cut;
  private final double stepS;
  private final List<Held> held = new ArrayList<>();
  private final List<PlayResult.Broken> broken = new ArrayList<>();
  private final List<String> outOfPlane = new ArrayList<>();

  SectionBonds(World<Body> world, SectionCut cut, double stepS) {
    this.world = world;
    this.cut = cut;
    this.stepS = stepS;
  }

  private record Held(MotionBond bond, Joint<Body> joint, Body a, double depthM, BondLoad load) {}

  /**
   * Adds a bond.
   *
   * @param steps how many rocks lie between each rock of the job and the tank: the one farther from it is carried
   */
  void add(MotionBond bond, Body a, SectionCut.Slice sliceA, Body b, SectionCut.Slice sliceB, int[] steps) {
    Vec3 at = bond.at().minus(cut.foot());
    Vector2 anchor = new Vector2(at.dot(cut.toward()), at.z());
    Joint<Body> joint;
    if (bond.strength().carriesMoment()) {
      joint = new WeldJoint<>(a, b, anchor);
    } else {
      joint = new RevoluteJoint<>(a, b, anchor);
      joint.setCollisionAllowed(true);
    }
    world.addJoint(joint);
    int farther = Integer.compare(steps[sliceA.body()], steps[sliceB.body()]);
    double depth = farther > 0 ? sliceA.depthM() : farther < 0 ? sliceB.depthM() : Math.max(sliceA.depthM(), sliceB.depthM());
    held.add(new Held(bond, joint, a, depth, new BondLoad()));
    double beside = Math.abs(at.dot(Vec3.Z.cross(cut.toward()).unit()));
    if (beside > OFF_SHARE * Math.min(sliceA.extentM(), sliceB.extentM())) outOfPlane.add(bond.a() + " to " + bond.b());
  }

  /** After a step: takes away what was loaded beyond its strength. */
  void breakOverloaded(double timeS) {
    held.removeIf(h -> {
      if (use(h) < 1) return false;
      world.removeJoint(h.joint);
      broken.add(new PlayResult.Broken(h.bond.a(), h.bond.b(), timeS));
      return true;
    });
  }

  private double use(Held h) {
    // The library tells what acts on the second body; a bond wants the first.
    Vector2 force = h.joint.getReactionForce(1 / stepS).getNegative();
    double torque = -h.joint.getReactionTorque(1 / stepS);
    // A turn in the plane, from along to up, is one about this axis.
    Vec3 axis = cut.toward().cross(Vec3.Z);
    Quat back = Quat.about(axis, -h.a.getTransform().getRotationAngle());
    Vec3 pull = cut.toward().times(force.x).plusTimes(force.y, Vec3.Z).times(h.depthM);
    Wrench load = h.load.add(new Wrench(back.rotate(pull), axis.times(torque * h.depthM)), stepS);
    return h.bond.strength().use(load, h.bond.normal());
  }

  List<PlayResult.Broken> broken() {
    return broken;
  }

  /** Pairs whose bond lies beside the plane. */
  List<String> outOfPlane() {
    return outOfPlane;
  }
}
