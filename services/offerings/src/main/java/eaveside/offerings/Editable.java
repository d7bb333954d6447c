package eaveside.offerings;

/**
 * Something that several people edit. Its version is the one that this content was read with, 0 where it is new; a
 * save must name the version that it started from.
 */
public sealed interface Editable permits ServiceLine, Offering {
    int version();

    /** The same content under another version. */
    Editable withVersion(int version);

    /** Whether the other says the same, whatever its version. */
    default boolean saysTheSameAs(Editable other) {
        return withVersion(0).equals(other.withVersion(0));
    }
}
