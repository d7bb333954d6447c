/** Tables of the visits, the decisions taken on them and their queries; closed to other modules. */
@NullMarked
package eaveside.visits.internal;

import org.jspecify.annotations.NullMarked;
