/**
 * Visits: what was planned, what was done on the day, and what became of the scope changes.
 *
 * <p>The office schedules a visit, from an accepted quote or freely ({@link eaveside.visits.ScheduleVisit}), moves it for rain
 * ({@link eaveside.visits.RescheduleVisit}) or cancels it. A technician of its crew signs off its sheet ({@link
 * eaveside.visits.SignOffVisit}): in one transaction the stock used leaves the van at its lots' cost, the visit's whole
 * cost becomes work in progress by service line, findings are opened, surfaces corrected, and whatever was skipped or done
 * beyond the plan becomes a scope change for the office to decide ({@link eaveside.visits.DecideScopeChange}). The visit is then
 * completed and not billed until an invoice takes it ({@link eaveside.visits.BillableVisit}, {@link
 * eaveside.visits.MarkBilled}) or it is closed without one ({@link eaveside.visits.CloseWithoutBilling}). A wrong sheet is
 * reversed in full ({@link eaveside.visits.ReverseJobSheet}) and entered again. What was sent as a sheet and did not
 * become the visit's is kept for the office to read ({@link eaveside.visits.RecordSentSheet}, {@link
 * eaveside.visits.AcknowledgeSentSheet}).
 *
 * <p>Locks are taken in this order: the visit, the period, lots by id, number counters.
 */
@NullMarked
package eaveside.visits;

import org.jspecify.annotations.NullMarked;
