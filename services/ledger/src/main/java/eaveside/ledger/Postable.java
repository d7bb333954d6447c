package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Id;
import eaveside.kernel.UserId;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A command that becomes a posted document. Its whole content, who sends it included, tells a retry from a clash. */
public interface Postable {
    /** Of the document, made by the client, so that sending again changes nothing. */
    Id id();

    default DocumentId document() {
        return new DocumentId(id().value());
    }

    /**
     * The day that the document is about. Null where the sender names none and today is meant: then the same command is the
     * same also after midnight.
     */
    @Nullable
    LocalDate date();

    /** What the command calls that day, for refusals. */
    default String dateField() {
        return "date";
    }

    UserId by();

    /** Documents that are posted along with it, under ids of the sender's. */
    default List<DocumentId> alongWith() {
        return List.of();
    }
}
