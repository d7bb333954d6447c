package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.ledger.internal.DocumentRow;
import eaveside.ledger.internal.EntrySearch;
import eaveside.ledger.internal.LedgerQueries;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Opens figures down to their entries and documents: trial balance, entries behind a figure, one document whole. */
@Shared
public class ReadLedger {
    private final EntityManager entities;
    private final LedgerQueries queries;
    private final EntrySearch search;
    private final Books books;

    @Inject
    public ReadLedger(EntityManager entities, LedgerQueries queries, EntrySearch search, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.search = search;
        this.books = books;
    }

    @Transactional
    public List<Account> accounts() {
        return queries.accounts().stream().map(a -> a.toAccount()).toList();
    }

    /** An account of the chart; refuses an unknown code. */
    @Transactional
    public Account account(AccountCode code) {
        return accounts().stream()
                .filter(account -> account.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("account", code));
    }

    /** Which account the program posts to in each role. */
    @Transactional
    public Map<AccountRole, AccountCode> accountsInRoles() {
        Map<AccountRole, AccountCode> codes = new EnumMap<>(AccountRole.class);
        queries.accounts().forEach(a -> a.role().ifPresent(role -> codes.put(role, new AccountCode(a.code()))));
        return codes;
    }

    /** Every month from the first of the books to this one or the last with a document, newest first. */
    @Transactional
    public List<AccountingPeriod> periods() {
        Map<YearMonth, AccountingPeriod> begun = new HashMap<>();
        queries.periods().forEach(row -> begun.put(row.toPeriod().month(), row.toPeriod()));
        YearMonth first = YearMonth.from(books.company().booksFrom());
        YearMonth last = YearMonth.from(books.today());
        for (YearMonth month : begun.keySet()) {
            last = month.isAfter(last) ? month : last;
        }
        List<AccountingPeriod> periods = new ArrayList<>();
        for (YearMonth month = last; !month.isBefore(first); month = month.minusMonths(1)) {
            periods.add(begun.getOrDefault(month, new AccountingPeriod(month, null)));
        }
        return periods;
    }

    /** A month of the books; refuses one that is not listed among them. */
    @Transactional
    public AccountingPeriod period(YearMonth month) {
        return periods().stream()
                .filter(period -> period.month().equals(month))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("month", month));
    }

    /** The month that closes next. */
    @Transactional
    public YearMonth oldestOpen() {
        return YearMonth.from(books.company().booksFrom()).plusMonths(queries.closedPeriods());
    }

    /** Opening, change and closing of every account; refuses a last day before the first. */
    @Transactional
    public TrialBalance trialBalance(LocalDate from, LocalDate to) {
        if (to.isBefore(from)) {
            throw new LedgerRefusal.BadSpan(from, to);
        }
        return TrialBalance.of(
                from,
                to,
                books.currency(),
                queries.balances(from, to).stream()
                        .map(b -> new TrialBalance.Row(
                                new AccountCode(b.code()),
                                b.name(),
                                b.type(),
                                books.money(b.opening()),
                                books.money(b.change())))
                        .toList());
    }

    /** How many documents of the type count from the first to the last day. */
    @Transactional
    public long countOf(DocumentType type, LocalDate from, LocalDate to) {
        return queries.countOf(type, from, to);
    }

    /** The entries of a filter, newest first, paged by key. */
    @Transactional
    public Slice<EntryLine> entries(EntryFilter filter, @Nullable String after, int size) {
        return search.find(filter, after, size);
    }

    /** The sum of a filter's entries: the figure that {@link #entries} opens. */
    @Transactional
    public Money total(EntryFilter filter) {
        return search.total(filter);
    }

    /** The documents of those ids in the order that they were posted; unknown ids are left out. */
    @Transactional
    public List<DocumentHead> heads(Collection<DocumentId> ids) {
        return ids.isEmpty()
                ? List.of()
                : queries.heads(ids.stream().map(DocumentId::value).toList()).stream()
                        .map(LedgerQueries.Head::toHead)
                        .toList();
    }

    /** Refuses an unknown id. */
    @Transactional
    public DocumentView document(DocumentId id) {
        DocumentRow row = entities.find(DocumentRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("document", id);
        }
        List<DocumentRow> reversedBy = queries.reversalsOf(id);
        return row.toView(
                reversedBy.isEmpty() ? null : reversedBy.getFirst().id(),
                queries.linesOf(id.value()).stream()
                        .map(l -> l.toLine(books.currency()))
                        .toList());
    }
}
