/**
 * How rocks move: a rough sketch settled onto real contacts, a bump played out in the tank or in a section, a fall and
 * where it lands. Pictures and landing energies come from here, <em>never the verdict</em>: rigid-body engines tip a
 * stack of six some three degrees early and creep just under the friction angle, so thresholds belong to the statics.
 *
 * <p>The tour. {@link holdfast.engine.motion.MotionWorld} is all that the package asks of a rigid-body engine;
 * {@link holdfast.engine.motion.MotionWorlds} opens one, or says why it cannot. {@link holdfast.engine.motion.Settle}
 * separates overlaps, lets rocks down in such a world, and then polishes the heap in double precision
 * ({@link holdfast.engine.motion.Polish}) on the contact features that {@link holdfast.engine.motion.LobeGap} finds;
 * {@link holdfast.engine.motion.Drop} and {@link holdfast.engine.motion.SteadyRest} use it for one rock.
 * {@link holdfast.engine.motion.Bump} plays a {@link holdfast.engine.motion.Disturbance} in water
 * ({@link holdfast.engine.motion.WaterModel}) with bonds that break ({@link holdfast.engine.motion.MotionBond}),
 * {@link holdfast.engine.motion.LeastBlow} searches the blow that topples, {@link holdfast.engine.motion.SectionBump} plays it in
 * a vertical section in two dimensions, and {@link holdfast.engine.motion.SlowPush} holds the engine against the statics.
 */
package holdfast.engine.motion;
