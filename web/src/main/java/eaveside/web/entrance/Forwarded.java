package eaveside.web.entrance;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A request as its caller sent it to our proxy: by the caller's address, and with TLS where the caller used it. */
final class Forwarded extends HttpServletRequestWrapper {
    private final String caller;
    private final boolean secure;
    private final @Nullable String host;

    private Forwarded(HttpServletRequest request, String caller, boolean secure, @Nullable String host) {
        super(request);
        this.caller = caller;
        this.secure = secure;
        this.host = host;
    }

    /** The request itself where it does not come from a proxy of ours. */
    static HttpServletRequest through(Proxies proxies, HttpServletRequest request) {
        if (!proxies.include(request.getRemoteAddr())) {
            return request;
        }
        String caller =
                proxies.caller(request.getRemoteAddr(), Collections.list(request.getHeaders("X-Forwarded-For")));
        boolean secure = "https".equals(only(request, "X-Forwarded-Proto"));
        String host = only(request, "X-Forwarded-Host");
        return new Forwarded(request, caller, secure, host == null || !Heads.isHost(host) ? null : host);
    }

    private static @Nullable String only(HttpServletRequest request, String name) {
        List<String> values = Collections.list(request.getHeaders(name));
        return values.size() == 1 ? values.getFirst().strip() : null;
    }

    @Override
    public String getRemoteAddr() {
        return caller;
    }

    @Override
    public String getRemoteHost() {
        return caller;
    }

    @Override
    public boolean isSecure() {
        return secure;
    }

    @Override
    public String getScheme() {
        return secure ? "https" : "http";
    }

    @Override
    public String getHeader(String name) {
        return name.equalsIgnoreCase("Host") && host != null ? host : super.getHeader(name);
    }
}
