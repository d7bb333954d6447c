package eaveside.web.entrance;

import java.nio.ByteBuffer;
import java.util.Locale;
import org.glassfish.grizzly.Buffer;
import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.util.Header;
import org.jspecify.annotations.Nullable;

/** How large a body may be. */
final class Sizes {
    /** Room for one photo of eight megabytes and its form, or a file of customers. */
    static final int MOST = 12_000_000;

    /** Signing in, and whatever else comes from somebody who shows nothing that could let them in. */
    static final int OF_STRANGERS = 16_000;

    /** Fewer parts than bytes: a part costs the server far more than the byte that it may hold. */
    static final int MOST_PARTS = 20_000;

    /** More than any form here has, with what a browser sends of each. */
    static final int MOST_FIELDS = 20_000;

    /** Photos go up one by one. */
    static final int MOST_SECTIONS = 100;

    /** Five hundred rows of all that a row can have. */
    static final int MOST_VALUES = 50_000;

    private Sizes() {}

    static int most(HttpRequestPacket request) {
        String cookies = request.getHeader(Header.Cookie);
        boolean stranger =
                (cookies == null || !cookies.contains("eaveside=")) && request.getHeader(Header.Authorization) == null;
        return stranger || request.getRequestURI().startsWith("/sign-in") ? OF_STRANGERS : MOST;
    }

    /**
     * What a body has too many of, in words for its sender; null for nothing. What reads bodies makes objects of each field, part and value
     * before anything of ours can count them, many times as large as what was sent.
     */
    static @Nullable String tooMany(@Nullable String type, Buffer body) {
        String kind = type == null ? "" : type.toLowerCase(Locale.ROOT);
        if (kind.startsWith("application/x-www-form-urlencoded")) {
            return count(body, '&') > MOST_FIELDS ? "a form has at most " + MOST_FIELDS + " fields" : null;
        }
        if (kind.startsWith("multipart/")) {
            return borders(body) > MOST_SECTIONS ? "a form with files has at most " + MOST_SECTIONS + " parts" : null;
        }
        return kind.contains("json") && count(body, ',') > MOST_VALUES
                ? "a body has at most " + MOST_VALUES + " values"
                : null;
    }

    private static int count(Buffer body, char sign) {
        ByteBuffer bytes = body.toByteBuffer();
        int found = 0;
        for (int i = bytes.position(); i < bytes.limit(); i++) {
            found += bytes.get(i) == sign ? 1 : 0;
        }
        return found;
    }

    /** Lines that begin with two dashes, as the border between two parts does (RFC 2046, 5.1.1). */
    private static int borders(Buffer body) {
        ByteBuffer bytes = body.toByteBuffer();
        int found = 0;
        for (int i = bytes.position(); i + 2 < bytes.limit(); i++) {
            found += bytes.get(i) == '\n' && bytes.get(i + 1) == '-' && bytes.get(i + 2) == '-' ? 1 : 0;
        }
        return found;
    }
}
