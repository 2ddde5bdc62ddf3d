package holdfast.app.edit;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** One change of a scene, with the name under which it is undone. Lengths are those of the scene file, millimetres. */
public sealed interface Edit {
  /** What it does, as the undo list shows it. */
  String name();

  /** Makes the change; the scene given is left as it was. */
  Outcome on(Scene scene);

  /** Where a rock goes. */
  record Move(String verb, String rock, Vec3 atMm, Quat turn) implements Edit {
    @Override
    public String name() {
      return verb + " " + rock;
    }

    @Override
    public Outcome on(Scene s) {
      if (!atMm.isFinite()) return new Outcome.Refused("A place must be given in plain numbers.");
      return SceneParts.placed(s, rock, p -> p.locked()
          ? new Outcome.Refused("'" + rock + "' is locked. Unlock it to move it.")
          : SceneParts.replaced(s, p, new Placement(rock, atMm, turn.unit(), false)));
    }
  }

  /** Takes a rock from the tray and sets it down. */
  record Place(String rock, Vec3 atMm, Quat turn) implements Edit {
    @Override
    public String name() {
      return "set down " + rock;
    }

    @Override
    public Outcome on(Scene s) {
      if (s.rock(rock).isEmpty()) return new Outcome.Refused("There is no rock '" + rock + "'.");
      if (s.placement(rock).isPresent()) return new Outcome.Refused("'" + rock + "' is in the tank already.");
      return new Outcome.Changed(s.withPlacements(SceneParts.plus(s.placements(),
          new Placement(rock, atMm, turn.unit(), false))));
    }
  }

  /** Puts a rock back on the tray; its joints go. */
  record TakeOut(String rock) implements Edit {
    @Override
    public String name() {
      return "take out " + rock;
    }

    @Override
    public Outcome on(Scene s) {
      return SceneParts.placed(s, rock, p -> new Outcome.Changed(SceneParts.withoutJointsOf(
          s.withPlacements(s.placements().stream().filter(q -> q != p).toList()), rock)));
    }
  }

  /** A rock that was not there before, on the tray. */
  record Add(Rock rock) implements Edit {
    @Override
    public String name() {
      return "add " + rock.name();
    }

    @Override
    public Outcome on(Scene s) {
      if (rock.name().isBlank()) return new Outcome.Refused("A rock needs a name.");
      if (s.rock(rock.name()).isPresent()) return new Outcome.Refused("There is a rock '" + rock.name() + "' already.");
      return new Outcome.Changed(s.withRocks(SceneParts.plus(s.rocks(), rock)));
    }
  }

  /** Removes a rock from the scene, out of the tank or off the tray. */
  record Remove(String rock) implements Edit {
    @Override
    public String name() {
      return "remove " + rock;
    }

    @Override
    public Outcome on(Scene s) {
      if (s.rock(rock).isEmpty()) return new Outcome.Refused("There is no rock '" + rock + "'.");
      Scene without = s.withRocks(s.rocks().stream().filter(r -> !r.name().equals(rock)).toList())
          .withPlacements(s.placements().stream().filter(p -> !p.rock().equals(rock)).toList());
      return new Outcome.Changed(SceneParts.withoutJointsOf(without, rock));
    }
  }

  /** Another description of the same rock: weight, size, kind or name. */
  record Describe(String rock, Rock as) implements Edit {
    @Override
    public String name() {
      return rock.equals(as.name()) ? "describe " + rock : "call " + rock + " " + as.name();
    }

    @Override
    public Outcome on(Scene s) {
      if (s.rock(rock).isEmpty()) return new Outcome.Refused("There is no rock '" + rock + "'.");
      if (as.name().isBlank()) return new Outcome.Refused("A rock needs a name.");
      if (!as.name().equals(rock) && s.rock(as.name()).isPresent()) {
        return new Outcome.Refused("There is a rock '" + as.name() + "' already.");
      }
      return new Outcome.Changed(SceneParts.described(s, rock, as));
    }
  }

