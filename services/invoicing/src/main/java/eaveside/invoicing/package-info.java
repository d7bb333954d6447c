/**
 * From work done to money received.
 *
 * <p>A draft ({@link eaveside.invoicing.DraftInvoice}) is written freely or made from a visit at the visit's prices, and
 * may be edited until it is issued ({@link eaveside.invoicing.IssueInvoice}): then it gets its number and date, posts to
 * the ledger, and never changes. A wrong invoice is credited in full, once ({@link eaveside.invoicing.CreditInvoice}), and
 * written again. Payments settle invoices; what no invoice takes stays with the customer as credit
 * ({@link eaveside.invoicing.RecordPayment}, {@link eaveside.invoicing.ApplyCredit}). All amounts follow
 * {@link eaveside.invoicing.InvoiceArithmetic}, after EN 16931.
 */
@NullMarked
package eaveside.invoicing;

import org.jspecify.annotations.NullMarked;
