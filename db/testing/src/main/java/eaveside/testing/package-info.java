/**
 * What database tests stand on: a real PostgreSQL, a migrated database cloned for each test class, and a small bench
 * that runs the use cases in real transactions without a server.
 */
@NullMarked
package eaveside.testing;

import org.jspecify.annotations.NullMarked;
