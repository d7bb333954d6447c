/**
 * What work costs the customer, and why.
 *
 * <p>A price book starts as a draft that the owner edits ({@link eaveside.pricing.SavePriceBook}) and is published once
 * ({@link eaveside.pricing.PublishPriceBook}); from then on it never changes, and prices change by publishing another
 * book. One pure engine prices every piece of work ({@link eaveside.pricing.PriceWork}): the book's price at the step
 * that the visit's quantity reaches, surcharges by what the surface is like, the reduction where several services share
 * the visit, and what is missing to the line's and the visit's minimum. Every price carries the reasons that made it
 * ({@link eaveside.pricing.Explanation}), whose figures add up to it, and reads as one sentence
 * ({@link eaveside.pricing.ExplanationText}).
 *
 * <p>A quote ({@link eaveside.pricing.DraftQuote}) pins the book that it was priced from and keeps, beside its prices, the
 * minutes and the cost that the company expects. It is revised, sent, and then accepted or declined; after that it never
 * changes.
 */
@NullMarked
package eaveside.pricing;

import org.jspecify.annotations.NullMarked;
