/**
 * What is due for the company, of whatever module: everything that can be forgotten is a row of one query, and what somebody
 * has put aside until a day is left out until then. Reads other modules' tables, through a function of the database alone, and
 * changes none of them.
 */
@NullMarked
package eaveside.worklist;

import org.jspecify.annotations.NullMarked;
