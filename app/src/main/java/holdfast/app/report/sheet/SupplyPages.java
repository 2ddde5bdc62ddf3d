package holdfast.app.report.sheet;

import holdfast.app.report.FigureText;
import holdfast.app.report.sheet.Canvas.Face;
import holdfast.app.report.sheet.Flow.Column;
import holdfast.engine.build.Batches.Batch;
import holdfast.engine.build.BuildPlan;
import holdfast.engine.supply.FloorCuts;
import holdfast.engine.supply.Supply;
import holdfast.engine.supply.Volumes;
import holdfast.engine.supply.Weights;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What to buy, how to cut the floor panel, volumes and weights. */
final class SupplyPages {
  /** Share bought on top, common practice: rock breaks and disappoints, salt is used again, paste is left in the tub. */
  private static final double SPARE = 0.1;

  private final Canvas c;
  private final SheetContent content;
  private final Figures f;
  private final Scene scene;
  private final Supply supply;

  SupplyPages(Canvas c, SheetContent content, Figures f) {
    this.c = c;
    this.content = content;
    this.f = f;
    this.scene = content.scene();
    this.supply = content.supply();
  }

  void draw() {
    Flow flow = new Flow(c, () -> Frame.newPage(c, "What to buy, what it weighs", scene.name()));
    flow.heading("Shopping list");
    flow.table(List.of(Column.left("Item", 60), Column.right("This layout needs", 40), Column.left("Buy", 60),
        Column.left("Note", 110)), shopping());
    if (!content.rocks().isEmpty()) {
      rules(flow);
      prices(flow);
    }
    volumes(flow);
    weights(flow);
    supply.floor().ifPresent(p -> cuts(flow, p));
  }

  /** The rows of the shopping list. */
  List<List<String>> shopping() {
    List<List<String>> rows = new ArrayList<>();
    for (Supply.RockLine r : supply.rocks()) {
      String word = switch (r.kind()) {
        case DRY -> "Dry rock";
        case LIVE -> "Living rock";
        case CAST -> "Cast rock";
      };
      rows.add(List.of(word, f.kg(r.dryKg()) + " in " + r.pieces(), f.kgToBuy(r.dryKg() * (1 + SPARE)),
          "dry mass; a tenth more to choose from" + (r.kind() == Rock.Kind.LIVE ? "; sold wet it weighs more" : "")));
    }
    supply.floor().ifPresent(p -> rows.add(List.of(
        scene.floor().kind().word().equals("grid") ? "Louvre panel" : "Sheet", f.size(p.lengthMm(), p.widthMm()),
        p.panels().size() + " of " + f.size(p.panelLengthMm(), p.panelWidthMm()),
        p.pieces().size() + (p.pieces().size() == 1 ? " piece" : " pieces") + ", cut as drawn; no metal in it")));
    if (scene.floor().kind() != Floor.Kind.BARE && supply.floor().isEmpty()) {
      rows.add(List.of("Floor panel", "", "", "the stock panel of the settings does not yield this floor"));
    }
    BuildPlan b = content.plan();
    if (b.powderG() > 0) {
      rows.add(List.of("Reef-safe cement", f.gramsTogether(b.mortar().stream().map(Batch::powderG).toList()),
          f.grams(b.powderG() * (1 + SPARE)), "waste counted; a tenth more to try a mix on a spare stone"));
    }
    if (b.putty() > 0) rows.add(List.of("Underwater epoxy putty", f.ml(b.putty()), f.ml(b.putty() * 1.3), "three tenths more"));
    if (b.gel() > 0) rows.add(List.of("Cyanoacrylate gel", f.ml(b.gel()), f.ml(b.gel() * 1.3), "three tenths more"));
    if (b.rods() > 0) rows.add(List.of("Rods of fibreglass or acrylic, masonry bit", b.rods() + " joints", "one spare",
        "sizes in the joint schedule; the bit a little wider, to leave room for glue"));
    if (!content.joints().isEmpty()) rows.add(List.of("Waterproof gloves, goggles, dust mask", "", "one set a person",
        "before the cement is opened"));
    if (supply.sandKg() > 0) {
      rows.add(List.of("Sand, dry", f.kg(supply.sandKg()), f.kgToBuy(supply.sandKg() * (1 + SPARE / 2)),
          f.mm(scene.sand().depthMm()) + " deep, rock feet and floor panel taken out"));
    }
    rows.add(List.of("Purified fresh water", f.litres(supply.volumes().waterM3() * 1e3),
        f.litres(supply.volumes().waterM3() * 1e3 * (1 + SPARE)),
        "net of rock, sand, floor panel and devices; sump and pipes come on top"));
    rows.add(List.of("Salt mix", f.kg(supply.saltKg()), f.kgToBuy(supply.saltKg() * (1 + SPARE)),
        f.perLitre(scene.settings().get(Setting.SALT_G_PER_L))
            + " at a salinity of 35 (from memory); the maker's table goes before"));
    rows.add(List.of("Refractometer; tests for pH, ammonia, nitrite", "", "one of each", ""));
    return rows;
  }

