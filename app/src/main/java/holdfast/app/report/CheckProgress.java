package holdfast.app.report;

import holdfast.engine.check.CheckWatch;

/**
 * What a check is at, in words: "pushes, supports and the bottom pane", or "which joints to fix: 5 would do, cheaper sets 128
 * of 1471". Written by the threads that check, read by whoever shows it.
 */
public final class CheckProgress implements CheckWatch {
  private volatile String words = "";
  private volatile int joints;

  @Override
  public void at(Stage stage, int done, int of) {
    words = words(stage, done, of, joints);
  }

  @Override
  public void best(int many) {
    joints = many;
  }

  /** Empty before the check has begun. */
  public String words() {
    return words;
  }

  private static String words(Stage stage, int done, int of, int joints) {
    String count = of > 0 ? " " + done + " of " + of : "";
    boolean best = stage == Stage.JOINTS && joints > 0;
    return stage.words() + (best ? ": " + joints + " would do" + (of > 0 ? ", cheaper sets" : "") : "") + count;
  }
}
