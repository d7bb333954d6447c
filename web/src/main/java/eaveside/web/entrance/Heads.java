package eaveside.web.entrance;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.Protocol;
import org.glassfish.grizzly.http.util.Header;
import org.jspecify.annotations.Nullable;

/**
 * Looks at the head of a request for what a proxy and the server could read in two ways (RFC 9112, sections 3.2 and 6.3), and
 * for addresses that none of ours has.
 */
final class Heads {
    private static final Set<String> METHODS = Set.of("GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS");

    /**
     * Beside letters and digits, the characters of a path (RFC 3986, 3.3) but for {@code ;} and {@code :}, which carry parameters and
     * mean something to the server.
     */
    private static final String IN_PATH = "-._~!$&'()*+,=@/%";

    /** The same of a query (RFC 3986, 3.4). */
    private static final String IN_QUERY = IN_PATH + ";:?|";

    /** Escapes that stand for what a path may not hold: control characters, separators, and what is not UTF-8. */
    private static final Pattern CONTROL = Pattern.compile("%(?:[01][0-9A-Fa-f]|7[Ff]|2[Ff]|5[Cc]|3[AaBb])");

    /**
     * Escapes of what needs none (RFC 3986, 2.3), empty parts and parts of dots alone: such an address has one spelling, for whoever decides by how it
     * begins as for whoever reads it.
     */
    private static final Pattern NEEDLESS =
            Pattern.compile("%(?:3[0-9]|[46][1-9A-Fa-f]|[57][0-9Aa]|2[DdEe]|5[Ff]|7[Ee])|//|/\\.{1,2}(?:/|$)");

    /** One header on a line of its own (RFC 9112, 5): nothing between its name and the colon, and no line folding. */
    private static final Pattern FIELD = Pattern.compile("[!#$%&'*+.^_`|~0-9A-Za-z-]+:[\\t\\x20-\\x7e\\x80-\\xff]*");

    private static final String LENGTH = "\\d{1,18}";

    /** A name or an address, with a port or without (RFC 9110, 7.2; RFC 3986, 3.2.2). */
    private static final Pattern HOST =
            Pattern.compile("(?:[A-Za-z0-9._-]{1,253}|\\[[0-9A-Fa-f:.]{2,45}])(?::\\d{1,5})?");

    /** One type, not several and not a pattern of types. */
    private static final Pattern TYPE = Pattern.compile("[^*,;]+(?:;[^*]*)?");

    /** One blank between its parts (RFC 9112, 3), and where the address is one in full (3.2.2) the host of that. */
    private static final Pattern FIRST = Pattern.compile("[A-Z]+ (?:http://([^/?#]*))?/[!-~]* HTTP/1\\.[01]");

    private Heads() {}

    static boolean isHost(String text) {
        return HOST.matcher(text).matches();
    }

    /**
     * What is wrong with the head, in words for its sender; null for nothing.
     *
     * @param  head as it was sent
     */
    static @Nullable String wrong(HttpRequestPacket request, String head) {
        if (!METHODS.contains(request.getMethod().getMethodString())) {
            return "the method is not known here";
        }
        if (request.getProtocol() != Protocol.HTTP_1_1 && request.getProtocol() != Protocol.HTTP_1_0) {
            return "this version of the protocol is not spoken here";
        }
        // As it was sent: the server has made up its mind about some fields and dropped others.
        List<String> sent = lines(head);
        List<String> lines = sent.subList(1, sent.size());
        if (!lines.stream().allMatch(line -> FIELD.matcher(line).matches())) {
            return "a header is none";
        }
        List<String> hosts = values(lines, "host");
        if (hosts.size() != 1 || !isHost(hosts.getFirst())) {
            return "there must be one Host";
        }
        Matcher first = FIRST.matcher(sent.getFirst());
        if (!first.matches() || first.group(1) != null && !first.group(1).equalsIgnoreCase(hosts.getFirst())) {
            return "the first line must be a method, an address of that Host and a version";
        }
        List<String> types = values(lines, "content-type");
        if (types.size() > 1 || !types.stream().allMatch(Heads::isType)) {
            return "what the body is is not clear";
        }
        List<String> lengths = values(lines, "content-length");
        List<String> encodings = values(lines, "transfer-encoding");
        if (lengths.size() + encodings.size() > 1) {
            return "the length of the body is told twice";
        }
        if (!lengths.stream().allMatch(length -> length.matches(LENGTH))
                || !encodings.stream().allMatch("chunked"::equals)
                || !encodings.isEmpty() && request.getProtocol() == Protocol.HTTP_1_0) {
            return "the length of the body is not clear";
        }
        if (!values(lines, "expect").stream().allMatch("100-continue"::equalsIgnoreCase)) {
            return "what is expected is not known here";
        }
        if (!isReadAs(request, hosts.getFirst(), lengths, !encodings.isEmpty())) {
            return "a header can be read in two ways";
        }
        return wrongTarget(request.getRequestURI(), request.getQueryString());
    }

