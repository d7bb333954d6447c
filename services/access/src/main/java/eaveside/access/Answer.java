package eaveside.access;

import org.jspecify.annotations.Nullable;

/**
 * What a request was answered with.
 *
 * @param  status   of HTTP (RFC 9110, section 15): that it went well, or where to go on
 * @param  location where the browser goes on, or what was made
 * @param  body     in JSON; null where a page follows
 */
public record Answer(
        int status, @Nullable String location, @Nullable String body) {
    public Answer {
        if (status < 200 || status >= 400) {
            throw new IllegalArgumentException("a refusal is no answer to keep: " + status);
        }
    }
}
