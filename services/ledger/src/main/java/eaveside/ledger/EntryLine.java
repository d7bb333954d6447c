package eaveside.ledger;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** An entry with its document. */
public record EntryLine(
        DocumentId document,
        DocumentType type,
        long number,
        LocalDate postingDate,
        int line,
        AccountCode account,
        String accountName,
        Money amount,
        @Nullable ServiceLineId serviceLine,
        @Nullable VisitId visit,
        @Nullable CustomerId customer,
        @Nullable CostType costType,
        @Nullable FindingId finding,
        String note) {}
