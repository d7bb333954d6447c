package eaveside.invoicing;

import eaveside.access.RecordAudit;
import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.customers.ReadSurfaces;
import eaveside.invoicing.internal.BilledVisits;
import eaveside.invoicing.internal.DraftRow;
import eaveside.invoicing.internal.Drafts;
import eaveside.invoicing.internal.InvoicingQueries;
import eaveside.kernel.FindingId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Shared;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.pricing.ExplanationText;
import eaveside.pricing.PriceWork;
import eaveside.pricing.PricedWork;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.BillableLine;
import eaveside.visits.BillableVisit;
import eaveside.visits.BillableVisit.Billable;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Drafts the invoice of a done visit: quoted units at their quoted price, extras from the visit's price book (or the one
 * in force on its day), top-ups to minimums as charges, and no-charge work with its value taken off again. A return visit
 * is not topped up to a minimum that the visits before it have borne.
 */
@Shared
public class BillVisit {
    private final Drafts drafts;
    private final InvoicingQueries queries;
    private final BillableVisit billableVisit;
    private final PriceWork priceWork;
    private final ReadPriceBooks priceBooks;
    private final ReadQuotes readQuotes;
    private final Catalog catalog;
    private final ReadSurfaces surfaces;
    private final Books books;
    private final BilledVisits billedVisits;
    private final RecordAudit audit;

    @Inject
    public BillVisit(
            Drafts drafts,
            InvoicingQueries queries,
            BillableVisit billableVisit,
            PriceWork priceWork,
            ReadPriceBooks priceBooks,
            ReadQuotes readQuotes,
            Catalog catalog,
            ReadSurfaces surfaces,
            Books books,
            BilledVisits billedVisits,
            RecordAudit audit) {
        this.drafts = drafts;
        this.queries = queries;
        this.billableVisit = billableVisit;
        this.priceWork = priceWork;
        this.priceBooks = priceBooks;
        this.readQuotes = readQuotes;
        this.catalog = catalog;
        this.surfaces = surfaces;
        this.books = books;
        this.billedVisits = billedVisits;
        this.audit = audit;
    }

    /** @param  id made by the client; the invoice keeps it */
    public record Bill(InvoiceId id, VisitId visit, UserId by) {}

    /**
     * The same again is a retry. Refuses a visit that is not completed, is billed, is on another draft, has a scope change
     * that is not decided, nothing to bill, or what the books cannot hold ({@link InvoiceTotals#held}).
     */
    @Transactional
    public InvoiceDraft draft(Bill bill) {
        Fingerprint fingerprint = Fingerprint.of(bill);
        DraftRow before = drafts.turn(bill.id());
        if (before != null) {
            if (!before.hasFingerprint(fingerprint)) {
                throw new KernelRefusal.IdTaken("invoice draft", bill.id(), "of other content");
            }
            return drafts.load(before);
        }
        drafts.requireNew(bill.id(), 0);
        billedVisits.lock(bill.visit());
        queries.draftsOfVisit(bill.visit()).stream().findFirst().ifPresent(other -> {
            throw new InvoiceRefusal.VisitDrafted(other.id().toString());
        });
        Billable visit = billableVisit.of(bill.visit());
        if (visit.lines().isEmpty()) {
            throw new InvoiceRefusal.NothingToBill();
        }
        Map<InvoiceLineId, LineOrigin> origins = new LinkedHashMap<>();
        Draft draft = new Draft(
                bill.id(), 0, visit.customer(), visit.date(), "", "", lines(visit, origins), List.of(), null, null);
        audit.done("invoice.from-visit", bill.by(), bill.id());
        return drafts.make(draft, visit, origins, bill.by(), fingerprint);
    }

    private List<DraftLine> lines(Billable visit, Map<InvoiceLineId, LineOrigin> origins) {
        PriceBookId pinned = visit.priceBook();
        PriceBookId book = pinned == null ? priceBooks.inForce(visit.date()).id() : pinned;
        List<PricedWork.Line> priced = priceWork
                .priceDone(book, visit.lines().stream().map(BillVisit::done).toList(), visit.borne())
                .lines();
        QuoteId quote = visit.quote();
        FindingId finding = quote == null ? null : readQuotes.quote(quote).cameFrom();
        Locale locale = Locale.of("en", books.company().address().country());
        List<DraftLine> lines = new ArrayList<>();
        for (int i = 0; i < priced.size(); i++) {
            BillableLine work = visit.lines().get(i);
            DraftLine line = line(work, priced.get(i));
            lines.add(line);
            origins.put(
                    line.id(),
                    new LineOrigin(
                            work.line(),
                            work.quoteLine() == null ? null : finding,
                            work.noCharge(),
                            ExplanationText.of(priced.get(i).explanation(), locale)));
        }
        return lines;
    }

    private static PriceWork.DoneLine done(BillableLine line) {
        return new PriceWork.DoneLine(
                line.line(), line.serviceItem(), line.quantity(), line.surface(), line.quoteLine(), line.noCharge());
    }

    private DraftLine line(BillableLine work, PricedWork.Line priced) {
        ServiceItem serviceItem = catalog.serviceItem(work.serviceItem());
        return new DraftLine(
                InvoiceLineId.next(),
                priced.serviceLine(),
                description(serviceItem, work.surface()),
                work.quantity(),
                ItemPrice.of(priced.unitPrice()),
                priced.topUp().isPositive()
                        ? List.of(Adjustment.charge(priced.topUp(), "Share of the minimum charge"))
                        : List.of(),
                serviceItem.taxCode());
    }

    private String description(ServiceItem serviceItem, @Nullable SurfaceId surface) {
        return surface == null
                ? serviceItem.name()
                : serviceItem.name() + ", " + surfaces.surface(surface).name();
    }
}
