package eaveside.web.entrance;

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
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** What every request passes that came whole: who sent it to our proxy, a place to be worked on, and until when. */
public class Entrance implements Filter {
    @Inject
    @ConfigProperty(name = "eaveside.proxies", defaultValue = " ")
    String proxyList;

    @Inject
    Shares shares;

    @Inject
    Deadlines deadlines;

    private Proxies proxies = Proxies.of("");

    @Override
    public void init(FilterConfig config) {
        proxies = Proxies.of(proxyList);
    }

    @Override
    public void doFilter(ServletRequest sent, ServletResponse answer, FilterChain chain)
            throws IOException, ServletException {
        HttpServletRequest request = Forwarded.through(proxies, (HttpServletRequest) sent);
        HttpServletResponse response = (HttpServletResponse) answer;
        try (Shares.@Nullable Place place = shares.place(Credential.shownBy(request))) {
            if (place == null) {
                SafeAnswers.secure(request, response);
                PlainAnswer.busy().write(request, response, request.getRequestURI());
                return;
            }
            deadlines.begins();
            try {
                SafeAnswers.secure(request, response);
                chain.doFilter(request, response);
            } finally {
                deadlines.ends();
            }
        }
    }
}
