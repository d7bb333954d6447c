package eaveside.ledger;

import eaveside.kernel.DocumentId;
import java.time.LocalDate;

/** A posted document: its number in its series and the day that it counts on in the books. */
public record Posted(DocumentId id, DocumentType type, long number, LocalDate postingDate) {}
