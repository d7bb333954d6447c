package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.kernel.DocumentId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.AccountingPeriod;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.ClosePeriod.Close;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReadVariances.Variance;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Sees;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.DateTimeException;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A month of the books: its variances, what is still open of it, and its close. */
@Path("/books")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Sees(Sight.BOOKS)
public class MonthPages {
    @Inject
    ReadLedger readLedger;

    @Inject
    MonthEnd monthEnd;

    @Inject
    ClosePeriod closePeriod;

    @Inject
    Viewer viewer;

    /**
     * One month.
     *
     * @param  oldestOpen the month that closes next
     * @param  ended      whether the month is over
     * @param  goods      the account of goods that no supplier has invoiced
     */
    public record MonthPage(Month shown, YearMonth oldestOpen, boolean ended, AccountCode goods, Form<Close> form)
            implements Page {
        @Override
        public String template() {
            return "books/month.jte";
        }

        public YearMonth month() {
            return shown.month();
        }

        public List<StillOpen.Item> stillOpen() {
            return shown.stillOpen().items(goods, month().atEndOfMonth());
        }

        /** The entries of the accounts in the month. */
        public String entries(List<AccountCode> accounts) {
            return "/books/entries?"
                    + accounts.stream().map(code -> "account=" + code + "&").collect(Collectors.joining())
                    + "from=" + month().atDay(1) + "&to=" + month().atEndOfMonth();
        }

        /** The entries behind a variance: of what was spent and of what was applied. */
        public String entries(Variance variance) {
            return entries(Stream.concat(variance.actualCodes().stream(), variance.appliedCodes().stream())
                    .toList());
        }
    }

    @GET
    @Path("months/{month}")
    @Transactional
    public MonthPage month(@PathParam("month") String month) {
        return page(
                parsed(month),
                viewer.form(Close.class, Map.of("id", DocumentId.next().toString(), "month", month)));
    }

    private MonthPage page(YearMonth month, Form<Close> form) {
        form.labeled("books").fields().called("confirm", viewer.view().t("books.close.confirmation"));
        return new MonthPage(
                monthEnd.month(month),
                readLedger.oldestOpen(),
                monthEnd.isOver(month),
                Objects.requireNonNull(readLedger.accountsInRoles().get(AccountRole.GOODS_NOT_INVOICED)),
                form);
    }

    @POST
    @Path("close")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @RolesAllowed(Roles.OWNER)
    public Response close(Form<Close> form) {
        String month = form.fields().typed("month");
        if (!form.fields().ticked("confirm")) {
            form.fields().wrong("confirm", "books.close.confirm.missing");
        }
        return form.run(closePeriod::close)
                ? Respond.to("/books/months/" + month, "books.closed")
                : Respond.again(form.fields(), page(listed(month), form));
    }

    /** The month, or the one that closes next where the books have no such month. */
    private YearMonth listed(String month) {
        return readLedger.periods().stream()
                .map(AccountingPeriod::month)
                .filter(listed -> listed.toString().equals(month))
                .findFirst()
                .orElseGet(readLedger::oldestOpen);
    }

    /** A month of the address; refuses as not found what is none. */
    static YearMonth parsed(String text) {
        try {
            return YearMonth.parse(text);
        } catch (DateTimeException e) {
            throw new WebRefusal.NoSuchPage();
        }
    }
}
