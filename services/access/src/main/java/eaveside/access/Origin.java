package eaveside.access;

import jakarta.enterprise.context.ApplicationScoped;

/**
 * Where the work of this thread was asked from: whoever lets a request in says so. The address is empty for the command
 * line, whose threads let none in.
 */
@ApplicationScoped
public class Origin {
    private static final ThreadLocal<String> ADDRESS = ThreadLocal.withInitial(() -> "");

    /** A request begins. */
    public void is(String address) {
        ADDRESS.set(address);
    }

    String address() {
        return ADDRESS.get();
    }
}
