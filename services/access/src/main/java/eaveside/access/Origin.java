package eaveside.access;

import jakarta.enterprise.context.ApplicationScoped;
import org.jspecify.annotations.Nullable;

/**
 * Where the work of this thread was asked from, and whether the audit log has been told of it: whoever lets a request in
 * says so. The address is empty for the command line, whose threads let none in.
 */
@ApplicationScoped
public class Origin {
    private static final class Asked {
        final String address;
        boolean told;

        Asked(String address) {
            this.address = address;
        }
    }

    private static final ThreadLocal<@Nullable Asked> ASKED = new ThreadLocal<>();

    /** A request begins. */
    public void is(String address) {
        ASKED.set(new Asked(address));
    }

    /** Whether a use case of this request has told the audit log of its deed, or has found it told before. */
    public boolean isTold() {
        Asked asked = ASKED.get();
        return asked != null && asked.told;
    }

    void tell() {
        Asked asked = ASKED.get();
        if (asked != null) {
            asked.told = true;
        }
    }

    String address() {
        Asked asked = ASKED.get();
        return asked == null ? "" : asked.address;
    }
}
