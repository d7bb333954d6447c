package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.AuthenticateToken;
import eaveside.web.entrance.Credential;
import eaveside.web.entrance.PlainAnswer;
import jakarta.inject.Inject;
import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.annotation.WebFilter;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.InetAddress;
import java.util.List;

/**
 * What the server itself tells about the program, its health, its figures and the description of its interface, is for this machine
 * alone and for scripts with a token.
 */
@WebFilter(urlPatterns = {"/health/*", "/metrics/*", "/openapi/*"})
public class OperationsGuard implements Filter {
    /** What only a proxy writes: a request that carries it comes from elsewhere, whoever passed it on. */
    private static final List<String> PASSED_ON =
            List.of("X-Forwarded-For", "X-Forwarded-Proto", "X-Forwarded-Host", "Forwarded", "Via");

    @Inject
    AuthenticateToken authenticateToken;

    @Override
    public void doFilter(ServletRequest sent, ServletResponse answer, FilterChain chain)
            throws IOException, ServletException {
        HttpServletRequest request = (HttpServletRequest) sent;
        if (isOfThisMachine(request)) {
            chain.doFilter(sent, answer);
            return;
        }
        boolean hasToken;
        try {
            hasToken = hasToken(request);
        } catch (RuntimeException e) {
            PlainAnswer outage = Outage.behind(e);
            if (outage == null) {
                throw e;
            }
            outage.write(request, (HttpServletResponse) answer, request.getRequestURI());
            return;
        }
        if (hasToken) {
            chain.doFilter(sent, answer);
        } else {
            PlainAnswer.write(request, (HttpServletResponse) answer, 401, request.getRequestURI());
        }
    }

    /** Also by the name that it was asked for: another, that a page of another site had led here, would read the answer as its own. */
    private static boolean isOfThisMachine(HttpServletRequest request) {
        try {
            String name = request.getServerName();
            return InetAddress.ofLiteral(request.getRemoteAddr()).isLoopbackAddress()
                    && (name.equalsIgnoreCase("localhost")
                            || InetAddress.ofLiteral(name).isLoopbackAddress())
                    && PASSED_ON.stream().allMatch(header -> request.getHeader(header) == null);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private boolean hasToken(HttpServletRequest request) {
        String token = Credential.bearer(request);
        if (token == null) {
            return false;
        }
        try {
            authenticateToken.authenticate(token);
            return true;
        } catch (AccessRefusal.BadToken refusal) {
            return false;
        }
    }
}
