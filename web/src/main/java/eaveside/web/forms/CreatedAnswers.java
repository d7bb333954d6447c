package eaveside.web.forms;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.ext.Provider;

/** Answers {@link Created}. */
@Provider
public class CreatedAnswers implements ContainerResponseFilter {
    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        if (response.getEntity() instanceof Created<?> created) {
            response.setStatus(Response.Status.CREATED.getStatusCode());
            response.getHeaders().putSingle(HttpHeaders.LOCATION, created.location());
            response.setEntity(created.body());
        }
    }
}
