package eaveside.web.security;

import eaveside.web.Page;
import java.util.Set;

/**
 * A "no", or a fault, for people.
 *
 * @param  key    of the text to show with the detail, or empty where the detail is the text
 * @param  detail the refusal's own words, or a fault's correlation id
 */
public record RefusalPage(int status, String key, String detail) implements Page {
    /** What there are words of its own for; another is told by the first of its hundred. */
    private static final Set<Integer> NAMED = Set.of(400, 401, 403, 404, 405, 406, 409, 413, 415, 422, 429, 500);

    /** The status that the heading is about. */
    public int heading() {
        return NAMED.contains(status) ? status : status < 500 ? 400 : 500;
    }
}
