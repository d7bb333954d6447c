package eaveside.worklist;

/** What sort of thing is due; also the order in which they are shown. */
public enum DueType {
    /** Sent from a site, and not the visit's job sheet: may be urgent. */
    SHEET,
    /** A technician's note on the job sheet of a visit that is not billed. */
    NOTE,
    /** A completed visit with scope changes to decide. */
    DECIDE,
    /** A completed visit that can be billed. */
    BILL,
    /** An invoice that is drafted and not issued. */
    DRAFT,
    /** An invoice past due. */
    PAST_DUE,
    /** A quote that is accepted and that no visit carries out. */
    ACCEPTED,
    /** Skipped work that is to be done on a return visit. */
    RETURN,
    /** A visit whose day has passed without a signed job sheet. */
    LATE,
    /** A quote that is a draft, has had no answer for a week, or runs out within three days. */
    QUOTE,
    /** A finding that is open. */
    FINDING,
    /** An item of which a location holds less than its reorder point. */
    STOCK
}
