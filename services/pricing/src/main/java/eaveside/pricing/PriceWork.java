package eaveside.pricing;

import eaveside.catalog.Catalog;
import eaveside.catalog.CatalogRefusal;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardMinutes;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Check;
import eaveside.kernel.Elements;
import eaveside.kernel.Id;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.Refusal;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UnitPrice;
import eaveside.ledger.Books;
import eaveside.pricing.internal.PricingEngine;
import eaveside.pricing.internal.PricingQueries;
import eaveside.pricing.internal.QuoteLineRow;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Prices the work of one visit from a published price book; stores nothing. */
@Shared
public class PriceWork {
    private final ReadPriceBooks priceBooks;
    private final Catalog catalog;
    private final ReadSurfaces surfaces;
    private final PricingQueries queries;
    private final Books books;

    @Inject
    public PriceWork(
            ReadPriceBooks priceBooks, Catalog catalog, ReadSurfaces surfaces, PricingQueries queries, Books books) {
        this.priceBooks = priceBooks;
        this.catalog = catalog;
        this.surfaces = surfaces;
        this.queries = queries;
        this.books = books;
    }

    /**
     * Work that was done and is to be billed.
     *
     * @param  surface   where it was done; its attributes as they are now decide the surcharges of what was not quoted
     * @param  quoteLine the quoted line that it belongs to, whose unit price is then kept; null for an extra
     * @param  noCharge  not billed: see {@link WorkLine}
     */
    public record DoneLine(
            Id key,
            ServiceItemId serviceItem,
            Quantity quantity,
            @Nullable SurfaceId surface,
            @Nullable QuoteLineId quoteLine,
            boolean noCharge) {}

    /**
     * The lines priced, in their order. Refuses an unknown or unpublished book, a service without a price in it (unless
     * its price is fixed), and no work at all.
     */
    @Transactional
    public PricedWork price(PriceBookId book, List<WorkLine> lines) {
        return price(priceBooks.book(book).list(), lines);
    }

    /**
     * A question for prices.
     *
     * @param  book   null for the one in force on the date
     * @param  date   null for today
     */
    public record Request(
            @Nullable PriceBookId book, @Nullable LocalDate date, List<Line> lines) {
        public Request {
            lines = List.copyOf(lines);
        }

        /**
         * Work in question.
         *
         * @param  surface    whose attributes decide the surcharges; null to name them, or for none
         * @param  attributes such as story 2; they count only where no surface is named
         */
        public record Line(
                ServiceItemId serviceItem,
                Quantity quantity,
                @Nullable SurfaceId surface,
                Map<SurfaceAttribute, Integer> attributes) {
            public Line {
                Check check = new Check();
                check.that(quantity.isPositive(), () -> new KernelRefusal.NotPositive("quantity"));
                attributes = Map.copyOf(attributes);
                attributes.forEach((attribute, value) ->
                        check.between(attribute.name(), value, attribute.lowest(), attribute.highest()));
                check.done();
            }
        }
    }

    /** Prices with the book that they are from. */
    public record Answer(PriceBookId book, PricedWork work) {}

    /**
     * Prices work that is only asked about. Refuses what {@link #price} refuses, an unknown surface, a quantity in a unit
     * that the service is not counted in, and what the books cannot hold ({@link PricedWork#held}).
     */
    @Transactional
    public Answer answer(Request request) {
        PriceBook book = request.book() == null ? inForce(request.date()) : priceBooks.book(request.book());
        List<WorkLine> work = new ArrayList<>();
        Elements.each("lines", request.lines(), (line, i) -> {
            requireUnit(line);
            work.add(new WorkLine(
                    QuoteLineId.next(),
                    line.serviceItem(),
                    line.quantity(),
                    line.surface() == null ? line.attributes() : attributes(line.surface()),
                    null));
        });
        return new Answer(book.id(), price(book.list(), work).held());
    }

    private PriceBook inForce(@Nullable LocalDate date) {
        return date == null
                ? priceBooks.inForce(books.today())
                : priceBooks.findInForce(date).orElseThrow(() -> new PricingRefusal.NoBookInForce(date, "date"));
    }

    private void requireUnit(Request.Line line) {
        ServiceItem serviceItem = catalog.serviceItem(line.serviceItem());
        if (!line.quantity().unit().isLike(serviceItem.unit())) {
            throw new KernelRefusal.WrongUnit(
                    "quantity", serviceItem.name(), line.quantity().unit(), List.of(serviceItem.unit()));
        }
    }

