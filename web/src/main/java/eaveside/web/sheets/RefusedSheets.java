package eaveside.web.sheets;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.VisitId;
import eaveside.visits.SentSheet;
import eaveside.web.forms.Named;
import eaveside.web.security.RefusalMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.ext.Provider;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Keeps what scripts send as a sheet and what is refused, also where the body could not be read as one: after the answer is
 * made, since nothing of a refused request's own transaction stays.
 */
@Provider
@KeptWhereRefused
@ApplicationScoped
public class RefusedSheets implements ContainerResponseFilter {
    private static final Logger LOG = Logger.getLogger(RefusedSheets.class.getName());

    @Inject
    KeepSheet keepSheet;

    @Context
    HttpServletRequest servlet;

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        String visit = request.getUriInfo().getPathParameters().getFirst("visit");
        RefusalMapper.refusal(servlet)
                .ifPresent(refusal ->
                        Named.sent(servlet).ifPresent(body -> keep(visit, SentBody.fields(body), refusal.said())));
    }

    /** The refusal is the answer, whether or not its sheet could be kept. */
    private void keep(String visit, List<SentSheet.Field> fields, String refusal) {
        try {
            if (!fields.isEmpty()) {
                keepSheet.keep(VisitId.of(visit), fields, refusal);
            }
        } catch (KernelRefusal.NotAnId | KernelRefusal.NotFound e) {
            LOG.fine("it was a sheet of no visit");
        } catch (RuntimeException e) {
            LOG.log(Level.WARNING, "a refused sheet could not be kept", e);
        }
    }
}