  private void rules(Flow flow) {
    Supply.RockAmount a = supply.amount();
    List<String> density = FigureText.range(a.kgPerL(), a.lowKgPerL(), a.highKgPerL(), f.units());
    flow.paragraph("Rock against the tank: " + f.kg(a.dryKg()) + " in " + f.litres(a.tankL()) + " to the rim is "
        + density.get(0) + ", " + a.word() + " the rule of thumb of " + density.get(1) + " to " + density.get(2)
        + " (common practice; dense rock needs more mass for the same look, porous less).");
  }

  private void prices(Flow flow) {
    flow.heading("Prices");
    boolean any = supply.bills().stream().anyMatch(b -> b.total().isPresent());
    if (!any) {
      flow.paragraph("No prices are given in the scene's settings, so none are worked out here.");
      return;
    }
    List<List<String>> rows = supply.bills().stream()
        .map(b -> List.of(b.what(), money(b.rock()), money(b.starter()), money(b.total()))).toList();
    flow.table(List.of(Column.left("The same pieces as", 80), Column.right("Rock", 40), Column.right("Starter", 40),
        Column.right("Together", 40)), rows);
    flow.paragraph("In your own money, from your own prices a kilogram of dry mass.");
  }

  private static String money(OptionalDouble v) {
    return v.isPresent() ? Figures.money(v.getAsDouble()) : "price missing";
  }

  private void volumes(Flow flow) {
    Volumes v = supply.volumes();
    flow.heading("Volumes up to the waterline", 40);
    List<List<String>> rows = new ArrayList<>(List.of(
        List.of("Inside of the tank", f.litres(v.boxM3() * 1e3), "length × width × waterline"),
        List.of("Water over the sand", f.litres(v.openWaterM3() * 1e3), "")));
    boolean rock = !content.rocks().isEmpty();
    boolean sand = v.sandBulkM3() > 0;
    if (sand) {
      rows.add(List.of("Water in the sand", f.litres(v.sandWaterM3() * 1e3), "between the grains of "
          + f.litres(v.sandBulkM3() * 1e3) + " of sand"));
    }
    if (rock) {
      rows.add(List.of("Water in the rock", f.litres(v.poreWaterM3() * 1e3), "pores fill; outer volume of the rock "
          + f.litres(v.rockHullM3() * 1e3)));
    }
    if (rock || sand) rows.add(List.of("Water, together", f.litres(v.waterM3() * 1e3), "what is to be mixed"));
    if (rock) {
      rows.add(List.of("Solid of the rock", f.litres(v.rockSolidM3() * 1e3), "mass by the mineral's density, and sealed voids"));
    }
    if (sand) rows.add(List.of("Grains of the sand", f.litres(v.sandGrainsM3() * 1e3), ""));
    rows.add(List.of("Floor panel and devices", f.litres((v.floorM3() + v.devicesM3()) * 1e3), "devices as whole boxes"));
    flow.table(List.of(Column.left("Part", 90), Column.right("Volume", 40), Column.left("How", 140)), rows);
  }

  private void weights(Flow flow) {
    Weights w = supply.weights();
    flow.heading("Weights", 40);
    flow.table(List.of(Column.left("What", 90), Column.right("Weight", 40), Column.left("How", 140)), List.of(
        List.of("Empty", f.kg(w.emptyKg()), scene.tank().openings().isEmpty() ? "glass alone" : "glass alone, braces counted"),
        List.of("Dry: with rock, sand, floor panel", f.kg(w.dryKg()), "rock " + f.kg(w.rockKg()) + ", sand " + f.kg(w.sandKg())),
        List.of("Filled: on the stand", f.kg(w.filledKg()), "water " + f.kg(w.waterKg())),
        List.of("On its footprint", f.load(w.perFootprintKgM2()), "dwellings are often designed for "
            + f.load(scene.settings().get(Setting.FLOOR_LOAD_KG_M2)) + " (common practice)")));
    flow.cautions(supply.cautions());
  }

