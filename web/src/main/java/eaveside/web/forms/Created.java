package eaveside.web.forms;

import eaveside.ledger.Posted;
import java.net.URI;

/**
 * What an operation for scripts made, answered with 201 at the address that Location names. A resource says by it which
 * record it answers with, where a bare response would say nothing.
 */
public record Created<T extends Record>(URI location, T body) {
    public static <T extends Record> Created<T> at(String path, T body) {
        return new Created<>(URI.create(path), body);
    }

    /** A posted document, whose address is that of its entries. */
    public static Created<Posted> document(Posted posted) {
        return at("/api/books/documents/" + posted.id(), posted);
    }
}
