/** What the engine found, written for people as text and for programs as JSON, in the units that they ask for. */
package holdfast.app.report;
