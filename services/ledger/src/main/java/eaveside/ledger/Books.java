package eaveside.ledger;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.internal.CompanyRow;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import org.joda.money.CurrencyUnit;

/** What every use case asks about the books: their company, its currency, and which day it is there. Joins a transaction. */
@Shared
public class Books {
    private static final int YEARS = 10;

    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public Books(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /** Whether a company has been founded in this database. */
    public boolean areFounded() {
        return entities.find(CompanyRow.class, CompanyRow.ID) != null;
    }

    /** Refuses with {@link LedgerRefusal.NotFounded} where there is none. */
    public Company company() {
        return row().toCompany();
    }

    public CurrencyUnit currency() {
        return row().currency();
    }

    /** A stored amount as money of the company's currency. */
    public Money money(BigDecimal stored) {
        return Money.of(currency(), stored.stripTrailingZeros());
    }

    public Money zero() {
        return Money.zero(currency());
    }

    /** The amount that was entered in a field; refuses another currency than the company's, and a trillion of it. */
    public Money ours(Money entered, String field) {
        return entered.bounded(field).in(currency(), field);
    }

    /**
     * Looks at the day that was entered in a field; refuses what only a slip of the keyboard explains: a day more than ten years
     * before the books begin, since what was done before there were books may still be told, or more than ten years ahead.
     */
    public void near(LocalDate entered, String field) {
        near(entered, field, company().booksFrom(), "the books begin", today());
    }

    /** Likewise with another day to count from than that on which the books begin, which has yet to be set. */
    static void near(LocalDate entered, String field, LocalDate since, String called, LocalDate today) {
        LocalDate earliest = since.minusYears(YEARS);
        if (entered.isBefore(earliest)) {
            throw new KernelRefusal.TooEarly(field, entered, earliest, YEARS + " years before " + called);
        }
        LocalDate latest = today.plusYears(YEARS);
        if (entered.isAfter(latest)) {
            throw new KernelRefusal.TooLate(field, entered, latest, YEARS + " years from today");
        }
    }

    public ZoneId zone() {
        return row().zone();
    }

    /** Today's date where the company is. */
    public LocalDate today() {
        return clock.instant().atZone(zone()).toLocalDate();
    }

    private CompanyRow row() {
        CompanyRow row = entities.find(CompanyRow.class, CompanyRow.ID);
        if (row == null) {
            throw new LedgerRefusal.NotFounded();
        }
        return row;
    }
}
