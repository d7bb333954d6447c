package eaveside.web.worklist;

import eaveside.invoicing.BillVisit;
import eaveside.kernel.Ids;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Refusal;
import eaveside.kernel.VisitId;
import eaveside.web.Csv;
import eaveside.web.Link;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.worklist.DueItem;
import eaveside.worklist.DueKey;
import eaveside.worklist.DueOrder;
import eaveside.worklist.DueTotal;
import eaveside.worklist.DueType;
import eaveside.worklist.PutAside;
import eaveside.worklist.ReadWorklist;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The worklist: what is due, and what is done about one or many of it at once. */
@Path("/worklist")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class WorklistResource extends PageResource {
    /** Of each type at once, where all are shown. */
    private static final int FIRST = 7;

    /** Of one type at once. */
    private static final int SHOWN = 60;

    private static final int IN_FILE = 5_000;

    /** Each is priced and drafted while the answer is waited for. */
    private static final int MOST_BILLED = 100;

    @Inject
    Worklist worklist;

    @Inject
    ReadWorklist readWorklist;

    @Inject
    PutAside putAside;

    @Inject
    BillVisit billVisit;

    @Inject
    FirstSteps firstSteps;

    /**
     * @param  shown  the one type that is shown; null for all
     * @param  order  what comes first in each type
     * @param  totals of each type that has any, whatever is shown
     * @param  aside  how much is put aside
     * @param  cost   of the work that is completed and not billed; null for who may not see it
     * @param  steps  what a new company has to set up first; empty once something is due or all is set up
     * @param  more   how many to show next; zero where all are shown
     * @param  fields what was sent last, where it was refused
     */
    public record WorklistPage(
            @Nullable DueType shown,
            DueOrder order,
            Map<DueType, DueTotal> totals,
            List<Worklist.Group> groups,
            long aside,
            @Nullable Money cost,
            List<FirstSteps.Step> steps,
            int more,
            Fields fields)
            implements Page {
        public long count() {
            return totals.values().stream().mapToLong(DueTotal::count).sum();
        }

        /** In sales value; null where there is none of it. */
        public @Nullable Money amount(DueType type) {
            DueTotal total = totals.get(type);
            return total == null ? null : total.amount();
        }

        /** The address of the same list with another type or order. */
        public String link(@Nullable DueType type, DueOrder by) {
            return new Link("/worklist")
                    .with("type", type == null ? null : inAddress(type))
                    .with("sort", by == DueOrder.AGE ? null : "amount")
                    .toString();
        }
    }

    /** What is put aside until a day. */
    public record AsidePage(List<Worklist.Row> rows) implements Page {}

    @GET
    @Transactional
    public WorklistPage worklist(
            @QueryParam("type") @DefaultValue("") String type,
            @QueryParam("sort") @DefaultValue("") String sort,
            @QueryParam("show") @DefaultValue("0") int show) {
        return page(type(type), order(sort), show, Fields.empty());
    }

    private WorklistPage page(@Nullable DueType shown, DueOrder order, int show, Fields fields) {
        View view = viewer.page();
        int most = shown == null ? FIRST : Math.clamp(show, SHOWN, IN_FILE);
        // The menu of the same page counts them.
        Map<DueType, DueTotal> totals = view.due();
        List<Worklist.Group> groups = worklist.due(view, totals, shown, order, most);
        return new WorklistPage(
                shown,
                order,
                totals,
                groups,
                readWorklist.countAside(),
                worklist.costNotBilled(view),
                totals.isEmpty() ? firstSteps.left(view) : List.of(),
                shown != null && most < IN_FILE && groups.stream().anyMatch(group -> group.left() > 0) ? most * 2 : 0,
                fields);
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(
            @QueryParam("type") @DefaultValue("") String type, @QueryParam("sort") @DefaultValue("") String sort) {
        View view = viewer.view();
        return Csv.download(
                "worklist",
                List.of("due since", "type", "customer", "phone", "what", "amount"),
                worklist.due(view, Map.of(), type(type), order(sort), IN_FILE).stream()
                        .flatMap(group -> group.rows().stream())
                        .map(row -> cells(view, row))
                        .toList());
    }

    private static List<String> cells(View view, Worklist.Row row) {
        DueItem item = row.item();
        Money amount = item.amount();
        return List.of(
                item.since().toString(),
                view.t("worklist.type", item.key().type()),
                item.customerName(),
                item.phone(),
                row.words(),
                amount == null ? "" : amount.amount().toPlainString());
    }

    @GET
    @Path("aside")
    @Transactional
    public AsidePage aside() {
        return new AsidePage(worklist.aside(viewer.view(), IN_FILE));
    }

    @POST
    @Path("aside")
    public Response putAside(Fields fields) {
        LocalDate until = fields.date("until", viewer.view().today());
        String note = fields.optional("note");
        return fields.run(() -> putAside.until(chosen(fields), until, note, viewer.id()))
                ? Respond.to(back(fields), "worklist.put-aside")
                : again(fields);
    }

    @POST
    @Path("read")
    public Response read(Fields fields) {
        return fields.run(() -> putAside.read(chosen(fields), viewer.id()))
                ? Respond.to(back(fields), "worklist.notes-read")
                : again(fields);
    }

    @POST
    @Path("take-up")
    public Response takeUp(Fields fields) {
        return fields.run(() -> putAside.takeUp(chosen(fields), viewer.id()))
                ? Respond.to("/worklist", "worklist.taken-up")
                : again(fields);
    }

    /** Drafts the invoice of each chosen visit, or of the one whose button was pressed, for itself: what is refused for one is said, and the others go through. */
    @POST
    @Path("bill")
    public Response bill(Fields fields) {
        List<DueKey> visits = Objects.requireNonNullElse(fields.made("item", () -> visits(fields)), List.of());
        for (DueKey visit : visits) {
            try {
                billVisit.draft(new BillVisit.Bill(
                        new InvoiceId(fields.id("draft-" + visit.thing())),
                        new VisitId(Ids.parse(visit.thing())),
                        viewer.id()));
            } catch (Refusal refusal) {
                fields.refused(
                        refusal,
                        problem -> new Refusal.Problem(
                                "item-" + visit.thing(),
                                viewer.view().t("worklist.not-drafted", fields.typed("name-" + visit.thing()))
                                        + " "
                                        + problem.text("")));
            }
        }
        if (fields.hasErrors()) {
            return again(fields);
        }
        // One alone goes on to its issue, so that a clean visit is billed with two presses.
        return fields.typed("only").isEmpty()
                ? Respond.to("/worklist?type=draft", "worklist.drafted")
                : Respond.instead(
                        "/invoices/" + fields.id("draft-" + visits.getFirst().thing()) + "/issue");
    }

    private Response again(Fields fields) {
        return Respond.again(fields, page(type(fields.typed("shown")), order(fields.typed("order")), 0, fields));
    }

    private static List<DueKey> visits(Fields fields) {
        List<DueKey> visits =
                fields.typed("only").isEmpty() ? chosen(fields) : List.of(DueKey.parse(fields.typed("only")));
        if (visits.isEmpty()) {
            throw new KernelRefusal.BadText("item", "is required");
        }
        if (visits.size() > MOST_BILLED) {
            throw new KernelRefusal.OutOfRange("item", visits.size(), 1, MOST_BILLED);
        }
        if (visits.stream().anyMatch(key -> key.type() != DueType.BILL)) {
            throw new KernelRefusal.BadText("item", "is no completed visit");
        }
        return visits;
    }

    private static List<DueKey> chosen(Fields fields) {
        return fields.all("item").stream().map(DueKey::parse).toList();
    }

    private static String back(Fields fields) {
        return new Link("/worklist")
                .with("type", type(fields.typed("shown")) == null ? null : fields.typed("shown"))
                .with("sort", order(fields.typed("order")) == DueOrder.AGE ? null : "amount")
                .toString();
    }

    private static DueOrder order(String inAddress) {
        return inAddress.equals("amount") ? DueOrder.AMOUNT : DueOrder.AGE;
    }

    private static String inAddress(DueType type) {
        return type.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** What the address calls it; null for anything else, which filters nothing. */
    private static @Nullable DueType type(String inAddress) {
        return Arrays.stream(DueType.values())
                .filter(type -> inAddress(type).equals(inAddress))
                .findFirst()
                .orElse(null);
    }
}