  /** The stock panels with the pieces drawn on them. */
  private void cuts(Flow flow, FloorCuts p) {
    flow.heading("Floor panel: cutting plan", 70);
    flow.paragraph(f.size(p.lengthMm(), p.widthMm()) + " from " + p.panels().size() + (p.panels().size() == 1 ? " panel"
        : " panels") + " of "
        + f.size(p.panelLengthMm(), p.panelWidthMm()) + (p.fewest() ? ", the fewest possible" : "") + "; left over "
        + Figures.percent(p.wasteM2() / (p.panels().size() * p.panelLengthMm() * p.panelWidthMm() * 1e-6))
        + " of what is bought." + (p.pieces().size() > 1
        ? " Pieces are laid in rows from the front-left, in the order of their numbers." : ""));
    for (FloorCuts.CutOut o : p.cutOuts()) {
      flow.paragraph("Cut out for " + o.device() + ": " + f.size(o.lengthMm(), o.widthMm()) + ", " + f.mm(o.xMm())
          + " from the left and "
          + f.mm(o.yMm()) + " from the front edge of the whole floor.");
    }
    double gap = 6;
    double height = 72;
    double scale = Math.max(p.panelLengthMm() / 84, p.panelWidthMm() / (height - 8));
    List<String> narrow = new ArrayList<>();
    for (List<FloorCuts.OnPanel> panel : p.panels()) {
      for (FloorCuts.OnPanel o : panel) if (!sized(o, scale)) narrow.add("piece " + (o.piece() + 1) + " " + size(o));
    }
    if (!narrow.isEmpty()) flow.paragraph("Too narrow to write on: " + String.join("; ", narrow) + ".");
    double w = p.panelLengthMm() / scale;
    int across = Math.max(1, (int) ((flow.frame().width() + gap) / (w + gap)));
    for (int i = 0; i < p.panels().size(); i += across) {
      double y = flow.take(p.panelWidthMm() / scale + 9) + 6;
      for (int k = i; k < Math.min(i + across, p.panels().size()); k++) {
        panel(p, k, flow.frame().x() + (k - i) * (w + gap), y, scale);
      }
    }
  }

  private void panel(FloorCuts p, int number, double x, double y, double scale) {
    c.brush(Ink.FAINT);
    c.fillRectangle(x, y, p.panelLengthMm() / scale, p.panelWidthMm() / scale);
    for (FloorCuts.OnPanel o : p.panels().get(number)) {
      double px = x + o.xMm() / scale;
      double py = y + o.yMm() / scale;
      double pw = o.lengthMm() / scale;
      double ph = o.widthMm() / scale;
      c.brush(Ink.PAPER);
      c.fillRectangle(px, py, pw, ph);
      c.pen(Ink.BLACK, 0.4);
      c.rectangle(px, py, pw, ph);
      FloorCuts.Piece piece = p.pieces().get(o.piece());
      if (ph > 4) label("piece " + (o.piece() + 1), px + pw / 2, py + ph / 2 + 1, 3.2, Face.BOLD, pw);
      if (sized(o, scale)) label(size(o), px + pw / 2, py + ph / 2 - 3.2, 2.9, Face.REGULAR, pw);
      if (ph > 20) {
        boolean turned = Math.abs(o.lengthMm() - piece.lengthMm()) > 1e-6;
        String cells = (turned ? piece.cellsWide() + " × " + piece.cellsLong() : piece.cellsLong() + " × " + piece.cellsWide())
            + " whole cells";
        label(cells, px + pw / 2, py + ph / 2 - 7, 2.7, Face.REGULAR, pw);
      }
    }
    c.pen(Ink.GREY, 0.3, 2, 1.2);
    c.rectangle(x, y, p.panelLengthMm() / scale, p.panelWidthMm() / scale);
    c.brush(Ink.GREY);
    c.text("panel " + (number + 1), x, y - 4, 3, Face.REGULAR);
  }

  private String size(FloorCuts.OnPanel o) {
    return f.size(o.lengthMm(), o.widthMm());
  }

  /** Whether a piece is drawn large enough for its size to be written on it. */
  private boolean sized(FloorCuts.OnPanel o, double scale) {
    return o.widthMm() / scale > 9 && c.width(size(o), 2.9, Face.REGULAR) <= o.lengthMm() / scale - 1;
  }

  /** A word in the middle of a piece, left out where it does not fit. */
  private void label(String words, double x, double y, double size, Face face, double room) {
    if (c.width(words, size, face) > room - 1) return;
    c.brush(Ink.BLACK);
    c.textCentred(words, x, y, size, face);
  }
}
