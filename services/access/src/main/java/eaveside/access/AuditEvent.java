package eaveside.access;

import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A line for the audit log. Never put a password, a token or a customer's private data in it.
 *
 * @param  action  what was done or tried, such as {@code invoice.issue}
 * @param  by      who; null for nobody signed in, and for the command line
 * @param  subject what it was done to: a username, an id, a path; clipped at 200 characters
 * @param  detail  what else helps to understand it; clipped at 1,000 characters
 * @param  address the network address that it came from; empty where there is none
 */
public record AuditEvent(
        String action, Outcome outcome, @Nullable UserId by, String subject, String detail, String address) {
    private static final Pattern ACTION = Pattern.compile("[a-z][a-z0-9.-]{0,59}");

    /** Whether it came about. */
    public enum Outcome {
        DONE,
        REFUSED
    }

    /** Clips what is too long, for an audit log must not refuse; refuses only an action that is no name. */
    public AuditEvent {
        if (!isAction(action)) {
            throw new AccessRefusal.BadAction();
        }
        subject = clipped(subject, 200);
        detail = clipped(detail, 1000);
        address = clipped(address, 100);
    }

    public static AuditEvent done(String action, @Nullable UserId by, String subject) {
        return new AuditEvent(action, Outcome.DONE, by, subject, "", "");
    }

    public static AuditEvent refused(String action, @Nullable UserId by, String subject) {
        return new AuditEvent(action, Outcome.REFUSED, by, subject, "", "");
    }

    public AuditEvent with(String newDetail) {
        return new AuditEvent(action, outcome, by, subject, newDetail, address);
    }

    public AuditEvent from(String newAddress) {
        return new AuditEvent(action, outcome, by, subject, detail, newAddress);
    }

    static boolean isAction(String text) {
        return ACTION.matcher(text).matches();
    }

    private static String clipped(String text, int longest) {
        String storable = text.replace('\u0000', '\uFFFD');
        return Texts.optional(
                "text", storable.length() > longest ? storable.substring(0, longest - 1) + "…" : storable, longest);
    }
}
