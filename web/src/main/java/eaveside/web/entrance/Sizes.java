package eaveside.web.entrance;

import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.util.Header;

/** How large a body may be. */
final class Sizes {
    /** Room for one photo of eight megabytes and its form, or a file of customers. */
    static final int MOST = 12_000_000;

    /** Signing in, and whatever else comes from somebody who shows nothing that could let them in. */
    static final int OF_STRANGERS = 16_000;

    /** Fewer parts than bytes: a part costs the server far more than the byte that it may hold. */
    static final int MOST_PARTS = 20_000;

    private Sizes() {}

    static int most(HttpRequestPacket request) {
        String cookies = request.getHeader(Header.Cookie);
        boolean stranger =
                (cookies == null || !cookies.contains("eaveside=")) && request.getHeader(Header.Authorization) == null;
        return stranger || request.getRequestURI().startsWith("/sign-in") ? OF_STRANGERS : MOST;
    }
}
