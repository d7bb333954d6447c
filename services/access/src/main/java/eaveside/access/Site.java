package eaveside.access;

import eaveside.kernel.Decision;
import java.net.URI;

/**
 * Where a browser sees this program. A passkey is made for one host and good for no other (Web Authentication Level 3, 13.4.9), so
 * that a site that only looks like ours gets nothing.
 *
 * @param  origin scheme, host and port as the browser has them, such as {@code https://eaveside.example.com}
 */
@Decision
public record Site(String origin) {
    public String host() {
        String host = URI.create(origin).getHost();
        if (host == null) {
            throw new AccessRefusal.BadPasskey("This address takes no passkeys");
        }
        return host;
    }
}
