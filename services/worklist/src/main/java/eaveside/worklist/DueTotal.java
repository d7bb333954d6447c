package eaveside.worklist;

import eaveside.kernel.Money;

/**
 * How much of a type is due.
 *
 * @param  amount of those whose value is known, in sales value
 */
public record DueTotal(long count, Money amount) {}
