package eaveside.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** An address within the program with its query, from which is left out what has no value. */
public final class Link {
    private final StringBuilder text;

    public Link(String path) {
        text = new StringBuilder(path);
    }

    /** @param  value null or blank for none */
    public Link with(String name, @Nullable Object value) {
        if (value != null && !value.toString().isBlank()) {
            text.append(text.indexOf("?") < 0 ? '?' : '&')
                    .append(name)
                    .append('=')
                    .append(URLEncoder.encode(value.toString(), StandardCharsets.UTF_8));
        }
        return this;
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
