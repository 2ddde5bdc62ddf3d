package holdfast.engine.motion;

import holdfast.model.geom.Vec3;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * The least blow that makes something fall, by bisection: each try is a whole {@link Bump}.
 *
 * <p>Limits: a heap may fall under one blow and stand under a somewhat larger one; what is found is one blow between
 * two tries that differ, not proof that no smaller one topples. The margin that counts is the statics'.
 */
public final class LeastBlow {
  /** Metres a second that the first blow, and the largest tried, would give the struck rock if it were free. */
  private static final double FIRST_M_S = 0.02;

  private static final double MOST_M_S = 10;

  private LeastBlow() {}

  /** What came of the search. */
  public sealed interface Found {
    /**
     * A blow that topples.
     *
     * @param standsNs the largest blow tried below it that left everything standing
     * @param fallsNs the smallest blow tried that toppled
     * @param closedFormNs Housner's closed form, where the struck rock is the only one
     */
    record Between(double standsNs, double fallsNs, OptionalDouble closedFormNs, PlayResult.Played fall) implements Found {}

    /** Nothing fell up to the largest blow tried. */
    record None(double mostNs) implements Found {}

    /** It could not be played. */
    record NotPlayed(String reason) implements Found {}

    /** All three cases, exhaustively. */
    default <T> T match(Function<Between, T> between, Function<None, T> none, Function<NotPlayed, T> notPlayed) {
      if (this instanceof Between b) return between.apply(b);
      if (this instanceof None n) return none.apply(n);
      return notPlayed.apply((NotPlayed) this);
    }
  }

  /**
   * Searches.
   *
   * @param toward unit direction, horizontal
   * @param share how close the two blows have to come, as a share of the larger
   */
  public static Found find(PlayJob job, String rock, Vec3 at, Vec3 toward, double share) {
    int number = job.number(rock);
    if (number < 0) return new Found.NotPlayed("there is no placed rock '" + rock + "'");
    double massKg = job.bodies().get(number).body().massKg();
    double stands = 0;
    double falls = FIRST_M_S * massKg;
    PlayResult.Played fall;
    while (true) {
      PlayResult result = Bump.play(job, new Disturbance.Blow(rock, at, toward.times(falls)));
      if (result instanceof PlayResult.NotPlayed n) return new Found.NotPlayed(n.reason());
      fall = (PlayResult.Played) result;
      if (fall.anyFell()) break;
      stands = falls;
      falls *= 2;
      if (falls > MOST_M_S * massKg) return new Found.None(stands);
    }
    while (falls - stands > share * falls) {
      double middle = (stands + falls) / 2;
      PlayResult result = Bump.play(job, new Disturbance.Blow(rock, at, toward.times(middle)));
      if (result instanceof PlayResult.NotPlayed n) return new Found.NotPlayed(n.reason());
      PlayResult.Played played = (PlayResult.Played) result;
      if (played.anyFell()) {
        falls = middle;
        fall = played;
      } else {
        stands = middle;
      }
    }
    OptionalDouble closed = job.bodies().size() == 1
        ? OptionalDouble.of(Housner.leastBlowNs(job.bodies().get(0), job.water().isPresent(), toward, at))
        : OptionalDouble.empty();
    return new Found.Between(stands, falls, closed, fall);
  }
}
