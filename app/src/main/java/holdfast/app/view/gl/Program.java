package holdfast.app.view.gl;

import static org.lwjgl.opengl.GL20.*;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import org.joml.Matrix4f;
import org.joml.Matrix4fc;
import org.joml.Vector3fc;

/** A shader program read from the two resource files {@code NAME.vert} and {@code NAME.frag}. */
public final class Program implements AutoCloseable {
  private static final String INCLUDE = "#include ";
  private final int id;
  private final Map<String, Integer> places = new HashMap<>();

  public Program(String name) {
    id = glCreateProgram();
    int v = compile(GL_VERTEX_SHADER, name + ".vert");
    int f = compile(GL_FRAGMENT_SHADER, name + ".frag");
    glAttachShader(id, v);
    glAttachShader(id, f);
    glLinkProgram(id);
    if (glGetProgrami(id, GL_LINK_STATUS) == 0) {
      throw new IllegalStateException("shader " + name + " does not link: " + glGetProgramInfoLog(id));
    }
    glDeleteShader(v);
    glDeleteShader(f);
  }

  private static int compile(int kind, String file) {
    int shader = glCreateShader(kind);
    glShaderSource(shader, "#version 330 core\n" + text(file));
    glCompileShader(shader);
    if (glGetShaderi(shader, GL_COMPILE_STATUS) == 0) {
      throw new IllegalStateException("shader " + file + " does not compile: " + glGetShaderInfoLog(shader));
    }
    return shader;
  }

  private static String text(String file) {
    StringBuilder out = new StringBuilder();
    try (InputStream in = Program.class.getResourceAsStream("/holdfast/app/view/" + file)) {
      if (in == null) throw new IllegalStateException("shader file missing: " + file);
      for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
        out.append(line.startsWith(INCLUDE) ? text(line.substring(INCLUDE.length()).trim()) : line).append('\n');
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private int place(String name) {
    return places.computeIfAbsent(name, n -> glGetUniformLocation(id, n));
  }

  public Program use() {
    glUseProgram(id);
    return this;
  }

  public Program set(String name, float value) {
    glUniform1f(place(name), value);
    return this;
  }

  public Program set(String name, int value) {
    glUniform1i(place(name), value);
    return this;
  }

  public Program set(String name, float x, float y) {
    glUniform2f(place(name), x, y);
    return this;
  }

  public Program set(String name, float x, float y, float z) {
    glUniform3f(place(name), x, y, z);
    return this;
  }

  public Program set(String name, float x, float y, float z, float w) {
    glUniform4f(place(name), x, y, z, w);
    return this;
  }

  public Program set(String name, Vector3fc v) {
    return set(name, v.x(), v.y(), v.z());
  }

  /** A colour as red, green, blue from 0 to 1, and how solid it is. */
  public Program set(String name, float[] rgba) {
    return rgba.length == 3 ? set(name, rgba[0], rgba[1], rgba[2]) : set(name, rgba[0], rgba[1], rgba[2], rgba[3]);
  }

  public Program set(String name, Matrix4fc m) {
    glUniformMatrix4fv(place(name), false, new Matrix4f(m).get(new float[16]));
    return this;
  }

  @Override
  public void close() {
    glDeleteProgram(id);
  }
}
