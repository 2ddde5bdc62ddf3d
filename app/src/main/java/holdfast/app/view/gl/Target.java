package holdfast.app.view.gl;

import static org.lwjgl.opengl.GL30.*;

import java.nio.ByteBuffer;
import org.lwjgl.system.MemoryUtil;

/**
 * A picture to draw into, with depth. With several samples a pixel it is smoothed, and {@link #resolve} averages them;
 * with one it is what it is.
 */
public final class Target implements AutoCloseable {
  private final int width;
  private final int height;
  private final int samples;
  private final int drawn;
  private final int colour;
  private final int depth;
  private final int resolved;
  private final int texture;

  public Target(int width, int height, int wantedSamples) {
    this.width = width;
    this.height = height;
    samples = Math.min(wantedSamples, glGetInteger(GL_MAX_SAMPLES));
    boolean smooth = samples > 1;
    resolved = glGenFramebuffers();
    glBindFramebuffer(GL_FRAMEBUFFER, resolved);
    texture = glGenTextures();
    glBindTexture(GL_TEXTURE_2D, texture);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, (ByteBuffer) null);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, texture, 0);
    depth = glGenRenderbuffers();
    glBindRenderbuffer(GL_RENDERBUFFER, depth);
    if (smooth) {
      require();
      drawn = glGenFramebuffers();
      glBindFramebuffer(GL_FRAMEBUFFER, drawn);
      colour = glGenRenderbuffers();
      glBindRenderbuffer(GL_RENDERBUFFER, colour);
      glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, GL_RGBA8, width, height);
      glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, colour);
      glBindRenderbuffer(GL_RENDERBUFFER, depth);
      glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, GL_DEPTH24_STENCIL8, width, height);
    } else {
      drawn = resolved;
      colour = 0;
      glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH24_STENCIL8, width, height);
    }
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_STENCIL_ATTACHMENT, GL_RENDERBUFFER, depth);
    require();
  }

  private static void require() {
    int status = glCheckFramebufferStatus(GL_FRAMEBUFFER);
    if (status != GL_FRAMEBUFFER_COMPLETE) throw new IllegalStateException("framebuffer is not complete: " + status);
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  /** From here on everything is drawn into this picture. */
  public void bind() {
    glBindFramebuffer(GL_FRAMEBUFFER, drawn);
    glViewport(0, 0, width, height);
  }

  /** Averages the samples. */
  public void resolve() {
    if (drawn != resolved) copy(drawn, resolved, 0, 0);
    glBindFramebuffer(GL_FRAMEBUFFER, resolved);
  }

  /** Copies the resolved picture into another one of one sample; {@code x}, {@code y} from that one's bottom left. */
  public void copyInto(Target other, int x, int y) {
    copy(resolved, other.drawn, x, y);
  }

  /** Copies the resolved picture into the window's own buffer. */
  public void show() {
    copy(resolved, 0, 0, 0);
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
  }

  private void copy(int from, int to, int x, int y) {
    glBindFramebuffer(GL_READ_FRAMEBUFFER, from);
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, to);
    glDisable(GL_SCISSOR_TEST);
    glBlitFramebuffer(0, 0, width, height, x, y, x + width, y + height, GL_COLOR_BUFFER_BIT, GL_NEAREST);
  }

  /** The resolved picture, top row first, one int a pixel as 0xRRGGBB. */
  public int[] read() {
    glBindFramebuffer(GL_FRAMEBUFFER, resolved);
    ByteBuffer bytes = MemoryUtil.memAlloc(width * height * 4);
    try {
      glPixelStorei(GL_PACK_ALIGNMENT, 1);
      glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE, bytes);
      int[] out = new int[width * height];
      for (int y = 0; y < height; y++) {
        for (int x = 0; x < width; x++) {
          int at = 4 * ((height - 1 - y) * width + x);
          out[y * width + x] = (bytes.get(at) & 255) << 16 | (bytes.get(at + 1) & 255) << 8 | bytes.get(at + 2) & 255;
        }
      }
      return out;
    } finally {
      MemoryUtil.memFree(bytes);
    }
  }

  @Override
  public void close() {
    if (drawn != resolved) {
      glDeleteFramebuffers(drawn);
      glDeleteRenderbuffers(colour);
    }
    glDeleteFramebuffers(resolved);
    glDeleteTextures(texture);
    glDeleteRenderbuffers(depth);
  }
}
