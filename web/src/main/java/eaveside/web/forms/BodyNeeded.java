package eaveside.web.forms;

import eaveside.web.security.WebRefusal;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.ext.Provider;
import java.lang.reflect.Parameter;
import java.util.Arrays;
import java.util.function.Predicate;

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
        boolean untold = request.getMediaType() == null;
        if (!request.hasEntity()
                && takes(parameter ->
                        isBody(parameter) && (untold || parameter.getType().isRecord()))) {
            throw new WebRefusal.Unreadable("'body' is missing");
        }
        if (untold && takes(parameter -> parameter.isAnnotationPresent(FormParam.class))) {
            throw new WebRefusal.Unreadable("'Content-Type' is missing");
        }
    }

    private boolean takes(Predicate<Parameter> such) {
        return Arrays.stream(resource.getResourceMethod().getParameters()).anyMatch(such);
    }

    private static boolean isBody(Parameter parameter) {
        return parameter.getAnnotations().length == 0;
    }
}
