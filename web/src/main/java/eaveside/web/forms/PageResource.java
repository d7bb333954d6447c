package eaveside.web.forms;

import eaveside.web.security.Viewer;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;

/** A resource for people: unless a method says otherwise, it answers with pages and takes what their forms send. */
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
public abstract class PageResource {
    @Inject
    protected Viewer viewer;
}