  /** Locks a rock in its place, or frees it. */
  record Lock(String rock, boolean locked) implements Edit {
    @Override
    public String name() {
      return (locked ? "lock " : "unlock ") + rock;
    }

    @Override
    public Outcome on(Scene s) {
      return SceneParts.placed(s, rock, p -> SceneParts.replaced(s, p, new Placement(rock, p.atMm(), p.turn(), locked)));
    }
  }

  /** What fixes the joint between two rocks; {@link JointSpec.Bond#NONE} frees it. */
  record Fix(JointSpec joint) implements Edit {
    @Override
    public String name() {
      return joint.bond() == JointSpec.Bond.NONE
          ? "free " + joint.a() + " from " + joint.b()
          : "fix " + joint.a() + " to " + joint.b() + " with " + joint.bond().word();
    }

    @Override
    public Outcome on(Scene s) {
      for (String r : List.of(joint.a(), joint.b())) {
        if (s.placement(r).isEmpty()) return new Outcome.Refused("'" + r + "' is not in the tank.");
      }
      return new Outcome.Changed(s.withJoints(SceneParts.fixed(s.joints(), joint)));
    }
  }

  /** The tank and what fills it. */
  record Furnish(Tank tank, Floor floor, Scene.Sand sand, Scene.Water water) implements Edit {
    @Override
    public String name() {
      return "change the tank";
    }

    @Override
    public Outcome on(Scene s) {
      if (!(tank.lengthMm() > 0 && tank.widthMm() > 0 && tank.heightMm() > 0 && tank.sideGlassMm() > 0
          && tank.bottomGlassMm() > 0)) {
        return new Outcome.Refused("Every length of the tank must be above 0 mm.");
      }
      if (!(water.levelMm() >= 0 && water.levelMm() <= tank.heightMm())) {
        return new Outcome.Refused("The water's level must lie between the bottom and the rim.");
      }
      if (!(sand.depthMm() >= 0 && sand.depthMm() < tank.heightMm())) {
        return new Outcome.Refused("The sand must lie between the bottom and the rim.");
      }
      return new Outcome.Changed(SceneParts.furnished(s, tank, floor, sand, water));
    }
  }

  /** One setting; empty goes back to the default. */
  record Set(Setting setting, java.util.OptionalDouble value) implements Edit {
    @Override
    public String name() {
      return "set " + setting.key();
    }

    @Override
    public Outcome on(Scene s) {
      Map<Setting, Double> given = new EnumMap<>(Setting.class);
      given.putAll(s.settings().given());
      if (value.isEmpty()) {
        given.remove(setting);
      } else if (!setting.admits(value.getAsDouble())) {
        return new Outcome.Refused("Must be from " + setting.least() + " to " + setting.most() + " " + setting.unit() + ".");
      } else {
        given.put(setting, value.getAsDouble());
      }
      return new Outcome.Changed(s.withSettings(new Settings(given)));
    }
  }

  /** The name of the scene. */
  record Entitle(String title) implements Edit {
    @Override
    public String name() {
      return "name the scene";
    }

    @Override
    public Outcome on(Scene s) {
      return new Outcome.Changed(new Scene(title, s.tank(), s.floor(), s.sand(), s.water(), s.devices(), s.lamps(), s.rocks(),
          s.placements(), s.joints(), s.settings()));
    }
  }

  /** Several changes under one name; all or none. */
  record Together(String name, List<Edit> edits) implements Edit {
    public Together {
      edits = List.copyOf(edits);
    }

    @Override
    public Outcome on(Scene s) {
      Outcome now = new Outcome.Changed(s);
      for (Edit e : edits) {
        now = now.match(e::on, Outcome.Refused::new);
        if (now instanceof Outcome.Refused) return now;
      }
      return now;
    }
  }
}
