package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A heap to be played.
 *
 * @param bodies the rocks, at rest where they are
 * @param fixed floor, panes, devices
 * @param bonds what holds rocks together
 * @param panes inner faces of the side panes, watched for blows
 * @param water the water, or none
 * @param friction by pair of surfaces
 * @param stepHz steps a second; 480 keeps stopping distances within two per cent
 * @param mostS longest time played
 * @param framesPerS poses kept a second; 0 keeps only the first and the last
 */
public record PlayJob(
    List<PlayBody> bodies, List<Solid> fixed, List<MotionBond> bonds, List<PaneFace> panes,
    Optional<WaterModel> water, WorldOptions.Friction friction, double stepHz, double mostS, double framesPerS) {

  /** Steps a second unless told otherwise. */
  public static final double STEP_HZ = 480;

  /** Seconds played at most unless told otherwise. */
  public static final double MOST_S = 12;

  /** Frames a second unless told otherwise. */
  public static final double FRAMES_PER_S = 60;

  public PlayJob {
    bodies = List.copyOf(bodies);
    fixed = List.copyOf(fixed);
    bonds = List.copyOf(bonds);
    panes = List.copyOf(panes);
    Objects.requireNonNull(water);
    Objects.requireNonNull(friction);
    if (!(mostS > 0)) throw new IllegalArgumentException("mostS must be above 0, was " + mostS);
    if (!(framesPerS >= 0)) throw new IllegalArgumentException("framesPerS must be 0 or more, was " + framesPerS);
  }

  /** A heap in air, without panes. */
  public static PlayJob dry(List<MotionBody> bodies, List<Solid> fixed, WorldOptions.Friction friction) {
    return new PlayJob(bodies.stream().map(PlayBody::dry).toList(), fixed, List.of(), List.of(), Optional.empty(),
        friction, STEP_HZ, MOST_S, 0);
  }

  public PlayJob withStepHz(double hz) {
    return new PlayJob(bodies, fixed, bonds, panes, water, friction, hz, mostS, framesPerS);
  }

  public PlayJob withFrames(double perS) {
    return new PlayJob(bodies, fixed, bonds, panes, water, friction, stepHz, mostS, perS);
  }

  public PlayJob withMostS(double seconds) {
    return new PlayJob(bodies, fixed, bonds, panes, water, friction, stepHz, seconds, framesPerS);
  }

  /** Number of a rock in {@link #bodies}, or -1. */
  public int number(String rock) {
    for (int i = 0; i < bodies.size(); i++) if (bodies.get(i).name().equals(rock)) return i;
    return -1;
  }

  /**
   * The inner face of a side pane.
   *
   * @param inward unit normal into the tank
   * @param offset {@code inward . p} on the face, metres
   */
  public record PaneFace(Side side, Vec3 inward, double offset) {
    /** The four side panes of a tank. */
    public static List<PaneFace> of(Tank tank) {
      List<PaneFace> faces = new ArrayList<>();
      Vec3 most = new Vec3(tank.lengthMm() * 1e-3, tank.widthMm() * 1e-3, 0);
      for (Side side : Side.values()) {
        Vec3 in = side.outward().negated();
        // Faces whose outward normal points up an axis lie at the tank's far corner, the others at its origin.
        boolean far = in.x() + in.y() < 0;
        faces.add(new PaneFace(side, in, far ? in.dot(most) : 0));
      }
      return faces;
    }
  }
}
