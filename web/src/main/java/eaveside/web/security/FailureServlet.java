package eaveside.web.security;

import eaveside.web.entrance.PlainAnswer;
import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.annotation.WebServlet;
import jakarta.servlet.http.HttpServlet;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;

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
        Object asked = request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI);
        PlainAnswer.write(request, response, status, asked instanceof String path ? path : "");
    }
}
