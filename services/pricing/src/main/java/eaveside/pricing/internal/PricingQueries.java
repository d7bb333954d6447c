package eaveside.pricing.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.QuoteId;
import eaveside.pricing.QuoteStatus;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.processing.HQL;

/** Queries over price books and quotes; the annotation processor checks them when it compiles. */
public interface PricingQueries {
    EntityManager entityManager();

    @HQL("from PriceBookRow where number is not null and validFrom <= :date order by validFrom desc, number desc"
            + " limit :most")
    List<PriceBookRow> booksInForce(LocalDate date, int most);

    @HQL("from PriceBookRow where number is null order by validFrom, id")
    List<PriceBookRow> drafts();

    @HQL("from PriceBookRow where number < :below order by number desc limit :most")
    List<PriceBookRow> publishedBooks(long below, int most);

    @HQL("select distinct l from QuoteLineRow l left join fetch l.reasons where l.quoteId = :quote order by l.position")
    List<QuoteLineRow> linesOf(QuoteId quote);

    @HQL("select distinct l from QuoteLineRow l left join fetch l.reasons where l.id in :ids")
    List<QuoteLineRow> lines(Collection<UUID> ids);

    @HQL("select id from QuoteLineRow where id in :ids and quoteId <> :quote order by id")
    List<UUID> linesOfOthers(Collection<UUID> ids, QuoteId quote);

    @HQL("delete from QuoteLineRow where quoteId = :quote")
    int deleteLines(QuoteId quote);

    @HQL("from QuoteRow where number < :below and status in :statuses order by number desc limit :most")
    List<QuoteRow> quotesBelow(long below, Collection<QuoteStatus> statuses, int most);

    @HQL("from QuoteRow where customerId in :customers and number < :below and status in :statuses order by number"
            + " desc limit :most")
    List<QuoteRow> quotesOfCustomers(
            Collection<CustomerId> customers, long below, Collection<QuoteStatus> statuses, int most);

    @HQL("from QuoteRow where number = :number and number < :below and status in :statuses order by number desc"
            + " limit :most")
    List<QuoteRow> quotesNumbered(long number, long below, Collection<QuoteStatus> statuses, int most);

    @HQL("from QuoteRow where cameFrom = :finding order by number")
    List<QuoteRow> quotesFrom(FindingId finding);
}
