/**
 * The company's papers: invoice, quote, notice of findings and margin report.
 *
 * <p>Each is a plain record ({@link eaveside.reports.InvoicePaper} and its like) that a caller fills from other modules;
 * {@link eaveside.reports.Papers} sets it as PDF, or as XLSX where figures go on to a spreadsheet. A paper computes
 * nothing: its figures are the caller's, and a record whose figures contradict one another cannot be made. The templates
 * ({@code src/main/jrxml}) are compiled by the build.
 */
@NullMarked
package eaveside.reports;

import org.jspecify.annotations.NullMarked;
