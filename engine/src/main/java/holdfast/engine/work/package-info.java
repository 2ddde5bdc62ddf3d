/**
 * Work shared out among threads, and given up once nobody wants it. What comes out never depends on the number of threads.
 */
package holdfast.engine.work;
