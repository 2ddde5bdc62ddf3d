/**
 * The one entry point: {@link holdfast.engine.check.Check#run} takes a scene and its shapes through all the engine's
 * questions and returns a {@link holdfast.engine.check.CheckReport} of {@link holdfast.engine.check.Finding}s.
 *
 * <p>{@code HeapStudy} asks the statics; {@code StandingFindings}, {@code PushFindings}, {@code SupportStudy},
 * {@code RoomFindings}, {@code PaneStudy}, {@code HandlingFindings}, {@code LiftFindings} and {@code BondingFindings} each
 * turn one kind of answer into findings. To add a finding: a {@link holdfast.engine.check.Code}, a {@code Draft} in the class
 * of its kind, a test with a figure from outside.
 */
package holdfast.engine.check;
