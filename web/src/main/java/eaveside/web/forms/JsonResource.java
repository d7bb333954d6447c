package eaveside.web.forms;

import eaveside.web.security.Viewer;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;

/** A resource for scripts: unless a method says otherwise, it answers with JSON and takes JSON. */
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public abstract class JsonResource {
    @Inject
    protected Viewer viewer;
}
