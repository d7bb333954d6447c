package eaveside.access;

import jakarta.enterprise.context.ApplicationScoped;

/**
 * Where the work of this thread was asked from, and whether it has come to anything: whoever lets a request in says so. The
 * address is empty for the command line, whose threads let none in.
 */
@ApplicationScoped
public class Origin {
    private static final ThreadLocal<String> ADDRESS = ThreadLocal.withInitial(() -> "");

    private static final ThreadLocal<Boolean> DONE = ThreadLocal.withInitial(() -> false);

    /** A request begins. */
    public void is(String address) {
        ADDRESS.set(address);
        DONE.set(false);
    }

    void done() {
        DONE.set(true);
    }

    /** Whether the request has put a deed on the audit log; what only reads, reckons or repeats puts none there. */
    public boolean hasDone() {
        return DONE.get();
    }

    String address() {
        return ADDRESS.get();
    }
}