    /** One type, and nothing of it in other signs than those that everything here is in. */
    private static boolean isType(String text) {
        return TYPE.matcher(text).matches() && Arrays.stream(text.split(";")).allMatch(Heads::isInOurSigns);
    }

    /** No expression here either: a stranger's head may hold thousands of blanks, and one that looks for an end behind each tries them all. */
    private static boolean isInOurSigns(String parameter) {
        int named = parameter.toLowerCase(Locale.ROOT).indexOf("charset");
        if (named < 0) {
            return true;
        }
        // Wherever the word stands: readers that look for it elsewhere than another would find another.
        int equals = parameter.indexOf('=', named);
        String value = parameter.substring(equals + 1).strip();
        boolean quoted = value.length() > 1 && value.startsWith("\"") && value.endsWith("\"");
        return equals > 0 && (quoted ? value.substring(1, value.length() - 1) : value).equalsIgnoreCase("utf-8");
    }

    /** Whether the server has made of the fields that matter what stands here. */
    private static boolean isReadAs(HttpRequestPacket request, String host, List<String> lengths, boolean chunked) {
        long length = lengths.isEmpty() ? -1 : Long.parseLong(lengths.getFirst());
        return host.equalsIgnoreCase(request.getHeader(Header.Host))
                && request.isChunked() == chunked
                && request.getContentLength() == length;
    }

    /**
     * Where the head is over in what has come, with an empty line, whichever way lines end; negative where it is not. Empty lines before
     * it are none of it.
     */
    static int end(byte[] bytes) {
        for (int i = begin(bytes) + 1; i < bytes.length; i++) {
            if (bytes[i] == '\n' && (bytes[i - 1] == '\n' || bytes[i - 1] == '\r' && bytes[i - 2] == '\n')) {
                return i + 1;
            }
        }
        return -1;
    }

    /** Where a head begins: behind ends of lines, of which there may be some before it. */
    static int begin(byte[] bytes) {
        int i = 0;
        while (i < bytes.length && (bytes[i] == '\r' || bytes[i] == '\n')) {
            i++;
        }
        return i;
    }

    /** Whether there are only ends of lines. */
    static boolean isBlank(byte[] bytes) {
        return begin(bytes) == bytes.length;
    }

    /**
     * How long the body is by its head, in bytes; nothing where that is not clear, which is refused then. Whatever comes, where the head
     * does not tell: the server has to see some of it before it can be refused.
     */
    static long length(String head) {
        List<String> lines = lines(head);
        if (!values(lines, "transfer-encoding").isEmpty()) {
            return Integer.MAX_VALUE;
        }
        List<String> lengths = values(lines, "content-length");
        return lengths.size() == 1 && lengths.getFirst().matches(LENGTH) ? Long.parseLong(lengths.getFirst()) : 0;
    }

    private static List<String> lines(String head) {
        return Arrays.stream(head.split("\n", -1))
                .map(line -> line.endsWith("\r") ? line.substring(0, line.length() - 1) : line)
                .takeWhile(line -> !line.isEmpty())
                .toList();
    }

    private static List<String> values(List<String> lines, String name) {
        return lines.stream()
                .filter(line -> line.regionMatches(true, 0, name + ":", 0, name.length() + 1))
                .map(line -> line.substring(name.length() + 1).strip())
                .toList();
    }

    private static @Nullable String wrongTarget(String path, @Nullable String query) {
        if (!path.startsWith("/") || !isMadeOf(path, IN_PATH) || query != null && !isMadeOf(query, IN_QUERY)) {
            return "the address holds characters that must be escaped";
        }
        if (CONTROL.matcher(path).find() || NEEDLESS.matcher(path).find() || !isUtf8(path)) {
            return "there is nothing at such an address";
        }
        return null;
    }

    /** No expression: one of alternatives takes a frame of the stack for each character, and a head has thousands. */
    private static boolean isMadeOf(String text, String signs) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean known =
                    c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || signs.indexOf(c) >= 0;
            if (!known || c == '%' && !isEscape(text, i)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isEscape(String text, int at) {
        return at + 2 < text.length()
                && Character.digit(text.charAt(at + 1), 16) >= 0
                && Character.digit(text.charAt(at + 2), 16) >= 0;
    }

    private static boolean isUtf8(String path) {
        byte[] bytes = new byte[path.length()];
        int n = 0;
        for (int i = 0; i < path.length(); i++) {
            if (path.charAt(i) == '%') {
                bytes[n++] = (byte) Integer.parseInt(path.substring(i + 1, i + 3), 16);
                i += 2;
            } else {
                bytes[n++] = (byte) path.charAt(i);
            }
        }
        return !new String(bytes, 0, n, StandardCharsets.UTF_8).contains("\ufffd");
    }
}
