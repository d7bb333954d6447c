package eaveside.web.entrance;

import eaveside.kernel.Digest;
import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.core.HttpHeaders;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a request shows to be let in: the secret of a session in a cookie, or a script's bearer token. */
public final class Credential {
    private static final String BEARER = "Bearer ";

    /**
     * A cookie of ours. Under TLS its name says that it is for this host alone and never travels without (RFC 6265bis,
     * 4.1.3.2), so that no neighboring host can plant one.
     */
    public enum Kept {
        SESSION("eaveside"),
        /** By which a browser is known again that has signed in before. */
        BROWSER("eaveside-browser");

        private final String plainName;

        Kept(String plainName) {
            this.plainName = plainName;
        }

        private String name(HttpServletRequest request) {
            return request.isSecure() ? "__Host-" + plainName : plainName;
        }

        /** Null where there is none, or more than one: nobody knows which is meant. */
        public @Nullable String in(HttpServletRequest request) {
            Cookie @Nullable [] sent = request.getCookies();
            if (sent == null) {
                return null;
            }
            List<String> values = Arrays.stream(sent)
                    .filter(cookie -> cookie.getName().equals(name(request)))
                    .map(Cookie::getValue)
                    .toList();
            return values.size() == 1 ? values.getFirst() : null;
        }

        /**
         * The header that leaves it with the browser. Written here: the platform's own adds a version from a standard of 1997,
         * with which some clients quote what they send back.
         *
         * @param  lasts for how long the browser keeps it from now on; null until it is closed
         */
        public String cookie(HttpServletRequest request, String value, @Nullable Duration lasts, Clock clock) {
            String kept = lasts == null
                    ? ""
                    : "; Max-Age=" + lasts.toSeconds() + expires(clock.instant().plus(lasts));
            return cookie(request, value) + kept;
        }

        public String removed(HttpServletRequest request) {
            return cookie(request, "") + "; Max-Age=0" + expires(Instant.EPOCH);
        }

        private String cookie(HttpServletRequest request, String value) {
            String tls = request.isSecure() ? "; Secure" : "";
            return name(request) + "=" + value + "; Path=/; HttpOnly; SameSite=Lax" + tls;
        }

        /** Browsers go by the age; some scripts' clients know the date alone. */
        private static String expires(Instant at) {
            return "; Expires=" + DateTimeFormatter.RFC_1123_DATE_TIME.format(at.atOffset(ZoneOffset.UTC));
        }
    }

    private Credential() {}

    /** A script's token; null for none. The word before it may be written in any case (RFC 9110, 11.1). */
    public static @Nullable String bearer(HttpServletRequest request) {
        String header = request.getHeader(HttpHeaders.AUTHORIZATION);
        return header != null && header.regionMatches(true, 0, BEARER, 0, BEARER.length())
                ? header.substring(BEARER.length())
                : null;
    }

    /** What the request shows, hashed; null for nothing. */
    static @Nullable String shownBy(HttpServletRequest request) {
        String token = bearer(request);
        String shown = token != null ? token : Kept.SESSION.in(request);
        return shown == null ? null : Digest.sha256(shown);
    }
}
