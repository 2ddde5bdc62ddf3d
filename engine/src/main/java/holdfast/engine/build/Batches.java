package holdfast.engine.build;

import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The day's work against the clock: when each rock is set and each joint made, which joints share a batch of mortar, and
 * the waits until joints have set.
 *
 * <p>A batch takes the next joints in the order of building for as long as they are made within the working time of the
 * mix (from the end of mixing to the end of the last joint, setting the rocks between them included) and need no more
 * powder than one batch may hold. Taking as many as fit each time gives the fewest batches: any other plan's k-th batch
 * ends no later. A joint that needs more than one batch's powder is made from several mixes in a row.
 *
 * @param batches in order
 * @param minutes for each stage when its rock is set, from the start
 * @param waits for each stage the hours to wait after it until its joints bear, 0 for none
 * @param workMin minutes from the start to the last joint, waits included
 * @param livingOutMin minutes for which the first living rock is out of the water in this plan, from lifting it out of
 *     its bucket to the end of the work before filling; 0 when no living rock is placed before that
 * @param wetMin minutes for which a rock is out of the water that is set after filling: the longest; 0 without any
 * @param putty millilitres of putty, {@code gel} of gel, waste left out; {@code rods} number of rods
 */
public record Batches(
    List<Batch> batches, List<Double> minutes, List<Double> waits, double workMin, double livingOutMin,
    double wetMin, double putty, double gel, int rods) {

  /** Minutes for a joint of gel to bear (common practice: minutes). */
  private static final double GEL_H = 0.25;

  public Batches {
    batches = List.copyOf(batches);
    minutes = List.copyOf(minutes);
    waits = List.copyOf(waits);
  }

  /**
   * One batch of mortar.
   *
   * @param joints numbers of its joints
   * @param powderG powder to mix, waste included
   * @param waterG water to mix, waste included
   * @param wasteG powder of it that will be left over
   * @param mixes number of mixes; more than one only for a joint larger than a batch
   * @param startMin when mixing starts, minutes from the start of work
   * @param goneMin when it must be used up
   */
  public record Batch(
      List<Integer> joints, double powderG, double waterG, double wasteG, int mixes, double startMin, double goneMin) {
    public Batch {
      joints = List.copyOf(joints);
    }
  }

  /** All the powder, waste included, grams. */
  public double powderG() {
    return batches.stream().mapToDouble(Batch::powderG).sum();
  }

  /** The batches for an order of building, all of it before filling. */
  public static Batches of(Scene scene, List<BuildOrder.Stage> stages, List<Boolean> living) {
    return of(scene, stages, living, stages.size());
  }

  /**
   * The batches for an order of building.
   *
   * @param living for each rock or piece whether it must not be out of the water for long
   * @param wetFrom stages from this one on come after filling; the clock runs on as if that took no time
   */
  public static Batches of(Scene scene, List<BuildOrder.Stage> stages, List<Boolean> living, int wetFrom) {
    return new Clock(scene).run(stages, living, wetFrom);
  }

  /** Walks through the stages with the clock running. */
  private static final class Clock {
    private final Scene scene;
    private final Settings settings;
    private final List<Batch> batches = new ArrayList<>();
    private final List<Integer> open = new ArrayList<>();
    private double now;
    private double start;
    private double mixed;
    private double needG;
    private int mixes = 1;

    Clock(Scene scene) {
      this.scene = scene;
      this.settings = scene.settings();
    }

    Batches run(List<BuildOrder.Stage> stages, List<Boolean> living, int wetFrom) {
      List<Double> minutes = new ArrayList<>();
      List<Double> waits = new ArrayList<>();
      Set<Integer> made = new TreeSet<>();
      double firstLiving = Double.NaN;
      double filling = Double.NaN;
      double wet = 0;
      for (int i = 0; i < stages.size(); i++) {
        BuildOrder.Stage stage = stages.get(i);
        if (i == wetFrom) {
          close();
          filling = now;
        }
        minutes.add(now);
        if (i < wetFrom && living.get(stage.rock()) && Double.isNaN(firstLiving)) firstLiving = now;
        now += settings.get(Setting.PLACE_MIN);
        for (int j : stage.joints()) joint(j);
        made.addAll(stage.joints());
        if (i >= wetFrom) wet = Math.max(wet, now - minutes.get(i));
        double wait = 0;
        if (stage.curedHere()) {
          close();
          made.removeAll(stage.bearing());
          wait = made.stream().mapToDouble(this::setsInH).max().orElse(0);
          now += 60 * wait;
        }
        waits.add(wait);
      }
      close();
      double putty = sum(stages, JointSpec.Bond.PUTTY);
      double gel = sum(stages, JointSpec.Bond.GEL);
      int rods = (int) stages.stream().flatMap(s -> s.joints().stream())
          .filter(j -> scene.joints().get(j).rodDiameterMm() > 0).count();
      double dryEnd = Double.isNaN(filling) ? now : filling;
      return new Batches(
          batches, minutes, waits, now, Double.isNaN(firstLiving) ? 0 : dryEnd - firstLiving, wet, putty, gel, rods);
    }

    private double sum(List<BuildOrder.Stage> stages, JointSpec.Bond bond) {
      return stages.stream().flatMap(s -> s.joints().stream()).map(scene.joints()::get)
          .filter(j -> j.bond() == bond).mapToDouble(JointSpec::amountMl).sum();
    }

    private double setsInH(int number) {
      return switch (scene.joints().get(number).bond()) {
        case MORTAR -> settings.get(Setting.CEMENT_HANDLING_H);
        case PUTTY -> settings.get(Setting.PUTTY_CURE_H);
        case GEL -> GEL_H;
        case ROD -> scene.joints().get(number).rodGlued() ? settings.get(Setting.PUTTY_CURE_H) : 0;
        case NONE -> 0;
      };
    }

    private void joint(int number) {
      JointSpec joint = scene.joints().get(number);
      double takes = settings.get(Setting.CEMENT_JOINT_MIN);
      if (joint.bond() == JointSpec.Bond.MORTAR) {
        double most = settings.get(Setting.CEMENT_BATCH_G);
        double grams = joint.amountMl() * settings.get(Setting.CEMENT_G_PER_ML);
        double withWaste = 1 + settings.get(Setting.CEMENT_WASTE);
        boolean fits = !open.isEmpty()
            && (needG + grams) * withWaste <= most
            && now + takes <= mixed + settings.get(Setting.CEMENT_WORKING_MIN);
        if (!fits) {
          close();
          start = now;
          mixes = Math.max(1, (int) Math.ceil(grams * withWaste / most - 1e-9));
          now += mixes * settings.get(Setting.MIX_MIN);
          mixed = now;
        }
        open.add(number);
        needG += grams;
      }
      now += takes;
    }

    private void close() {
      if (open.isEmpty()) return;
      double powder = needG * (1 + settings.get(Setting.CEMENT_WASTE));
      double perPowder = settings.get(Setting.CEMENT_WATER_G_PER_ML) / settings.get(Setting.CEMENT_G_PER_ML);
      batches.add(new Batch(
          open, powder, powder * perPowder, powder - needG, mixes, start, mixed + settings.get(Setting.CEMENT_WORKING_MIN)));
      open.clear();
      needG = 0;
      mixes = 1;
    }
  }
}
