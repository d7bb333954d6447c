package eaveside.web.findings;

import eaveside.access.Role;
import eaveside.customers.FindCustomers;
import eaveside.findings.FindingLine;
import eaveside.findings.ReadFindings;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Open findings, the one that has waited longest first. */
@Path("/findings")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class FindingsResource {
    private static final int PAGE = 50;
    private static final int EXPORT = 5_000;

    private static final int MOST_CUSTOMERS = 200;

    private final ReadFindings readFindings;
    private final FindCustomers findCustomers;
    private final Names names;

    @Context
    UriInfo uri;

    @Inject
    public FindingsResource(ReadFindings readFindings, FindCustomers findCustomers, Names names) {
        this.readFindings = readFindings;
        this.findCustomers = findCustomers;
        this.names = names;
    }

    /**
     * The list.
     *
     * @param  closed whether closed findings are shown, otherwise those that are open
     * @param  q      words of the customers whose findings are shown; empty for everybody's
     */
    public record FindingsPage(
            boolean closed,
            String q,
            List<FindingLine> findings,
            Names names,
            String csv,
            @Nullable String more) implements Page {
        @Override
        public String template() {
            return "findings/findings.jte";
        }

        /** The address of the other list, what is searched for kept. */
        public String link(boolean ofClosed) {
            String shown = ofClosed ? "?show=closed" : "";
            return "/findings" + shown
                    + (q.isBlank() ? "" : (ofClosed ? "&" : "?") + "q=" + URLEncoder.encode(q, StandardCharsets.UTF_8));
        }
    }

    @GET
    @Transactional
    public FindingsPage findings(
            @QueryParam("show") @DefaultValue("") String show,
            @QueryParam("q") @DefaultValue("") String q,
            @QueryParam("after") @Nullable String after) {
        boolean closed = show.equals("closed");
        Slice<FindingLine> page = read(closed, q, after, PAGE);
        names.lookUp(page.rows().stream().map(FindingLine::customer).distinct().toList());
        UriBuilder here = uri.getRequestUriBuilder().scheme(null).host(null).port(-1);
        return new FindingsPage(
                closed,
                q,
                page.rows(),
                names,
                here.clone()
                        .replacePath("/findings/list.csv")
                        .replaceQueryParam("after")
                        .build()
                        .toString(),
                page.next() == null
                        ? null
                        : here.clone()
                                .replaceQueryParam("after", page.next())
                                .build()
                                .toString());
    }

    private Slice<FindingLine> read(boolean closed, String q, @Nullable String after, int size) {
        if (q.isBlank()) {
            return closed ? readFindings.closed(after, size) : readFindings.open(after, size);
        }
        List<CustomerId> customers = findCustomers.find(q, false, null, MOST_CUSTOMERS).rows().stream()
                .map(FindCustomers.CustomerLine::id)
                .toList();
        return readFindings.ofCustomers(customers, !closed, after, size);
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(
            @QueryParam("show") @DefaultValue("") String show, @QueryParam("q") @DefaultValue("") String q) {
        return Csv.download(
                "findings",
                List.of("seen at", "type", "severity", "customer", "note", "customer told", "photos", "actions"),
                read(show.equals("closed"), q, null, EXPORT).rows().stream()
                        .map(f -> List.of(
                                f.openedAt().toString(),
                                f.typeName(),
                                f.severity().name(),
                                names.customer(f.customer()),
                                f.note(),
                                f.customerNotified() ? "yes" : "no",
                                String.valueOf(f.photos()),
                                String.valueOf(f.actions())))
                        .toList());
    }
}
