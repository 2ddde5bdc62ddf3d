package holdfast.app.view.gl;

import java.util.Arrays;

/** A growing row of floats, for vertex data. */
public final class Floats {
  private float[] data = new float[1024];
  private int size;

  public Floats add(float... values) {
    if (size + values.length > data.length) data = Arrays.copyOf(data, Math.max(data.length * 2, size + values.length));
    System.arraycopy(values, 0, data, size, values.length);
    size += values.length;
    return this;
  }

  public int size() {
    return size;
  }

  public void clear() {
    size = 0;
  }

  public float[] toArray() {
    return Arrays.copyOf(data, size);
  }
}
