package eaveside.architecture.planted.web;

import jakarta.servlet.http.HttpServlet;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;

/** Answers where no list of doors says so. */
@SuppressWarnings("serial")
public class AnswersBeside extends HttpServlet {
    @Path("further")
    public Object further() {
        return this;
    }

    @GET
    @Path("right")
    public String right() {
        return "";
    }
}
