/** Tables of the findings, their queries, and the taking in of pictures; closed to other modules. */
@NullMarked
package eaveside.findings.internal;

import org.jspecify.annotations.NullMarked;
