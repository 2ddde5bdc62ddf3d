package holdfast.model.scene;

import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Optional;

/**
 * Tank, water, sand, rocks, joints and settings: one scene file as it was read, in the units of the file
 * (millimetres and kilograms). {@code holdfast.model.shape} turns it into bodies in metres.
 */
public record Scene(
    String name, Tank tank, Floor floor, Sand sand, Water water,
    List<Device> devices, List<Lamp> lamps,
    List<Rock> rocks, List<Placement> placements, List<JointSpec> joints, Settings settings) {

  public Scene {
    devices = List.copyOf(devices);
    lamps = List.copyOf(lamps);
    rocks = List.copyOf(rocks);
    placements = List.copyOf(placements);
    joints = List.copyOf(joints);
  }

  /** Sand on the bottom: depth and the bulk density of the dry sand. */
  public record Sand(double depthMm, double bulkKgPerL) {
    public static final Sand DEFAULT = new Sand(0, 1.5);
  }

  /** The water when the tank is full: level above the inner bottom, practical salinity, temperature. */
  public record Water(double levelMm, double salinity, double temperatureC) {}

  /** A box that rock stays clear of: an overflow, a pump. Corner nearest the front-left bottom, and size. */
  public record Device(String name, Vec3 atMm, Vec3 sizeMm, double clearMm) {}

  /** A flat lamp: centre, length along x, width along y, and its part of all the light, relative to the other lamps. */
  public record Lamp(String name, Vec3 atMm, double lengthMm, double widthMm, double share) {}

  public Optional<Rock> rock(String rockName) {
    return rocks.stream().filter(r -> r.name().equals(rockName)).findFirst();
  }

  public Optional<Placement> placement(String rockName) {
    return placements.stream().filter(p -> p.rock().equals(rockName)).findFirst();
  }

  public Optional<JointSpec> joint(String a, String b) {
    return joints.stream().filter(j -> j.joins(a, b)).findFirst();
  }

  public Scene withPlacements(List<Placement> changed) {
    return new Scene(name, tank, floor, sand, water, devices, lamps, rocks, changed, joints, settings);
  }

  public Scene withRocks(List<Rock> changed) {
    return new Scene(name, tank, floor, sand, water, devices, lamps, changed, placements, joints, settings);
  }

  public Scene withJoints(List<JointSpec> changed) {
    return new Scene(name, tank, floor, sand, water, devices, lamps, rocks, placements, changed, settings);
  }

  public Scene withSettings(Settings changed) {
    return new Scene(name, tank, floor, sand, water, devices, lamps, rocks, placements, joints, changed);
  }
}
