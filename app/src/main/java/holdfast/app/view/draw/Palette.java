package holdfast.app.view.draw;

import holdfast.app.report.SeverityLook;
import holdfast.model.scene.Rock;

/**
 * Every colour of the viewport and its pictures, in one place. Severity is never told by colour alone: each has a shape
 * and a word too, the same as in text ({@link SeverityLook}), and its words are in ink.
 */
public final class Palette {
  private Palette() {}

  // -- paper and ink ------------------------------------------------------------------------------------------------
  public static final Colour SKY = Colour.of(0xF3F5F4);
  public static final Colour GROUND = Colour.of(0xD9E0E0);
  public static final Colour PANEL = Colour.of(0xFAFBFA);
  public static final Colour PANEL_SUNK = Colour.of(0xEEF1F0);
  public static final Colour RULE = Colour.of(0xD3DAD9);
  public static final Colour INK = Colour.of(0x1B2A31);
  public static final Colour INK_SOFT = Colour.of(0x52636A);
  public static final Colour INK_FAINT = Colour.of(0x8A989D);
  public static final Colour ACCENT = Colour.of(0x0B6670);
  public static final Colour ACCENT_SOFT = Colour.of(0xCFE4E4);
  /** The line round the control that the keyboard is on: dark beside every fill of the panels. */
  public static final Colour FOCUS = Colour.of(0x12303A);

  // -- what a judgement says ----------------------------------------------------------------------------------------
  public static final Colour FINE = Colour.of(SeverityLook.FINE.rgb());
  public static final Colour NOTE = Colour.of(SeverityLook.NOTE.rgb());
  public static final Colour WARN = Colour.of(SeverityLook.WARN.rgb());
  public static final Colour FAIL = Colour.of(SeverityLook.FAIL.rgb());
  public static final Colour UNDECIDED = Colour.of(SeverityLook.UNDECIDED.rgb());

  // -- the tank -----------------------------------------------------------------------------------------------------
  public static final Colour GLASS = Colour.of(0x8FB5B2);
  public static final Colour GLASS_EDGE = Colour.of(0x3F7F7C);
  public static final Colour WATER = Colour.of(0x4F9FB4);
  public static final Colour WATER_LINE = Colour.of(0x1F7790);
  public static final Colour SAND = Colour.of(0xE4D8BD);
  public static final Colour LOUVRE = Colour.of(0xF4F5F2);
  public static final Colour BOTTOM = Colour.of(0xAFC4C4);
  public static final Colour DEVICE = Colour.of(0x7D8B92);
  public static final Colour LAMP = Colour.of(0xF0C24B);

  // -- stone --------------------------------------------------------------------------------------------------------
  public static final Colour DRY = Colour.of(0xCDC1AC);
  public static final Colour LIVE = Colour.of(0x97748F);
  public static final Colour LIVE_PATCH = Colour.of(0x8A9576);
  public static final Colour CAST = Colour.of(0xAAAFB3);
  public static final Colour CUT = Colour.of(0xEAE3D6);

  // -- marks on the scene -------------------------------------------------------------------------------------------
  public static final Colour CHOSEN = Colour.of(0x0B7F8C);
  public static final Colour FORCE = Colour.of(0x1E4F9C);
  public static final Colour JOINT = Colour.of(0xC2571A);
  public static final Colour GAP = Colour.of(0x14606A);

  /** The tone of a kind of rock; its pattern is drawn by the stone shader. */
  public static Colour stone(Rock.Kind kind) {
    return switch (kind) {
      case DRY -> DRY;
      case LIVE -> LIVE;
      case CAST -> CAST;
    };
  }

  /** A scale from calm to alarming for maps, told apart by lightness alone as well: {@code t} from 0 to 1. */
  public static Colour scale(double t) {
    double u = Math.max(0, Math.min(1, t)) * (SCALE.length - 1);
    int i = Math.min((int) u, SCALE.length - 2);
    return SCALE[i].toward(SCALE[i + 1], u - i);
  }

  private static final Colour[] SCALE = {
    Colour.of(0xE9F2EF), Colour.of(0xA9D3CE), Colour.of(0x5AA3B5), Colour.of(0x4A6CA3), Colour.of(0x5B2F6E), Colour.of(0x3A0F33)
  };
}
