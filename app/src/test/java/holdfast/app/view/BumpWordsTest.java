package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.Units;
import holdfast.engine.motion.Disturbance;
import org.junit.jupiter.api.Test;

/**
 * The strength of a bump in words. The pound-force second is 4.448222 N s, the pound 0.4535924 kg, 1 m/s is 3.28084 ft/s
 * (NIST SP 811, published); a fish carries some water along, by the engine's own factor.
 */
class BumpWordsTest {
  private static double fish(double kg) {
    return kg * Disturbance.FISH_ADDED;
  }

  @Test
  void newtonSecondsAndAFishInGrams() {
    assertThat(BumpWords.inWords(fish(0.3), Units.METRIC)).endsWith(" N s: a 300 g fish at 1 m/s");
    assertThat(BumpWords.inWords(fish(2.04), Units.METRIC)).endsWith(" N s: a 2.0 kg fish at 1 m/s");
    assertThat(BumpWords.inWords(0.5, Units.METRIC)).startsWith("0.50 N s: ");
  }

  @Test
  void poundForceSecondsAndAFishInOunces() {
    // 0.3 kg are 10.58 oz, 2.04 kg 4.497 lb; 0.5 N s are 0.1124 lbf s.
    assertThat(BumpWords.inWords(fish(0.3), Units.US)).endsWith(" lbf s: a 10.6 oz fish at 3.3 ft/s");
    assertThat(BumpWords.inWords(fish(2.04), Units.US)).endsWith(" lbf s: a 4.5 lb fish at 3.3 ft/s");
    assertThat(BumpWords.inWords(0.5, Units.US)).startsWith("0.112 lbf s: ");
  }
}
