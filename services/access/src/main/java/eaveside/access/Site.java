package eaveside.access;

import eaveside.kernel.Decision;
import java.net.URI;
import java.net.URISyntaxException;

/**
 * Where a browser sees this program. A passkey is made for one host and good for no other (Web Authentication Level 3, 13.4.9), so
 * that a site that only looks like ours gets nothing.
 *
 * @param  origin scheme, host and port as the browser has them, such as {@code https://eaveside.example.com}
 */
@Decision
public record Site(String origin) {
    public String host() {
        try {
            String host = new URI(origin).getHost();
            if (host != null) {
                return host;
            }
        } catch (URISyntaxException e) {
            // as an address without a host
        }
        throw new AccessRefusal.BadPasskey("This address takes no passkeys");
    }
}
