/** Lays papers out as rows of their templates; closed to other modules. */
@NullMarked
package eaveside.reports.internal;

import org.jspecify.annotations.NullMarked;
