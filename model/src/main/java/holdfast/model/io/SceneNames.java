package holdfast.model.io;

/** What a scene file takes for a name: for whoever asks for one before there is a file. */
public final class SceneNames {
  private SceneNames() {}

  /** Whether a rock may be called that. */
  public static boolean isRockName(String words) {
    return ObjectWalk.isPlain(words, SceneKeys.ROCK_NAME.longest());
  }

  /** Letters that a rock's name may have. */
  public static int longestRockName() {
    return SceneKeys.ROCK_NAME.longest();
  }

  /** Whether a scene may have that title. */
  public static boolean isTitle(String words) {
    return ObjectWalk.isPlain(words, SceneKeys.SCENE_NAME.longest());
  }

  /** Letters that a title may have. */
  public static int longestTitle() {
    return SceneKeys.SCENE_NAME.longest();
  }
}
