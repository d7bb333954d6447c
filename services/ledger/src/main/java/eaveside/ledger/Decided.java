package eaveside.ledger;

import eaveside.kernel.DocumentId;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** What a module decided to post: what the document says, what it rests on, and what else follows from it. */
public final class Decided {
    /** Something that a document rests on, in words such as {@code the count}, and the day that it counts on. */
    record Basis(String what, LocalDate date) {}

    final DocumentType type;
    final String summary;
    final List<Entry> entries;
    final List<Basis> bases = new ArrayList<>();
    final List<Consumer<Posted>> then = new ArrayList<>();

    @Nullable
    DocumentId reverses;

    @Nullable
    LocalDate notBefore;

    @Nullable
    Object subject;

    boolean onItsDate;

    private Decided(DocumentType type, String summary, List<Entry> entries) {
        this.type = type;
        this.summary = summary;
        this.entries = List.copyOf(entries);
    }

    /** A document that says this. It has no entries where it moves nothing but stock. */
    public static Decided document(DocumentType type, String summary, List<Entry> entries) {
        return new Decided(type, summary, entries);
    }

    /** The document that this one takes back in full. */
    Decided reversing(DocumentId original) {
        reverses = original;
        return this;
    }

    /** The document bears its date on paper: it is refused where it cannot be posted on that day. */
    public Decided onItsDate() {
        onItsDate = true;
        return this;
    }

    /** The document is posted on that day or later, whatever day it is about: what it rests on counts from then. */
    public Decided notPostedBefore(LocalDate day) {
        notBefore = day;
        return this;
    }

    /**
     * What the document rests on: a day of the document before that is refused ({@link LedgerRefusal.BeforeBasis}).
     *
     * @param what in words, such as {@code invoice 12}
     */
    public Decided restingOn(String what, LocalDate date) {
        bases.add(new Basis(what, date));
        return this;
    }

    /** What the audit log says that it was done to; the document itself where nothing is said. */
    public Decided about(Object subject) {
        this.subject = subject;
        return this;
    }

    /** What else is written once the document has its number. */
    public Decided then(Consumer<Posted> next) {
        then.add(next);
        return this;
    }
}
