package eaveside.web.security;

import java.net.URI;

/** Where somebody wanted to go before something else had to be done first. */
public final class Destination {
    /** Of an address to go back to, in characters. */
    private static final int LONGEST = 500;

    private Destination() {}

    /** Only a path of our own that is one (RFC 3986): never a way to send people elsewhere. The start page otherwise. */
    public static String ours(String to) {
        try {
            URI asked = URI.create(to);
            boolean ours = to.length() <= LONGEST
                    && to.startsWith("/")
                    && !to.startsWith("//")
                    && asked.getRawAuthority() == null
                    && to.chars().allMatch(c -> c > 0x20 && c < 0x7f);
            return ours ? to : "/";
        } catch (IllegalArgumentException e) {
            return "/";
        }
    }
}
