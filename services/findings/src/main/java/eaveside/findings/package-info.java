/**
 * What was noticed on site: a cracked panel, a loose clamp, a nest.
 *
 * <p>A technician's photos come in one at a time while the sheet is still open ({@link eaveside.findings.StorePhoto});
 * signing the sheet off opens the findings in the same transaction ({@link eaveside.findings.OpenFinding}). The office
 * then acts on each, as often as needed, until it is closed ({@link eaveside.findings.ActOnFinding}): with a notice to
 * the customer, a note of further work, or a referral to a licensed trade. Reversing a sheet withdraws its findings
 * ({@link eaveside.findings.WithdrawFindings}); they and the actions on them stay readable. Types and severities are data.
 */
@NullMarked
package eaveside.findings;

import org.jspecify.annotations.NullMarked;
