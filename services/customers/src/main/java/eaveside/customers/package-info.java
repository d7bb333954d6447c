/**
 * Who the company works for, and on what: customers, their contacts, their sites, and the surfaces of each site with
 * everything that changes the price or the minutes of a clean.
 *
 * <p>A surface is corrected where it was miscounted ({@link eaveside.customers.CorrectSurface}, called by the visit
 * sheet); each change of its extent stays readable with who, when and on which visit. Edits are versioned: whoever
 * saves second is refused with both versions to compare ({@link eaveside.customers.CustomersRefusal.EditedMeanwhile}).
 * The limits that manufacturers of solar panels set for washing are kept per manufacturer, as the office reads them in the
 * installation manual. Whole customer lists come in from one CSV file, all or nothing
 * ({@link eaveside.customers.ImportCustomers}).
 */
@NullMarked
package eaveside.customers;

import org.jspecify.annotations.NullMarked;
