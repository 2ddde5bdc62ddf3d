package holdfast.engine.supply;

import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a scene needs and what it weighs.
 *
 * @param rocks rock by kind, kinds without rock left out
 * @param amount all the rock against the tank's volume
 * @param bills this mix first, then the alternatives
 * @param floor cut list of the floor panel; empty for a bare floor, or when no stock panel yields it
 * @param volumes the balance of volumes
 * @param sandKg dry sand to lay
 * @param saltKg dry mix for all the water at the scene's salinity
 * @param waterDensityKgM3 density of the water
 * @param weights what the stand carries
 * @param cautions what must be told with these figures
 */
public record Supply(
    List<RockLine> rocks, RockAmount amount, List<Bill> bills, Optional<FloorCuts> floor, Volumes volumes,
    double sandKg, double saltKg, double waterDensityKgM3, Weights weights, List<String> cautions) {

  public Supply {
    rocks = List.copyOf(rocks);
    bills = List.copyOf(bills);
    cautions = List.copyOf(cautions);
  }

  /** Rock of one kind. */
  public record RockLine(Rock.Kind kind, int pieces, double dryKg) {}

  /**
   * All rock against the volume of the tank up to its rim, the volume by which people name a tank.
   *
   * @param kgPerL dry rock per litre
   * @param lowKgPerL and {@code highKgPerL}: the range of the rule of thumb
   */
  public record RockAmount(double dryKg, double tankL, double kgPerL, double lowKgPerL, double highKgPerL) {
    /** Where it falls: below, within or above the rule. */
    public String word() {
      return kgPerL < lowKgPerL ? "below" : kgPerL > highKgPerL ? "above" : "within";
    }
  }

  /**
   * What one way to buy the same pieces costs, in the user's own money.
   *
   * @param rock cost of the rock; empty when a price is missing
   * @param starter cost of bottled starter; zero where living rock brings its own, empty when its price is missing
   */
  public record Bill(String what, OptionalDouble rock, OptionalDouble starter) {
    public OptionalDouble total() {
      return rock.isPresent() && starter.isPresent()
          ? OptionalDouble.of(rock.getAsDouble() + starter.getAsDouble()) : OptionalDouble.empty();
    }
  }

  /** The supply of a scene; {@code bodies} are those of its placed rocks. */
  public static Supply of(Scene scene, List<RockBody> bodies) {
    List<RockBody> placed = bodies.stream().filter(b -> scene.placement(b.name()).isPresent()).toList();
    Volumes volumes = Volumes.of(scene, placed);
    double density = SeaWater.densityKgM3(scene.water().salinity(), scene.water().temperatureC());
    Weights weights = Weights.of(scene, placed, volumes, density);
    double saltKg = volumes.waterM3() * scene.settings().get(Setting.SALT_G_PER_L) * scene.water().salinity() / 35;
    return new Supply(
        rockLines(scene, placed), amount(scene, placed), bills(scene, placed, volumes), FloorCuts.of(scene), volumes,
        weights.sandKg(), saltKg, density, weights, cautions(scene, weights));
  }

  private static List<RockLine> rockLines(Scene scene, List<RockBody> bodies) {
    List<RockLine> out = new ArrayList<>();
    for (Rock.Kind kind : Rock.Kind.values()) {
      List<RockBody> these = bodies.stream().filter(b -> kindOf(scene, b) == kind).toList();
      if (!these.isEmpty()) {
        out.add(new RockLine(kind, these.size(), these.stream().mapToDouble(RockBody::dryMassKg).sum()));
      }
    }
    return out;
  }

  private static RockAmount amount(Scene scene, List<RockBody> bodies) {
    double kg = bodies.stream().mapToDouble(RockBody::dryMassKg).sum();
    double litres = scene.tank().lengthMm() * scene.tank().widthMm() * scene.tank().heightMm() * 1e-6;
    Settings s = scene.settings();
    return new RockAmount(kg, litres, kg / litres, s.get(Setting.ROCK_LOW_KG_PER_L), s.get(Setting.ROCK_HIGH_KG_PER_L));
  }

  private static List<Bill> bills(Scene scene, List<RockBody> bodies, Volumes volumes) {
    boolean living = bodies.stream().anyMatch(b -> kindOf(scene, b) == Rock.Kind.LIVE);
    OptionalDouble starter = price(scene, Setting.PRICE_STARTER);
    OptionalDouble bottled =
        starter.isPresent() ? OptionalDouble.of(starter.getAsDouble() * volumes.waterM3() * 1e3) : starter;
    OptionalDouble none = OptionalDouble.of(0);
    return List.of(
        new Bill(living ? "this mix" : "this mix and bottled starter", costOf(scene, bodies, Optional.empty()), living ? none
            : bottled),
        new Bill("all dry and bottled starter", costOf(scene, bodies, Optional.of(Rock.Kind.DRY)), bottled),
        new Bill("all living", costOf(scene, bodies, Optional.of(Rock.Kind.LIVE)), none));
  }

  /** Cost of the pieces, each as it is or all as one kind; a rock's own price holds only for its own kind. */
  private static OptionalDouble costOf(Scene scene, List<RockBody> bodies, Optional<Rock.Kind> as) {
    double sum = 0;
    for (RockBody b : bodies) {
      Rock rock = scene.rock(b.name()).orElseThrow();
      Rock.Kind kind = as.orElse(rock.kind());
      OptionalDouble own = kind == rock.kind() ? rock.pricePerKg() : OptionalDouble.empty();
      OptionalDouble price = own.isPresent() ? own : price(scene, settingOf(kind));
      if (price.isEmpty()) return OptionalDouble.empty();
      sum += price.getAsDouble() * b.dryMassKg();
    }
    return OptionalDouble.of(sum);
  }

  private static Setting settingOf(Rock.Kind kind) {
    return switch (kind) {
      case DRY -> Setting.PRICE_DRY;
      case LIVE -> Setting.PRICE_LIVE;
      case CAST -> Setting.PRICE_CAST;
    };
  }

  /** A price of zero means that the user gave none, unless the scene says zero itself. */
  private static OptionalDouble price(Scene scene, Setting setting) {
    double v = scene.settings().get(setting);
    return v > 0 || scene.settings().given().containsKey(setting) ? OptionalDouble.of(v) : OptionalDouble.empty();
  }

  static Rock.Kind kindOf(Scene scene, RockBody body) {
    return scene.rock(body.name()).orElseThrow().kind();
  }

  private static List<String> cautions(Scene scene, Weights weights) {
    List<String> out = new ArrayList<>();
    double limit = scene.settings().get(Setting.FLOOR_LOAD_KG_M2);
    if (weights.perFootprintKgM2() > limit) {
      out.add("The filled tank loads its footprint above what floors of dwellings are often designed for. Span, direction of"
          + " the joists and distance from a wall matter more than this figure: have a structural engineer judge the floor.");
    }
    out.add("The stand, a sump, equipment and people leaning on the tank come on top of the weights given here.");
    return out;
  }
}
