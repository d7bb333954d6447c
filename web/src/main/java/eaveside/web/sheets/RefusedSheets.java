package eaveside.web.sheets;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.VisitId;
import eaveside.visits.SentSheet;
import eaveside.web.forms.Named;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import jakarta.json.JsonReader;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.ext.Provider;
import java.io.StringReader;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Pattern;

/**
 * Keeps what scripts send as a sheet and what is refused, also where the body could not be read as one: after the answer is
 * made, since nothing of a refused request's own transaction stays.
 */
@Provider
@KeptWhereRefused
@ApplicationScoped
public class RefusedSheets implements ContainerResponseFilter {
    private static final Logger LOG = Logger.getLogger(RefusedSheets.class.getName());

    private static final Pattern QUANTITY = Pattern.compile("(\\d) ([A-Z0-9]{2,3})\\b");

    @Inject
    KeepSheet keepSheet;

    @Context
    HttpServletRequest servlet;

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        if (response.getStatus() >= 400 && response.getStatus() < 500) {
            Named.sent(servlet)
                    .ifPresent(body ->
                            keep(request.getUriInfo().getPathParameters().getFirst("visit"), body, response));
        }
    }

    /** The refusal is the answer, whether or not its sheet could be kept. */
    private void keep(String visit, JsonObject body, ContainerResponseContext response) {
        try {
            List<SentSheet.Field> fields = SentBody.fields(body);
            if (!fields.isEmpty()) {
                keepSheet.keep(VisitId.of(visit), fields, title(response));
            }
        } catch (KernelRefusal.NotAnId | KernelRefusal.NotFound e) {
            LOG.fine("it was a sheet of no visit");
        } catch (RuntimeException e) {
            LOG.log(Level.WARNING, "a refused sheet could not be kept", e);
        }
    }

    /** Quantities are told to scripts in codes of units; the gap is what a page knows them by. */
    private static String title(ContainerResponseContext response) {
        try (JsonReader problem = Json.createReader(new StringReader((String) response.getEntity()))) {
            return QUANTITY.matcher(problem.readObject().getString("title")).replaceAll("$1" + SentBody.GAP + "$2");
        }
    }
}
