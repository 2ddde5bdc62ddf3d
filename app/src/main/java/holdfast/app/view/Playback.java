package holdfast.app.view;

import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.engine.motion.PlayResult;
import holdfast.model.geom.Pose;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A movement that was played by the engine, shown again at some share of its speed. A picture of what would happen, never
 * the verdict.
 *
 * @param rocks names in the order of the poses
 * @param speed 1 as it happens, less is slower
 * @param startNanos when showing it began
 */
record Playback(List<String> rocks, List<PlayResult.Frame> frames, double speed, long startNanos, String words) {
  private static final double HOLD_S = 1.2;

  private double time(long now) {
    return (now - startNanos) * 1e-9 * speed;
  }

  private double length() {
    return frames.isEmpty() ? 0 : frames.get(frames.size() - 1).timeS();
  }

  boolean over(long now) {
    return time(now) > length() + HOLD_S * speed;
  }

  /** Which frame is on show. */
  int frame(long now) {
    double t = time(now);
    int i = 0;
    while (i + 1 < frames.size() && frames.get(i + 1).timeS() <= t) i++;
    return i;
  }

  /** The time that is on show, seconds since the disturbance. */
  double shownS(long now) {
    return Math.min(time(now), length());
  }

  Tableau on(Tableau t, long now) {
    if (frames.isEmpty()) return t;
    Map<String, Pose> poses = new LinkedHashMap<>();
    List<Pose> at = frames.get(frame(now)).poses();
    for (int i = 0; i < rocks.size() && i < at.size(); i++) poses.put(rocks.get(i), at.get(i));
    List<Stone> stones = new ArrayList<>();
    for (Stone s : t.stones()) stones.add(Optional.ofNullable(poses.get(s.name())).map(s::at).orElse(s));
    return t.withStones(stones);
  }
}
