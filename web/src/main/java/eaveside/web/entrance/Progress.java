package eaveside.web.entrance;

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
    private volatile byte[] head = NOTHING;

    private volatile boolean folded;

    /** @param  network where the caller is counted */
    Progress(String network) {
        this.network = network;
    }

    String network() {
        return network;
    }

    /**
     * Bytes came in. Answers what is to be read now: nothing while a head is not whole, else the whole of it with what came behind.
     */
    byte[] receives(byte[] bytes, long now) {
        if (phase == Phase.IDLE || phase == Phase.ANSWER) {
            received = 0;
            head = NOTHING;
            to(Phase.HEAD, now);
        }
        if (phase != Phase.HEAD) {
            return bytes;
        }
        byte[] all = Arrays.copyOf(head, head.length + bytes.length);
        System.arraycopy(bytes, 0, all, head.length, bytes.length);
        boolean readable = all.length >= LONGEST_HEAD || Heads.isWhole(all);
        head = readable ? NOTHING : all;
        folded = readable && Heads.isFolded(all);
        return readable ? all : NOTHING;
    }

    /** Whether a header of the request that begins here goes on in another line. */
    boolean isFolded() {
        return folded;
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
        return now - since > most.toNanos();
    }

    private void to(Phase next, long now) {
        since = now;
        phase = next;
    }
}
