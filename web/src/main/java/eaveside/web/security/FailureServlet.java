package eaveside.web.security;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.annotation.WebServlet;
import jakarta.servlet.http.HttpServlet;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/** Answers what failed before or beside the resources (a request that is none, an address outside them) in a few plain words. */
@WebServlet(name = "failure", urlPatterns = "/failure")
public class FailureServlet extends HttpServlet {
    private static final long serialVersionUID = 1;

    @Override
    protected void service(HttpServletRequest request, HttpServletResponse response) throws IOException {
        // Asked for directly, without a failure, the address does not exist.
        int status = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE) instanceof Integer code
                ? code
                : HttpServletResponse.SC_NOT_FOUND;
        byte[] body = ("<!DOCTYPE html><html lang=\"en\"><title>" + status + "</title><h1>" + status
                        + "</h1><p>That did not work. <a href=\"/\">To the start page</a></p></html>")
                .getBytes(StandardCharsets.UTF_8);
        response.setStatus(status);
        response.setContentType("text/html;charset=UTF-8");
        response.setHeader("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader("Cache-Control", "no-store");
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
    }
}
