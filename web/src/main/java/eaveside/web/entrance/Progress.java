package eaveside.web.entrance;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;

/**
 * How far the request on a connection has come, and whether it has taken too long for that. The limits are common practice, no
 * source; a head or a body that is sent at human speed is an attempt to hold the server.
 */
final class Progress {
    /** For the head of a request, from its first byte. */
    static final Duration HEAD = Duration.ofSeconds(10);

    /** For a body, beside what its size takes. */
    static final Duration BODY = Duration.ofSeconds(20);

    /** For the answer: making it and handing it over. */
    static final Duration ANSWER = Duration.ofMinutes(3);

    /** Until the caller takes something more of an answer. */
    static final Duration UNTAKEN = Duration.ofSeconds(30);

    /** What somebody who was refused gets to read why. */
    static final Duration LEAVING = Duration.ofSeconds(2);

    /** The least that a phone with little signal sends in a second, in bytes. */
    static final int SLOWEST = 2_000;

    /** What the server reads of a head, in bytes (its default): what is longer it ends. */
    static final int LONGEST_HEAD = 8_192;

    private static final byte[] NOTHING = {};

    private enum Phase {
        IDLE,
        HEAD,
        BODY,
        ANSWER,
        LEAVING
    }

    private final String network;
    private volatile Phase phase = Phase.IDLE;
    private volatile long since;
    private volatile long heard;
    private volatile int received;
    private volatile int parts;

    /** What has come of a head that is not whole. */
    private volatile byte[] begun = NOTHING;

    private volatile String head = "";
    private volatile long awaited;
    private volatile boolean followed;
    private volatile long untaken;
    private volatile long takenLast;

    /** @param  network where the caller is counted */
    Progress(String network) {
        this.network = network;
    }

    String network() {
        return network;
    }

    /**
     * Bytes came in. Answers what is to be read now: nothing while a head is not whole, else the whole of it with what came of its body.
     * What comes behind the body is left out: whoever sends it before they are answered is answered once, and asks again.
     */
    byte[] receives(byte[] bytes, long now) {
        if (phase == Phase.IDLE && Heads.isBlank(bytes)) {
            return NOTHING; // RFC 9112, 2.2: an empty line before a request is none
        }
        if (phase == Phase.IDLE || phase == Phase.ANSWER) {
            received = 0;
            begun = NOTHING;
            followed = false;
            to(Phase.HEAD, now);
        }
        if (phase != Phase.HEAD) {
            return within(bytes);
        }
        byte[] all = Arrays.copyOf(begun, begun.length + bytes.length);
        System.arraycopy(bytes, 0, all, begun.length, bytes.length);
        int end = Heads.end(all);
        if (end < 0) {
            begun = all;
            return NOTHING;
        }
        begun = NOTHING;
        int begin = Heads.begin(all);
        head = new String(all, begin, end - begin, StandardCharsets.ISO_8859_1);
        awaited = end - begin + Heads.length(head);
        return within(Arrays.copyOfRange(all, begin, all.length));
    }

    private byte[] within(byte[] bytes) {
        int ours = (int) Math.min(bytes.length, awaited);
        awaited -= ours;
        followed |= !Heads.isBlank(Arrays.copyOfRange(bytes, ours, bytes.length));
        return ours == bytes.length ? bytes : Arrays.copyOf(bytes, ours);
    }

    /** The head of the request that is coming in, as it was sent. */
    String head() {
        return head;
    }

    /** Whether so much came of a head that is not whole that the server would not read it. */
    boolean isHeadTooLong() {
        return begun.length > LONGEST_HEAD;
    }

    /** Whether something came behind the request before it was answered. */
    boolean isFollowed() {
        return followed;
    }

    /** How much of an answer waits for the caller. */
    void waits(long bytes, long now) {
        if (bytes == 0 || untaken == 0 || bytes < untaken) {
            takenLast = now;
        }
        untaken = bytes;
    }

    /** When the caller took something of an answer last, or had nothing to take. */
    long takenLast() {
        return takenLast;
    }

    /** The head is whole, and this much of its body is there. */
    void holds(int bytes, long now) {
        if (phase != Phase.BODY) {
            parts = 0;
            to(Phase.BODY, now);
        }
        received = bytes;
        heard = now;
        parts++;
    }

    /** The request is whole. */
    void answers(long now) {
        to(Phase.ANSWER, now);
    }

    /** It is answered. */
    void rests(long now) {
        if (phase == Phase.ANSWER) {
            received = 0;
            to(Phase.IDLE, now);
        }
    }

    /** It was refused; nothing more of it is looked at. */
    void leaves(long now) {
        received = 0;
        to(Phase.LEAVING, now);
    }

    boolean isReceiving() {
        return phase == Phase.BODY;
    }

    boolean isAnswered() {
        return phase == Phase.ANSWER;
    }

    boolean isLeaving() {
        return phase == Phase.LEAVING;
    }

    /** How much of a body there is, of one that is still coming in or that is worked on. */
    int held() {
        return received;
    }

    /** In how many parts the body came so far. */
    int parts() {
        return parts;
    }

    /** When the latest part of a body came. */
    long heard() {
        return heard;
    }

    boolean isLate(long now) {
        Duration most = switch (phase) {
            case IDLE -> Duration.ofDays(1); // the server itself ends what is silent
            case HEAD -> HEAD;
            case BODY -> BODY.plusSeconds(received / SLOWEST);
            case ANSWER -> ANSWER;
            case LEAVING -> LEAVING;
        };
        return now - since > most.toNanos() || untaken > 0 && now - takenLast > UNTAKEN.toNanos();
    }

    private void to(Phase next, long now) {
        since = now;
        phase = next;
    }
}
