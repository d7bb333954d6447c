package eaveside.web.entrance;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.glassfish.grizzly.Buffer;
import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.util.Header;
import org.jspecify.annotations.Nullable;

/** How large a body may be, and of how many things. */
final class Sizes {
    /** Room for one photo of eight megabytes and its form, or a file of customers. */
    static final int OF_FILES = 12_000_000;

    /** Five hundred rows, whatever is typed into them. */
    static final int OF_FORMS = 4_000_000;

    /** Signing in, and whatever else comes from somebody who shows nothing that could let them in. */
    static final int OF_STRANGERS = 16_000;

    /** More than any form here has, with what a browser sends of each. */
    static final int MOST_FIELDS = 20_000;

    /** Photos go up one by one. */
    static final int MOST_SECTIONS = 100;

    /** Five hundred rows of all that a row can have. */
    static final int MOST_VALUES = 50_000;

    private static final String SIGN_IN = "/sign-in";

    /** Takes a file inside a form: the one that was tried out before. */
    private static final String PACKED_FILE = "/customers/import/run";

    /** Lines of the head of a part; browsers send two. */
    private static final int MOST_LINES = 20;

    /** With one border, made of what it may be made of (RFC 2046, 5.1.1). */
    private static final Pattern WITH_BORDER = Pattern.compile(
            "(?i)multipart/[a-z-]+\\s*(?:;\\s*(?!boundary)[a-z]+=(?:[^;\"]*|\"[^\"]*\"\\s*))*;\\s*boundary=(\"?)"
                    + "([0-9a-z'()+_,./:=?-]{1,70})\\1\\s*(?:;\\s*(?!boundary)[a-z]+=(?:[^;\"]*|\"[^\"]*\"\\s*))*");

    /** In characters; browsers send some seventy. */
    private static final int MOST_OF_A_TYPE = 500;

    private static final String JSON = "json";
    private static final String FORM = "form-urlencoded";

    private Sizes() {}

    /** In how many parts a body of that size may come: each costs the server far more than the byte that it may hold. */
    static int mostParts(int bytes) {
        return 100 + bytes / 100;
    }

    /** Whether it shows nothing that could let its sender in, and is not about that: signed in they might send more. */
    static boolean isToSignInFirst(HttpRequestPacket request) {
        return isOfAStranger(request) && !request.getRequestURI().startsWith(SIGN_IN);
    }

    private static boolean isOfAStranger(HttpRequestPacket request) {
        String cookies = request.getHeader(Header.Cookie);
        return (cookies == null || !cookies.contains("eaveside=")) && request.getHeader(Header.Authorization) == null;
    }

    static int most(HttpRequestPacket request) {
        if (isOfAStranger(request) || request.getRequestURI().startsWith(SIGN_IN)) {
            return OF_STRANGERS;
        }
        String kind = kind(request);
        if (request.getRequestURI().equals(PACKED_FILE)) {
            return OF_FILES;
        }
        return kind.endsWith(JSON) || kind.endsWith(FORM) ? OF_FORMS : OF_FILES;
    }

    /**
     * What a body has too many of, in words for its sender; null for nothing. What reads bodies makes objects of each field, part and value
     * before anything of ours can count them, many times as large as what was sent.
     */
    static @Nullable String tooMany(HttpRequestPacket request, Buffer body) {
        String kind = kind(request);
        if (kind.startsWith("multipart/")) {
            return tooManyParts(request.getContentType(), body);
        }
        if (kind.endsWith(JSON)) {
            return count(body, ',') > MOST_VALUES ? "a body has at most " + MOST_VALUES + " values" : null;
        }
        return kind.endsWith(FORM) && count(body, '&') > MOST_FIELDS
                ? "a form has at most " + MOST_FIELDS + " fields"
                : null;
    }

    /** Without its parameters, in which anything may be written. */
    private static String kind(HttpRequestPacket request) {
        String type = request.getContentType();
        return type == null ? "" : type.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
    }

    private static int count(Buffer body, char sign) {
        int found = 0;
        for (int i = body.position(); i < body.limit(); i++) {
            found += body.get(i) == sign ? 1 : 0;
        }
        return found;
    }

    private static @Nullable String tooManyParts(String type, Buffer body) {
        Matcher known = WITH_BORDER.matcher(type.strip());
        // The expression goes one step deeper for each parameter.
        if (type.length() > MOST_OF_A_TYPE || !known.matches()) {
            return "a form with files says one border between its parts";
        }
        byte[] border = ("--" + known.group(2)).getBytes(StandardCharsets.ISO_8859_1);
        int parts = 0;
        int linesOfHead = -1; // none is being read
        byte before = '\n';
        byte beforeThat = '\n';
        for (int i = body.position(); i < body.limit(); i++) {
            byte now = body.get(i);
            // What reads parts takes a border after either end of a line, and lines of a head by the one alone.
            if (now == '-' && (before == '\n' || before == '\r') && begins(body, i, border)) {
                parts++;
                linesOfHead = 0;
            }
            if (now == '\n' && linesOfHead >= 0) {
                boolean empty = before == '\n' || before == '\r' && beforeThat == '\n';
                linesOfHead = empty ? -1 : linesOfHead + 1;
                if (linesOfHead > MOST_LINES) {
                    return "a part of a form with files has at most " + MOST_LINES + " lines of head";
                }
            }
            beforeThat = before;
            before = now;
        }
        return parts > MOST_SECTIONS + 1 /* the border at the end */
                ? "a form with files has at most " + MOST_SECTIONS + " parts"
                : null;
    }

    private static boolean begins(Buffer body, int at, byte[] text) {
        for (int i = 0; i < text.length; i++) {
            if (at + i >= body.limit() || body.get(at + i) != text[i]) {
                return false;
            }
        }
        return true;
    }
}
