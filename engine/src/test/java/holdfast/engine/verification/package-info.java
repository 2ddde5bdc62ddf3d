/**
 * What the engine is held against from outside: every known figure as a {@link holdfast.engine.verification.Row}, judged
 * by a test and printed in {@code engine/VERIFICATION.md}. {@code Blocks} and {@code Fixtures} build the cases from their
 * few dimensions; each {@code ...Rows} class states a family of cases with its sources.
 */
package holdfast.engine.verification;
