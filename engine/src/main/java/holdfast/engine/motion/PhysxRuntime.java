package holdfast.engine.motion;

import java.util.function.Function;
import physx.PxTopLevelFunctions;
import physx.common.PxDefaultAllocator;
import physx.common.PxErrorCallbackImpl;
import physx.common.PxErrorCodeEnum;
import physx.common.PxFoundation;
import physx.common.PxTolerancesScale;
import physx.cooking.PxCookingParams;
import physx.physics.PxPhysics;

/**
 * The engine's process-wide part, loaded once and kept until the program ends (the native library admits one foundation
 * per process).
 */
final class PhysxRuntime {
  /** Loading happens when this class is first touched, under the class loader's lock. */
  private static final class Holder {
    static final Loaded LOADED = load();
  }

  /** The runtime, or the sentence that says why there is none. */
  record Loaded(PhysxRuntime runtime, String reason) {
    <T> T match(Function<PhysxRuntime, T> ready, Function<String, T> unavailable) {
      return runtime != null ? ready.apply(runtime) : unavailable.apply(reason);
    }
  }

  /** Takes the engine's messages; the library itself writes nothing to the console. */
  private static final class Messages extends PxErrorCallbackImpl {
    private volatile String last = "";

    @Override
    public void reportError(PxErrorCodeEnum code, String message, String file, int line) {
      last = code + ": " + message;
    }
  }

  final PxPhysics physics;
  final PxTolerancesScale scale;
  final PxCookingParams cooking;
  private final Messages messages;
  // Held so that the garbage collector leaves what native code points to.
  private final PxDefaultAllocator allocator;
  private final PxFoundation foundation;

  private PhysxRuntime() {
    allocator = new PxDefaultAllocator();
    messages = new Messages();
    foundation = PxTopLevelFunctions.CreateFoundation(PxTopLevelFunctions.getPHYSICS_VERSION(), allocator, messages);
    scale = new PxTolerancesScale();
    physics = PxTopLevelFunctions.CreatePhysics(PxTopLevelFunctions.getPHYSICS_VERSION(), foundation, scale);
    PxTopLevelFunctions.InitExtensions(physics);
    cooking = new PxCookingParams(scale);
    cooking.setPlaneTolerance(Tolerances.COOKING_PLANE);
  }

  static Loaded get() {
    return Holder.LOADED;
  }

  /** The engine's last message, for an error of ours. */
  String lastMessage() {
    return messages.last;
  }

  private static Loaded load() {
    try {
      return new Loaded(new PhysxRuntime(), "");
    } catch (LinkageError | RuntimeException e) {
      Throwable cause = e;
      while (cause.getCause() != null) cause = cause.getCause();
      return new Loaded(null, "the motion engine's native library could not be loaded on "
          + System.getProperty("os.name") + " " + System.getProperty("os.arch") + ": " + cause.getMessage());
    }
  }
}
