/**
 * The database: its migrations, its two roles and the proofs that the books in it are true. Left of every module, so
 * that each can be tested on the real schema and prove its books at the end of a test.
 */
@NullMarked
package eaveside.schema;

import org.jspecify.annotations.NullMarked;
