package holdfast.app.view.gl;

import static org.lwjgl.opengl.GL30.*;

import java.util.stream.IntStream;

/** Triangles on the graphics side: corners one after the other, each a fixed run of floats. */
public final class Mesh implements AutoCloseable {
  private final int array;
  private final int buffer;
  private final int stride;
  private int count;

  /** A mesh whose corners carry attributes of these many floats each, at locations 0, 1, 2 and so on. */
  public Mesh(int... widths) {
    stride = IntStream.of(widths).sum();
    array = glGenVertexArrays();
    buffer = glGenBuffers();
    glBindVertexArray(array);
    glBindBuffer(GL_ARRAY_BUFFER, buffer);
    int at = 0;
    for (int i = 0; i < widths.length; i++) {
      glEnableVertexAttribArray(i);
      glVertexAttribPointer(i, widths[i], GL_FLOAT, false, stride * Float.BYTES, (long) at * Float.BYTES);
      at += widths[i];
    }
  }

  /** Replaces what it holds. */
  public Mesh fill(Floats data) {
    glBindBuffer(GL_ARRAY_BUFFER, buffer);
    glBufferData(GL_ARRAY_BUFFER, data.toArray(), GL_DYNAMIC_DRAW);
    count = data.size() / stride;
    return this;
  }

  public void draw() {
    draw(0, count);
  }

  /** Draws {@code number} corners from {@code first} on. */
  public void draw(int first, int number) {
    if (number == 0) return;
    glBindVertexArray(array);
    glDrawArrays(GL_TRIANGLES, first, number);
  }

  @Override
  public void close() {
    glDeleteBuffers(buffer);
    glDeleteVertexArrays(array);
  }
}
