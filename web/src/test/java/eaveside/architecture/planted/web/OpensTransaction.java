package eaveside.architecture.planted.web;

import jakarta.transaction.Transactional;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;

/** Planted: a page that opens the transaction of a change itself, at an address that says nothing of who may call. */
@Path("/planted")
public class OpensTransaction {
    @POST
    @Transactional
    public void change() {}
}
