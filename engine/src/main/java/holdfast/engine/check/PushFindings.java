package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.bonding.JointSearch;
import holdfast.engine.check.HeapStudy.PressFound;
import holdfast.engine.check.HeapStudy.ShakeFound;
import holdfast.engine.check.PushStudy.PushFound;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.work.Parallel;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What the pushes, presses and shaking found, against the tiers of the settings. */
final class PushFindings {
  /** What a heap needs that does not bear being shaken. */
  static final String STEADIER = "Fix the tall stacks, or lower them.";

  private final HeapStudy study;
  private final Settings settings;
  private final double tier;

  PushFindings(HeapStudy study) {
    this.study = study;
    settings = study.scene().scene().settings();
    tier = settings.get(Setting.PUSH_TIER_N);
  }

  List<Finding> of(List<PushFound> weakest, List<PressFound> presses, List<ShakeFound> shakes, int threads) {
    List<Finding> out = new ArrayList<>();
    List<Integer> rocks = IntStream.range(0, weakest.size()).boxed().toList();
    Parallel.map(rocks, threads, i -> rock(i, weakest.get(i))).forEach(out::addAll);
    for (int i = 0; i < presses.size(); i++) press(i, presses.get(i)).ifPresent(out::add);
    shake(shakes).ifPresent(out::add);
    return out;
  }

  private List<Finding> rock(int rock, PushFound weakest) {
    List<Finding> out = new ArrayList<>();
    String name = study.scene().name(rock);
    if (!study.safeUnderWeight(rock)) return out;
    List<PushFound> below = study.pushes().below(rock);
    Optional<PushFound> topple = study.pushes().topple(rock);
    topple.ifPresent(p -> out.add(topples(name, rock, p)));
    slides(name, rock, below, topple.isEmpty()).ifPresent(out::add);
    double loose = settings.get(Setting.PUSH_LOOSE_N);
    if (!weakest.unlimited() && weakest.marginN() < loose) {
      out.add(Draft.warn(Code.LOOSE).about(name).figure(weakest.marginN(), loose, "N").in(weakest.state())
          .moving(weakest.mechanism()).say(
          text("%s moves under %.1f N: it is loose.", name, Draft.down(weakest.marginN())),
          text("Seat %s anew or fix it.", name)));
    }
    if (below.stream().anyMatch(p -> !p.settled())) {
      out.add(Draft.fail(Code.UNDECIDED).about(name).say(
          text("How hard a push %s takes could not be settled from every side.", name),
          "Treat it as toppling: fix it, or widen what it stands on."));
    }
    return out;
  }

  private Finding topples(String name, int rock, PushFound p) {
    List<String> movers = p.mechanism().map(m -> StandingFindings.movers(study.scene().heap(), m)).orElse(List.of(name));
    List<String> others = movers.stream().filter(m -> !m.equals(name)).toList();
    String with = others.isEmpty() ? "" : text(", and %s with it", Draft.names(others));
    return Draft.fail(Code.TOPPLES).about(name).about(others).figure(p.marginN(), tier, "N").in(p.state())
        .moving(p.mechanism()).say(
        text("%s topples under a push of %.1f N toward the %s%s%s.", name, Draft.down(p.marginN()),
            Headings.word(p.degrees()), with, paneAhead(rock, p)),
        broaderFoot(study.scene(), rock));
  }

  /** What keeps a rock from going over. Where no joint is left to fix, what is fixed together already goes over as one piece. */
  static String broaderFoot(SceneHeap scene, int rock) {
    String name = scene.name(rock);
    if (!JointSearch.open(scene, rock).isEmpty()) {
      return text("Fix %s to what it stands on, lower it, or give it a broader foot.", name);
    }
    return FixedPiece.of(scene.scene(), name).size() == 1
        ? text("Turn %s onto a broader side, lower it, or lay a stone to either side.", name)
        : text("Give %s a broader foot, lower it, or lay a stone to either side.", FixedPiece.words(scene.scene(), name));
  }

