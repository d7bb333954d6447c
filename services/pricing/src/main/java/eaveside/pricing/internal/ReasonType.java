package eaveside.pricing.internal;

/** How the table tells reasons apart. */
enum ReasonType {
    FROM_BOOK,
    SURCHARGED,
    SHARED_VISIT,
    TO_LINE_MINIMUM,
    TO_VISIT_MINIMUM
}
