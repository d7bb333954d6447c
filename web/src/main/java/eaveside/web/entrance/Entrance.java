package eaveside.web.entrance;

import eaveside.kernel.Network;
import jakarta.inject.Inject;
import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.FilterConfig;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** What every request passes that came whole: who sent it to our proxy, a place to be worked on, and until when. */
public class Entrance implements Filter {
    private static final Logger LOG = Logger.getLogger(Entrance.class.getName());

    @Inject
    @ConfigProperty(name = "eaveside.proxies", defaultValue = " ")
    String proxyList;

    @Inject
    Shares shares;

    @Inject
    Deadlines deadlines;

    private @Nullable Proxies proxies;

    /** The server goes on without a filter that does not start: so it starts, and lets nothing through. */
    @Override
    public void init(FilterConfig config) {
        try {
            proxies = Proxies.of(proxyList);
        } catch (IllegalArgumentException e) {
            LOG.log(Level.SEVERE, e, () -> "Nothing is answered: " + e.getMessage());
        }
    }

    @Override
    public void doFilter(ServletRequest sent, ServletResponse answer, FilterChain chain)
            throws IOException, ServletException {
        HttpServletResponse response = (HttpServletResponse) answer;
        if (proxies == null) {
            SafeAnswers.secure((HttpServletRequest) sent, response);
            response.sendError(HttpServletResponse.SC_SERVICE_UNAVAILABLE);
            return;
        }
        // As it came: a head need not say it.
        if (!(sent.getAttribute(Threshold.SIZE_OF_BODY) instanceof Integer bytes)) {
            // Come past the threshold: the server has only just begun to listen.
            response.setHeader("Connection", "close");
            busy((HttpServletRequest) sent, response);
            return;
        }
        HttpServletRequest request = Forwarded.through(proxies, (HttpServletRequest) sent);
        String credential = Credential.shownBy(request);
        String network = Network.of(request.getRemoteAddr());
        try (Shares.@Nullable Place place = shares.place(credential, network)) {
            if (place == null) {
                busy(request, response);
                return;
            }
            deadlines.begins();
            try (Shares.@Nullable Place room = shares.room(credential, bytes)) {
                if (room == null) {
                    busy(request, response);
                    return;
                }
                SafeAnswers.secure(request, response);
                chain.doFilter(request, response);
            } finally {
                deadlines.ends();
            }
        }
    }

    private static void busy(HttpServletRequest request, HttpServletResponse response) throws IOException {
        SafeAnswers.secure(request, response);
        PlainAnswer.busy().write(request, response, request.getRequestURI());
    }
}
