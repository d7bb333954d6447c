package eaveside.access;

import jakarta.enterprise.context.ApplicationScoped;
import org.jspecify.annotations.Nullable;

/**
 * The network address that the work of this thread was asked from, for the audit log: whoever lets a request in says so.
 * Empty for the command line, whose threads let none in.
 */
@ApplicationScoped
public class Origin {
    private static final ThreadLocal<@Nullable String> ADDRESS = new ThreadLocal<>();

    public void is(String address) {
        ADDRESS.set(address);
    }

    String address() {
        String address = ADDRESS.get();
        return address == null ? "" : address;
    }
}
