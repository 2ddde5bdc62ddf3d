package holdfast.app.view.draw;

import static org.lwjgl.opengl.GL30.*;

import holdfast.app.view.gl.DepthMap;
import holdfast.app.view.gl.Floats;
import holdfast.app.view.gl.Mesh;
import holdfast.app.view.gl.Program;
import holdfast.app.view.gl.Target;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Mat3;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.joml.Matrix4f;
import org.joml.Vector3f;

/**
 * Draws a tableau: shadow map, sky and ground, solid things, then everything one sees through, from the bottom up.
 * Buffers of stones and tank are kept as long as their shapes stay the same.
 */
public final class Renderer implements AutoCloseable {
  private static final Vec3 LAMP = new Vec3(-0.24, -0.34, 0.91).unit();
  private static final double WEAR_M = 0.009;
  private static final Vec3 NO_CUT = Vec3.ZERO;

  private final Program stoneProgram = new Program("stone");
  private final Program plainProgram = new Program("plain");
  private final Program skyProgram = new Program("sky");
  private final Program shadowProgram = new Program("shadow");
  private final Mesh skyMesh = new Mesh(2);
  private final Mesh scratch = new Mesh(3, 3, 4);
  private final DepthMap shadows;
  private final Map<List<Hull>, Mesh> stoneMeshes = new IdentityHashMap<>();
  private final TankMeshes tank = new TankMeshes();
  private List<Object> shadowsOf = List.of();

  public Renderer(int shadowMapSize) {
    shadows = new DepthMap(shadowMapSize);
    skyMesh.fill(new Floats().add(0, 0, 0, 0, 0, 0));
  }

  /** Draws into the target and leaves it bound, so that a {@link Brush} can add to it. */
  public void draw(Target target, Tableau tableau, Camera camera, Looks looks, Marks marks, float scale) {
    Scene scene = tableau.scene();
    tank.update(scene);
    forgetUnused(tableau.stones());
    Matrix4f fromLamp = lampMatrix(tableau);
    List<Object> cast = casting(tableau, looks);
    if (!cast.equals(shadowsOf)) castShadows(tableau, fromLamp, looks);
    shadowsOf = cast;

    target.bind();
    Projector projector = new Projector(camera, target.width(), target.height());
    glDepthMask(true);
    glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT | GL_STENCIL_BUFFER_BIT);
    sky();
    glEnable(GL_DEPTH_TEST);
    glDepthFunc(GL_LEQUAL);
    glDisable(GL_CULL_FACE);
    glEnable(GL_BLEND);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    shadows.bindTexture(1);
    float span = (float) tableau.high().minus(tableau.low()).norm();
    for (Program p : List.of(stoneProgram, plainProgram)) {
      p.use().set("viewProjection", projector.matrix()).set("shadowMatrix", fromLamp).set("shadowMap", 1)
          .set("lampDirection", vector(LAMP)).set("shadowSpread", 0.007f / span);
    }
    // Solid things from near to far, and only the sides that face the eye: what is hidden is then not worked out.
    cut(looks, true);
    if (looks.cut().isEmpty()) glEnable(GL_CULL_FACE);
    stones(tableau.stones().stream().filter(s -> !looks.faint().contains(s.name())).sorted(nearFirst(camera)).toList(), camera,
        looks);
    glDisable(GL_CULL_FACE);
    under(scene, looks);
    cut(looks, false);
    caps(tableau.stones(), looks);
    plain(scratch.fill(marks.solid.data()), 0, 0.75f);

