/**
 * What the company sells: service lines (what the owner wants to know the margin of) and, under each, the services
 * that a quote, a visit and an invoice list, with their unit, standard minutes and consumables, tax code and cautions.
 * All of it is data: a company adds gutters or facades without a release.
 *
 * <p>Tax is the owner's setting, dated, never a constant of the program: whether a cleaning service is taxable differs
 * by place and by surface, and is to be confirmed locally ({@link eaveside.catalog.SetTax}). Nothing here knows a
 * price: those live in price books.
 */
@NullMarked
package eaveside.catalog;

import org.jspecify.annotations.NullMarked;
