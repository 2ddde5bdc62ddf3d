package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Files that are wrong in several ways at once; one way at a time is for the other tests of broken scenes. */
class BrokenScenesTest {
  @Test
  void severalProblemsComeTogetherInTheOrderOfTheFile() {
    String text = BrokenScene.GOOD
        .replace("\"push.tier_n\": 20", "\"push.tier_n\": \"hard\"")
        .replace("\"bond\": \"mortar\"", "\"bond\": \"glue\"")
        .replace("{ \"rock\": \"tall chunk\"", "{ \"rock\": \"tall chimney\"")
        .replace("\"weighed_kg\": 5.6", "\"weighed_kg\": -5.6")
        .replace("\"look\": \"slab\", \"length_mm\": 260", "\"look\": 3, \"length_mm\": 1e999")
        .replace("\"level_mm\": 370", "\"levl_mm\": 370")
        .replace("\"length_mm\": 580, \"width_mm\": 480", "\"width_mm\": 48");
    assertThat(BrokenScene.rendered(text)).isEqualTo("""
        small.json:4: $.tank.length_mm: found nothing; must be given: inner length, left to right, from 50 to 10000 mm
        small.json:4: $.tank.width_mm: found 48; must be from 50 to 10000 mm: inner width, front to back
        small.json:7: $.water.levl_mm: found a key that is not known in the water; did you mean level_mm?
        small.json:12: $.rocks[0].form.look: found 3; must be block, slab, round, shelf, branch, arch, spike or box: \
        the kind of stone to generate from measured lengths
        small.json:12: $.rocks[0].form.length_mm: found 1e999; must be from 5 to 3000 mm: the rock's measured length
        small.json:13: $.rocks[0].mass.weighed_kg: found -5.6; must be from 0.001 to 500 kg: what the scale showed
        small.json:20: $.placements[1].rock: found "tall chimney"; must be the name of a rock in $.rocks
        small.json:22: $.joints[0].bond: found "glue"; must be none, mortar, putty, gel or rod: what fixes the joint
        small.json:23: $.settings['push.tier_n']: found "hard"; must be a number from 0.1 to 500 N: \
        force every rock must bear from any side: 5 N small fish, 20 N urchin or large fish, 50 N a hand
        """);
  }

  @Test
  void aFloodOfProblemsIsCutOff() {
    String joints = "{ \"between\": [\"a\", \"b\"], \"bond\": \"none\" }, ".repeat(300);
    String text = BrokenScene.GOOD.replace("\"joints\": [ ", "\"joints\": [ " + joints);
    String[] lines = BrokenScene.rendered(text).split("\n");
    assertThat(lines).hasSize(Problems.MOST_SHOWN + 1);
    // 300 pairs of unknown names, and all but the first a pair that was there before.
    assertThat(lines[Problems.MOST_SHOWN]).isEqualTo("small.json: $: found " + (2 * 300 + 299 - Problems.MOST_SHOWN)
        + " more problems; mend these first");
  }
}