  /** What keeps it from tipping when its rim is pressed. */
  static String underItsRim(SceneHeap scene, int rock) {
    String name = scene.name(rock);
    if (!JointSearch.open(scene, rock).isEmpty()) {
      return text("Fix %s, move it in over what carries it, or put a rest under its rim.", name);
    }
    return FixedPiece.of(scene.scene(), name).size() == 1
        ? text("Turn %s onto a broader side, or put a rest under its rim.", name)
        : text("Put a rest under the rim of %s, or give %s a broader foot.", name, FixedPiece.words(scene.scene(), name));
  }

  /** A rock that goes over may strike a pane that is nearer than it is tall. */
  private String paneAhead(int rock, PushFound p) {
    Vec3 d = Vec3.heading(p.degrees());
    var r = study.scene().rocks().get(rock);
    double top = r.reach(Vec3.Z);
    for (Side side : Side.values()) {
      if (d.dot(side.outward()) < 0.7) continue;
      double to = switch (side) {
        case FRONT -> -r.reach(Vec3.Y.negated());
        case BACK -> study.scene().scene().tank().widthMm() * 1e-3 - r.reach(Vec3.Y);
        case LEFT -> -r.reach(Vec3.X.negated());
        case RIGHT -> study.scene().scene().tank().lengthMm() * 1e-3 - r.reach(Vec3.X);
      };
      if (to < top) return text(", and may strike the %s pane", side.word());
    }
    return "";
  }

  private Optional<Finding> slides(String name, int rock, List<PushFound> below, boolean everySide) {
    List<PushFound> slides = SlideQuestion.sliding(below);
    if (slides.isEmpty()) return Optional.empty();
    return SlideQuestion.endingInAFall(study, rock, slides, everySide).map(p -> slidesAndFalls(name, rock, p))
        .or(() -> Optional.of(slides(name, slides.get(0), Draft.warn(Code.SLIDES), "still",
            text("Nothing need be done unless %s must keep its place.", name))));
  }

  /** The joints that mend it are sought and told for all of the heap together. */
  private Finding slidesAndFalls(String name, int rock, PushFound p) {
    double mm = settings.get(Setting.SLIDE_TEST_MM);
    String move = text("move %s, or what rests on it, so that all is still carried when it has gone %s mm that way", name, Draft.plain(mm));
    return slides(name, p, Draft.fail(Code.SLIDES), "no longer", JointSearch.open(study.scene(), rock).isEmpty()
        ? "M" + move.substring(1) + "." : "Fix the joints that are told to need fixing, or " + move + ".");
  }

  private Finding slides(String name, PushFound p, Draft draft, String stands, String remedy) {
    return draft.about(name).figure(p.marginN(), tier, "N").in(p.state()).moving(p.mechanism()).say(
        text("%s slides under a push of %.1f N toward the %s; moved %s mm that way, the heap %s stands.", name,
            Draft.down(p.marginN()), Headings.word(p.degrees()), Draft.plain(settings.get(Setting.SLIDE_TEST_MM)), stands), remedy);
  }

  private Optional<Finding> press(int rock, PressFound p) {
    if (p.marginN() >= tier || !study.safeUnderWeight(rock)) return Optional.empty();
    String name = study.scene().name(rock);
    Draft draft = Draft.fail(Code.PRESSED).about(name).figure(p.marginN(), tier, "N").in(p.state()).moving(p.mechanism());
    return Optional.of(draft.say(
        text("%s tips when pressed down on its rim with %.1f N.", name, Draft.down(p.marginN())),
        underItsRim(study.scene(), rock)));
  }

  private Optional<Finding> shake(List<ShakeFound> shakes) {
    double limit = settings.get(Setting.SHAKE_G);
    SceneHeap scene = study.scene();
    if (scene.rocks().isEmpty()) return Optional.empty();
    return shakes.stream()
        .filter(s -> study.judges(s.state()).stream().allMatch(j -> j.safe()))
        .min(Comparator.comparingDouble(ShakeFound::marginG))
        .filter(s -> s.marginG() < limit)
        .map(s -> Draft.fail(Code.SHAKES).about("the heap").figure(s.marginG(), limit, "g").in(s.state())
            .moving(s.mechanism()).say(
            text("Shaken sideways, the heap begins to give way at %.3f g toward the %s; added mass of the water is left out.",
                Draft.down(100 * s.marginG()) / 100, Headings.word(s.degrees())),
            STEADIER));
  }
}
