package eaveside.costing.internal;

import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.List;
import org.hibernate.annotations.processing.HQL;
import org.hibernate.annotations.processing.SQL;

/** Queries over the cost rates; the annotation processor checks them when it compiles. */
public interface CostingQueries {
    /** Rates look at one another's days, so setting them takes turns. */
    long RATES = 0x636f7374696e67L;

    EntityManager entityManager();

    /** Waits for others under the key; holds it until the commit. */
    @SQL("select cast(pg_advisory_xact_lock(:key) as text)")
    String takeTurn(long key);

    /** The newest day first, and of one day the last entry first. */
    @HQL("from CostRatesRow order by key.from desc, key.entry desc")
    List<CostRatesRow> rates();

    @HQL("from CostRatesRow where key.from <= :date order by key.from desc, key.entry desc limit 1")
    List<CostRatesRow> ratesUntil(LocalDate date);
}
