package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Money;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A document about to be posted. Its entries balance, or it cannot be made; a document that only moves stock has none.
 *
 * @param  serviceDate the day it is about; the posting date follows from it and the open periods
 * @param  fingerprint of the command that made it
 */
public record NewDocument(
        DocumentId id,
        DocumentType type,
        LocalDate serviceDate,
        @Nullable DocumentId reverses,
        String summary,
        UserId by,
        Fingerprint fingerprint,
        List<Entry> entries) {
    public NewDocument {
        summary = Texts.required("summary", summary, 500);
        entries = List.copyOf(entries);
        if (type == DocumentType.PERIOD_CLOSE && !entries.isEmpty()) {
            throw new LedgerRefusal.CloseMovesMoney();
        }
        requireBalance(entries.stream().filter(e -> !isMemorandum(e)).toList());
        requireBalance(entries.stream().filter(NewDocument::isMemorandum).toList());
    }

    public static NewDocument of(
            DocumentId id,
            DocumentType type,
            LocalDate serviceDate,
            String summary,
            UserId by,
            Fingerprint fingerprint,
            List<Entry> entries) {
        return new NewDocument(id, type, serviceDate, null, summary, by, fingerprint, entries);
    }

    private static boolean isMemorandum(Entry entry) {
        return entry.account() == AccountRole.NO_CHARGE_GIVEN || entry.account() == AccountRole.NO_CHARGE_CONTRA;
    }

    private static void requireBalance(List<Entry> entries) {
        if (!entries.isEmpty()) {
            Money sum = Money.sum(
                    entries.getFirst().amount().currency(),
                    entries.stream().map(Entry::amount).toList());
            if (!sum.isZero()) {
                throw new LedgerRefusal.OutOfBalance(sum.toString());
            }
        }
    }
}
