package holdfast.app.view.draw;

import java.util.Optional;
import java.util.Set;

/**
 * What to show and what to leave out.
 *
 * @param water the water and its level
 * @param sand the sand
 * @param glass panes, rim and braces
 * @param cells numbers of the floor's cells
 * @param cut a cutting plane
 * @param chosen names of stones that are marked
 * @param hovered the stone under the pointer
 * @param faint names of stones drawn pale: not built yet
 * @param stonesPale all stones are drawn pale so that marks on the scene stand out
 */
public record Looks(
    boolean water, boolean sand, boolean glass, boolean cells, Optional<Cut> cut,
    Set<String> chosen, Optional<String> hovered, Set<String> faint, boolean stonesPale) {

  public static final Looks PLAIN =
      new Looks(true, true, true, true, Optional.empty(), Set.of(), Optional.empty(), Set.of(), false);

  public Looks withCut(Optional<Cut> other) {
    return new Looks(water, sand, glass, cells, other, chosen, hovered, faint, stonesPale);
  }

  public Looks withChosen(Set<String> names, Optional<String> under) {
    return new Looks(water, sand, glass, cells, cut, names, under, faint, stonesPale);
  }

  public Looks withFaint(Set<String> names) {
    return new Looks(water, sand, glass, cells, cut, chosen, hovered, names, stonesPale);
  }

  public Looks withPaleStones(boolean pale) {
    return new Looks(water, sand, glass, cells, cut, chosen, hovered, faint, pale);
  }
}
