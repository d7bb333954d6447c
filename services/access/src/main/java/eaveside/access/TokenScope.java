package eaveside.access;

/** What a script may do with a token, within what its user may. Each scope includes the one before. */
public enum TokenScope {
    /** Reading, nothing else. */
    READ,
    /** Also what people enter: quotes, visits, invoices, payments, stock, settings. */
    WRITE,
    /** Also who comes in: users, their rights and their passwords. */
    ADMINISTER;

    public boolean includes(TokenScope other) {
        return compareTo(other) >= 0;
    }
}
