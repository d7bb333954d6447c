/** The first page of office and owner: one list of everything that waits for the company. */
@NullMarked
package eaveside.web.worklist;

import org.jspecify.annotations.NullMarked;
