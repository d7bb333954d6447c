package eaveside.architecture.planted.ledger;

import eaveside.kernel.Shared;
import java.util.ArrayList;
import java.util.List;

/** Planted: one instance for all requests that keeps what one of them said, and a list that all of them would fill. */
@Shared
public class Remembers {
    private LeansRight last = new LeansRight();
    private final List<String> said = new ArrayList<>();
    private final Part part = new Part();

    /** Shared as well, so one for all is right. */
    @Shared
    static class Part {}

    public void say(String word) {
        said.add(word + last + part);
        last = new LeansRight();
    }
}