    glDepthMask(false);
    cut(looks, true);
    stones(tableau.stones().stream().filter(s -> looks.faint().contains(s.name())).toList(), camera, looks);
    if (looks.sand()) plain(tank.sand, 2, 0.45f);
    plain(tank.devices, 0, 0.8f);
    plain(scratch.fill(marks.veil.data()), 0, 0);
    if (looks.water()) plain(tank.water, 0, 0);
    cut(looks, false);
    if (looks.glass()) {
      plain(tank.glass, 0, 0);
      wires(tank.wires(), projector, scale);
    }
    wires(marks.wires, projector, scale);
    outlines(tableau.stones(), projector, looks, scale);
    glDepthMask(true);
    glDisable(GL_CLIP_DISTANCE0);
  }

  private static Comparator<Stone> nearFirst(Camera camera) {
    return Comparator.comparingDouble(
        s -> camera.flat() ? s.centreInTank().dot(camera.forward()) : s.centreInTank().distanceTo(camera.eye()));
  }

  /** The floor, the bottom pane and the shade about the tank. */
  private void under(Scene scene, Looks looks) {
    cut(looks, true);
    plainProgram.use().set("cells", tank.cells()).set("under", Palette.BOTTOM.toward(Palette.INK_SOFT, 0.22).rgb());
    plain(tank.floor, scene.floor().kind() == holdfast.model.scene.Floor.Kind.GRID ? 1 : 0, 1);
    plain(tank.bottom, 0, 1);
    cut(looks, false);
    plainProgram.use().set("cells", tank.middle()[0], tank.middle()[1], tank.half()[0], tank.half()[1]);
    glDepthMask(false);
    plain(tank.ground, 4, 0);
    glDepthMask(true);
  }

  private void sky() {
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_BLEND);
    skyProgram.use().set("high", Palette.SKY.rgb()).set("low", Palette.GROUND.rgb());
    skyMesh.draw();
  }

  private void plain(Mesh mesh, int pattern, float light) {
    plainProgram.use().set("pattern", pattern).set("amount", light);
    mesh.draw();
  }

  private void cut(Looks looks, boolean on) {
    boolean active = on && looks.cut().isPresent();
    Vec3 n = active ? looks.cut().get().normal().negated() : NO_CUT;
    double d = active ? looks.cut().get().offsetM() : 1;
    if (active) glEnable(GL_CLIP_DISTANCE0);
    else glDisable(GL_CLIP_DISTANCE0);
    // Not every driver minds the switch: with this plane nothing is cut in any case.
    for (Program p : List.of(stoneProgram, plainProgram, shadowProgram)) {
      p.use().set("cut", (float) n.x(), (float) n.y(), (float) n.z(), (float) d);
    }
  }

  private void stones(List<Stone> stones, Camera camera, Looks looks) {
    Vec3 eye = camera.flat() ? camera.eye().plusTimes(-20, camera.forward()) : camera.eye();
    stoneProgram.use().set("eye", vector(eye)).set("swell", 0f);
    for (Stone s : stones) {
      boolean faint = looks.faint().contains(s.name());
      Colour tone = Palette.stone(s.kind());
      Colour wash = Palette.SKY.solid(faint ? 0.5 : looks.stonesPale() ? 0.62 : 0);
      if (looks.chosen().contains(s.name())) wash = Palette.CHOSEN.solid(0.16);
      else if (looks.hovered().filter(s.name()::equals).isPresent()) wash = Palette.CHOSEN.solid(0.07);
      stoneProgram.set("place", matrix(s.pose())).set("kind", kindNumber(s.kind())).set("tone", tone.rgb())
          .set("patchTone", Palette.LIVE_PATCH.rgb()).set("seed", (s.name().hashCode() & 1023) / 97f)
          .set("wash", wash.rgba()).set("alpha", faint ? 0.30f : 1f);
      mesh(s).draw();
    }
  }

  /** A line of colour round what is chosen: the stone swollen by a few pixels, drawn only where the stone itself is not. */
  private void outlines(List<Stone> stones, Projector projector, Looks looks, float scale) {
    glEnable(GL_STENCIL_TEST);
    for (Stone s : stones) {
      if (!looks.chosen().contains(s.name())) continue;
      double px = projector.metresPerPixel(s.centreInTank());
      glClear(GL_STENCIL_BUFFER_BIT);
      glStencilFunc(GL_ALWAYS, 1, 255);
      glStencilOp(GL_KEEP, GL_REPLACE, GL_REPLACE);
      glColorMask(false, false, false, false);
      glDepthMask(false);
      stoneProgram.use().set("place", matrix(s.pose())).set("swell", 0f);
      mesh(s).draw();
      glColorMask(true, true, true, true);
      glStencilFunc(GL_NOTEQUAL, 1, 255);
      glStencilOp(GL_KEEP, GL_KEEP, GL_KEEP);
      glDisable(GL_DEPTH_TEST);
      stoneProgram.set("swell", (float) (2.6 * scale * px)).set("wash", Palette.CHOSEN.rgba()).set("alpha", 1f).set("kind", 2);
      mesh(s).draw();
      glEnable(GL_DEPTH_TEST);
      glDepthMask(true);
    }
    stoneProgram.use().set("swell", 0f);
    glDisable(GL_STENCIL_TEST);
  }

  private void caps(List<Stone> stones, Looks looks) {
    if (looks.cut().isEmpty()) return;
    Cut cut = looks.cut().get();
    Facets faces = new Facets();
    for (Stone s : stones) {
      Colour c = Palette.stone(s.kind()).toward(Palette.CUT, 0.45);
      for (Hull h : s.lobes()) faces.polygon(cut.outline(h.moved(s.pose())), cut.normal(), c);
    }
    plain(scratch.fill(faces.data()), 3, 0.25f);
  }

  private void wires(List<Wire> wires, Projector projector, float scale) {
    Facets f = new Facets();
    for (Wire w : wires) {
      Vec3 along = w.b().minus(w.a());
      Vec3 toEye = projector.camera().flat() ? projector.camera().forward().negated() : projector.camera().eye().minus(w.a());
      Vec3 across = along.cross(toEye).unit();
      if (across.norm() < 0.5) continue;
      double a = projector.metresPerPixel(w.a()) * w.widthPx() * scale / 2;
      double b = projector.metresPerPixel(w.b()) * w.widthPx() * scale / 2;
      f.triangle(w.a().plusTimes(a, across), w.b().plusTimes(b, across), w.b().plusTimes(-b, across), Vec3.Z, w.colour());
      f.triangle(w.a().plusTimes(a, across), w.b().plusTimes(-b, across), w.a().plusTimes(-a, across), Vec3.Z, w.colour());
    }
    plain(scratch.fill(f.data()), 0, 0);
  }

  // -- shadows ------------------------------------------------------------------------------------------------------

  /** A stone that throws a shadow; its shape is the same only if it is the very same one, which is quickly told. */
  private record Caster(List<Hull> lobes, Pose pose) {
    @Override
    public boolean equals(Object o) {
      return o instanceof Caster c && c.lobes == lobes && c.pose.equals(pose);
    }

    @Override
    public int hashCode() {
      return pose.hashCode();
    }
  }

  /** All that the shadows depend on: while it stays the same, so do they, from wherever one looks. */
  private static List<Object> casting(Tableau tableau, Looks looks) {
    List<Object> out = new ArrayList<>(List.of(looks.cut(), tableau.low(), tableau.high()));
    for (Stone s : tableau.stones()) {
      if (looks.faint().contains(s.name())) continue;
      out.add(new Caster(s.lobes(), s.pose()));
    }
    return out;
  }

  private void castShadows(Tableau tableau, Matrix4f fromLamp, Looks looks) {
    shadows.begin();
    glEnable(GL_DEPTH_TEST);
    glDepthFunc(GL_LEQUAL);
    glDepthMask(true);
    glDisable(GL_BLEND);
    // What is cut away throws no shadow.
    cut(looks, true);
    shadowProgram.use().set("viewProjection", fromLamp);
    for (Stone s : tableau.stones()) {
      if (looks.faint().contains(s.name())) continue;
      shadowProgram.set("place", matrix(s.pose()));
      mesh(s).draw();
    }
    cut(looks, false);
  }

  private static Matrix4f lampMatrix(Tableau t) {
    Vec3 middle = t.low().plus(t.high()).times(0.5);
    float r = (float) (t.high().minus(t.low()).norm() / 2);
    Vec3 eye = middle.plusTimes(2 * r, LAMP);
    return new Matrix4f().ortho(-r, r, -r, r, 0.5f * r, 3.5f * r).lookAt(
        vector(eye), vector(middle), new Vector3f(0, 1, 0));
  }

  // -- buffers ------------------------------------------------------------------------------------------------------

  private Mesh mesh(Stone s) {
    return stoneMeshes.computeIfAbsent(s.lobes(), l -> new Mesh(3, 3, 3).fill(StoneMesh.of(l, WEAR_M)));
  }

  private void forgetUnused(List<Stone> stones) {
    if (stoneMeshes.size() <= 2 * stones.size() + 8) return;
    Map<List<Hull>, Boolean> used = new IdentityHashMap<>();
    for (Stone s : stones) used.put(s.lobes(), true);
    for (Iterator<Map.Entry<List<Hull>, Mesh>> i = stoneMeshes.entrySet().iterator(); i.hasNext(); ) {
      Map.Entry<List<Hull>, Mesh> e = i.next();
      if (used.containsKey(e.getKey())) continue;
      e.getValue().close();
      i.remove();
    }
  }

  private static int kindNumber(Rock.Kind kind) {
    return switch (kind) {
      case DRY -> 0;
      case LIVE -> 1;
      case CAST -> 2;
    };
  }

  static Vector3f vector(Vec3 v) {
    return new Vector3f((float) v.x(), (float) v.y(), (float) v.z());
  }

  static Matrix4f matrix(Pose p) {
    Mat3 m = Mat3.of(p.turn());
    return new Matrix4f(
        (float) m.xx(), (float) m.yx(), (float) m.zx(), 0,
        (float) m.xy(), (float) m.yy(), (float) m.zy(), 0,
        (float) m.xz(), (float) m.yz(), (float) m.zz(), 0,
        (float) p.at().x(), (float) p.at().y(), (float) p.at().z(), 1);
  }

  @Override
  public void close() {
    new ArrayList<>(stoneMeshes.values()).forEach(Mesh::close);
    stoneMeshes.clear();
    tank.close();
    for (Program p : List.of(stoneProgram, plainProgram, skyProgram, shadowProgram)) p.close();
    skyMesh.close();
    scratch.close();
    shadows.close();
  }
}
