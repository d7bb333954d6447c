package eaveside.web.worklist;

import eaveside.access.Role;
import eaveside.kernel.Money;
import eaveside.ledger.Books;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.worklist.Waiting.Kind;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The worklist. */
@Path("/worklist")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class WorklistResource {
    /** How much is read of each kind, and how much is shown at once. */
    private static final int MOST = 200;

    private static final int SHOWN = 60;

    private final Worklist worklist;
    private final Viewer viewer;
    private final Books books;

    @Inject
    public WorklistResource(Worklist worklist, Viewer viewer, Books books) {
        this.worklist = worklist;
        this.viewer = viewer;
        this.books = books;
    }

    /**
     * @param kind   the filter, or empty for everything
     * @param counts of each kind, all filters aside
     */
    public record WorklistPage(
            String kind, List<Waiting> waiting, int all, Map<Kind, Integer> counts, Money toBill, Money outstanding)
            implements Page {
        @Override
        public String template() {
            return "worklist/worklist.jte";
        }
    }

    @GET
    @Transactional
    public WorklistPage worklist(
            @QueryParam("kind") @DefaultValue("") String kind, @QueryParam("all") @DefaultValue("") String all) {
        List<Waiting> everything = worklist.waiting(viewer.view(), MOST);
        Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
        everything.forEach(w -> counts.merge(w.kind(), 1, Integer::sum));
        List<Waiting> chosen = chosen(everything, kind);
        return new WorklistPage(
                kind,
                all.isEmpty() && chosen.size() > SHOWN ? chosen.subList(0, SHOWN) : chosen,
                chosen.size(),
                counts,
                sum(everything, Kind.BILL),
                sum(everything, Kind.MONEY));
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@QueryParam("kind") @DefaultValue("") String kind) {
        View view = viewer.view();
        return Csv.download(
                "worklist",
                List.of("waiting since", "kind", "what", "amount"),
                chosen(worklist.waiting(view, MOST), kind).stream()
                        .map(w -> List.of(
                                w.since().toString(),
                                view.t("worklist.kind", w.kind()),
                                w.sentence(),
                                w.money() == null ? "" : w.money().amount().toPlainString()))
                        .toList());
    }

    private static List<Waiting> chosen(List<Waiting> everything, String kind) {
        return everything.stream()
                .filter(w -> kind.isEmpty() || w.kind().inAddress().equals(kind))
                .toList();
    }

    private Money sum(List<Waiting> waiting, Kind kind) {
        Money sum = books.zero();
        for (Waiting w : waiting) {
            Money money = w.money();
            if (w.kind() == kind && money != null) {
                sum = sum.plus(money);
            }
        }
        return sum;
    }
}
