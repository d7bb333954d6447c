/** The search that stands on every page of office and owner: one field for everything that has a name or a number. */
@NullMarked
package eaveside.web.search;

import org.jspecify.annotations.NullMarked;
