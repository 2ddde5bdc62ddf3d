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
}
