/**
 * The demo company: an invented firm in an invented town with three months of history that ends today. Nothing is
 * inserted; every customer, sheet and invoice comes about by the use cases that a user would have called, on the day on
 * which it would have been called, driven by a seeded generator. So its books are as true as any, and prove it.
 *
 * <p>{@link LoadDemoCompany} founds the company and then works through an {@link Agenda}: events that lie in the future
 * of the real clock never come about, which is what leaves work planned, money owed and findings open.
 */
@NullMarked
package eaveside.demo;

import org.jspecify.annotations.NullMarked;
