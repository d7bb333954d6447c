/** The pricing engine, the tables of books and quotes and their queries; closed to other modules. */
@NullMarked
package eaveside.pricing.internal;

import org.jspecify.annotations.NullMarked;
