package eaveside.web.findings;

import eaveside.access.Role;
import eaveside.findings.OpenFindingLine;
import eaveside.findings.ReadFindings;
import eaveside.kernel.Slice;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
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

    private final ReadFindings readFindings;
    private final Names names;

    @Inject
    public FindingsResource(ReadFindings readFindings, Names names) {
        this.readFindings = readFindings;
        this.names = names;
    }

    /** The list. */
    public record FindingsPage(Slice<OpenFindingLine> findings, Names names) implements Page {
        @Override
        public String template() {
            return "findings/findings.jte";
        }
    }

    @GET
    @Transactional
    public FindingsPage findings(@QueryParam("after") @Nullable String after) {
        return new FindingsPage(readFindings.open(after, PAGE), names);
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv() {
        return Csv.download(
                "findings",
                List.of("seen at", "kind", "severity", "customer", "note", "customer told", "photos", "answers"),
                readFindings.open(null, EXPORT).rows().stream()
                        .map(f -> List.of(
                                f.openedAt().toString(),
                                f.kindName(),
                                f.severity().name(),
                                names.customer(f.customer()),
                                f.note(),
                                f.customerTold() ? "yes" : "no",
                                String.valueOf(f.photos()),
                                String.valueOf(f.answers())))
                        .toList());
    }
}