    /**
     * Prices the lines of a quote that is still being written, each under its id. Refuses prices that the books cannot hold,
     * and more work than one visit takes, as saving it does.
     */
    @Transactional
    public PricedWork preview(PriceBookId book, List<QuoteScope.Line> lines) {
        List<WorkLine> work = new ArrayList<>();
        List<StandardMinutes> minutes = new ArrayList<>();
        for (QuoteScope.Line line : lines) {
            work.add(new WorkLine(line.id(), line.serviceItem(), line.quantity(), attributes(line.surface()), null));
            minutes.add(catalog.serviceItem(line.serviceItem()).minutesFor(line.quantity()));
        }
        PricedWork priced = price(book, work).held();
        StandardMinutes.requireOneVisit(StandardMinutes.ZERO, "lines", minutes);
        return priced;
    }

    private Map<SurfaceAttribute, Integer> attributes(@Nullable SurfaceId surface) {
        return surface == null ? Map.of() : surfaces.surface(surface).attributes();
    }

    private PricedWork price(PriceList list, List<WorkLine> lines) {
        Elements.each("lines", lines, (line, i) -> {
            if (line.fixedUnitPrice() == null) {
                list.requirePriceOf(catalog.serviceItem(line.serviceItem()));
            }
        });
        return PricingEngine.price(
                list, lines, serviceItem -> catalog.serviceItem(serviceItem).serviceLine());
    }

    /**
     * What was done on a visit: quoted units at their quoted unit price, extras from the book, minimums topped up over
     * what is billed. Refuses an unknown quote line, and what {@link #price} refuses.
     */
    @Transactional
    public PricedWork priceDone(PriceBookId book, List<DoneLine> done) {
        return priceDone(book, done, Set.of());
    }

    /**
     * The same for a visit that goes on with the job of others.
     *
     * @param  borne service lines of the work that those others bill: their minimums, and the visit's where there is any
     *              such work, are not asked for a second time
     */
    @Transactional
    public PricedWork priceDone(PriceBookId book, List<DoneLine> done, Set<ServiceLineId> borne) {
        Map<UUID, QuoteLineRow> quoted = quoted(done);
        return price(
                priceBooks.book(book).list().afterMinimumsOf(borne),
                done.stream().map(line -> work(line, quoted)).toList());
    }

    /**
     * What the same comes to, before tax and without no-charge work; empty where no book prices all of it.
     *
     * @param  pinned the book; null for the one that is in force on the day
     */
    @Transactional
    public Optional<Money> worth(
            @Nullable PriceBookId pinned, LocalDate day, List<DoneLine> done, Set<ServiceLineId> borne) {
        Optional<PriceBook> book = pinned == null ? priceBooks.findInForce(day) : Optional.of(priceBooks.book(pinned));
        return book.map(PriceBook::list)
                .filter(list -> done.stream()
                        .allMatch(line -> line.quoteLine() != null
                                || list.priceOf(line.serviceItem()).isPresent()))
                .flatMap(list -> total(list.afterMinimumsOf(borne), done));
    }

    /** What cannot be priced has no total here: work is signed off all the same, and billing it says why it cannot be. */
    private Optional<Money> total(PriceList list, List<DoneLine> done) {
        Map<UUID, QuoteLineRow> quoted = quoted(done);
        try {
            return Optional.of(price(
                            list, done.stream().map(line -> work(line, quoted)).toList())
                    .total());
        } catch (Refusal notPriced) {
            return Optional.empty();
        }
    }

    private Map<UUID, QuoteLineRow> quoted(List<DoneLine> done) {
        List<UUID> ids = done.stream()
                .map(DoneLine::quoteLine)
                .filter(Objects::nonNull)
                .map(QuoteLineId::value)
                .toList();
        Map<UUID, QuoteLineRow> found = new HashMap<>();
        if (!ids.isEmpty()) {
            queries.lines(ids).forEach(row -> found.put(row.id().value(), row));
        }
        return found;
    }

    private WorkLine work(DoneLine line, Map<UUID, QuoteLineRow> quoted) {
        UnitPrice fixed = null;
        if (line.quoteLine() != null) {
            QuoteLineRow row = quoted.get(line.quoteLine().value());
            if (row == null) {
                throw new KernelRefusal.NotFound("quote line", line.quoteLine());
            }
            if (!row.serviceItem().equals(line.serviceItem())) {
                throw new CatalogRefusal.ServiceItemDoesNotFit(
                        catalog.serviceItem(line.serviceItem()).name(), "is not what that line of the quote offers");
            }
            fixed = row.unitPrice(books.currency());
        }
        return new WorkLine(
                line.key(), line.serviceItem(), line.quantity(), attributes(line.surface()), fixed, line.noCharge());
    }
}
