package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.UserId;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A command that ends in a posted document; always a record, whose content tells a retry from a clash. */
public interface Postable {
    /** The document's id, made by whoever sends the command. */
    DocumentId document();

    /** The day that the document is about; null for today, whatever day it is when the command comes again. */
    @Nullable
    LocalDate date();

    UserId by();
}
