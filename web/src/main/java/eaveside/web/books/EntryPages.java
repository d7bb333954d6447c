package eaveside.web.books;

import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Account;
import eaveside.ledger.AccountCode;
import eaveside.ledger.Books;
import eaveside.ledger.CostType;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.EntryLine;
import eaveside.ledger.ReadLedger;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The entries that a figure is the sum of. */
@Path("/books/entries")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class EntryPages extends ListResource<EntryLine> {
    private static final int ACCOUNTS_IN_HEADING = 3;

    @Inject
    ReadLedger readLedger;

    @Inject
    OpenAccounts openAccounts;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    Books books;

    @Inject
    Names names;

    @Override
    protected Listing<EntryLine> list() {
        View view = viewer.view();
        EntryFilter filter = filter(viewer.fields(asked.getQueryParameters()));
        Listing<EntryLine> list = Listing.<EntryLine>of(
                        "books.entries",
                        "/books/entries",
                        query -> readLedger.entries(filter, query.after(), query.size()))
                .titled(title(view, filter))
                .saying(total(view, filter))
                .kept("from", "to", "account", "line", "visit", "customer", "cost", "found")
                .columns("postingDate")
                .column(
                        "document",
                        entry -> view.t("books.doc", entry.type()) + " " + entry.number(),
                        entry -> "/documents/" + entry.document())
                .columns("amount")
                .column("account", entry -> entry.account() + " " + entry.accountName())
                .column("serviceLine", entry -> names.line(entry.serviceLine()))
                .column("customer", entry -> names.customer(entry.customer()))
                .columns("costType", "note");
        return view.seesBooks() ? list.within("books.title", "/books") : list;
    }

    private EntryFilter filter(Fields fields) {
        boolean noLine = fields.typed("line").equals("none");
        CustomerId customer = said(fields, "customer", CustomerId::of);
        return new EntryFilter(
                said(fields, "from", day -> fields.date("from", books.today())),
                said(fields, "to", day -> fields.date("to", books.today())),
                openAccounts.among(
                        fields.all("account").stream().map(AccountCode::new).toList()),
                noLine ? null : said(fields, "line", ServiceLineId::of),
                noLine,
                said(fields, "visit", VisitId::of),
                customer == null ? List.of() : readCustomer.idsOf(customer),
                said(fields, "cost", cost -> fields.choice("cost", CostType.class)),
                fields.ticked("found"));
    }

    /** What the address says under a name; null where it says nothing. */
    private static <T> @Nullable T said(Fields fields, String name, Function<String, @Nullable T> read) {
        String said = fields.typed(name);
        return said.isEmpty() ? null : read.apply(said);
    }

    private String title(View view, EntryFilter filter) {
        String accounts = filter.accounts().size() > ACCOUNTS_IN_HEADING
                ? ""
                : readLedger.accounts().stream()
                        .filter(account -> filter.accounts().contains(account.code()))
                        .map(Account::name)
                        .collect(Collectors.joining(", "));
        return accounts.isEmpty() ? view.t("books.entries.title") : view.t("books.entries.of", accounts);
    }

    private String total(View view, EntryFilter filter) {
        Money total = readLedger.total(filter);
        String side = total.isZero() ? "zero" : total.isNegative() ? "credit" : "debit";
        String sentence = view.t("books.entries.total." + side, view.money(total.abs()));
        return filter.from() == null && filter.to() == null
                ? sentence
                : sentence + " " + view.t("books.entries.span", day(view, filter.from()), day(view, filter.to()));
    }

    private static String day(View view, @Nullable LocalDate day) {
        return day == null ? "…" : view.shortDate(day);
    }
}
