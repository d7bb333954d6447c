package eaveside.web.worklist;

import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import eaveside.web.worklist.WorklistItem.Type;
import jakarta.annotation.security.RolesAllowed;
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
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The worklist. */
@Path("/worklist")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class WorklistResource {
    /** How much is shown at once; more only by the filters, so that the page stays quick. */
    private static final int SHOWN = 60;

    private static final int IN_FILE = 5_000;

    @Inject
    Worklist worklist;

    @Inject
    FirstSteps firstSteps;

    @Inject
    Viewer viewer;

    /**
     * @param  type  the filter, or empty for everything
     * @param  steps what a new company has to set up first; empty once something waits or all is set up
     * @param  more  how many to show next; zero where all are shown
     */
    public record WorklistPage(String type, Worklist.Reading reading, List<FirstSteps.Step> steps, int more)
            implements Page {}

    @GET
    @Transactional
    public WorklistPage worklist(
            @QueryParam("type") @DefaultValue("") String type, @QueryParam("show") @DefaultValue("60") int show) {
        View view = viewer.page();
        int most = Math.clamp(show, SHOWN, IN_FILE);
        Worklist.Reading reading = worklist.read(view, type(type), most);
        return new WorklistPage(
                type,
                reading,
                reading.counts().isEmpty() ? firstSteps.left(view) : List.of(),
                reading.of(type(type)) > reading.longest().size() && most < IN_FILE ? most * 2 : 0);
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@QueryParam("type") @DefaultValue("") String type) {
        View view = viewer.page();
        return Csv.download(
                "worklist",
                List.of("waiting since", "type", "what", "amount"),
                worklist.read(view, type(type), IN_FILE).longest().stream()
                        .map(w -> List.of(
                                w.since().toString(),
                                view.t("worklist.type", w.type()),
                                w.words().get(),
                                w.money() == null ? "" : w.money().amount().toPlainString()))
                        .toList());
    }

    /** What the address calls it; null for anything else, which filters nothing. */
    private static @Nullable Type type(String inAddress) {
        return Arrays.stream(Type.values())
                .filter(type -> type.name().toLowerCase(Locale.ROOT).equals(inAddress))
                .findFirst()
                .orElse(null);
    }
}
