package eaveside.web.forms;

import eaveside.web.security.WebRefusal;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.ext.Provider;
import java.util.Arrays;

/**
 * Refuses a request without a body where its operation takes one: the platform asks no reader where there is nothing to read
 * and no type is said, and would give the operation nothing.
 */
@Provider
@ApplicationScoped
@Priority(Priorities.ENTITY_CODER)
public class BodyNeeded implements ContainerRequestFilter {
    @Context
    ResourceInfo resource;

    @Override
    public void filter(ContainerRequestContext request) {
        boolean takes = Arrays.stream(resource.getResourceMethod().getParameters())
                .anyMatch(parameter -> parameter.getAnnotations().length == 0
                        && parameter.getType().isRecord());
        if (takes && !request.hasEntity()) {
            throw new WebRefusal.Unreadable("'body' is missing");
        }
    }
}
