package eaveside.pricing.internal;

/** What pricing numbers, each in a series of its own that starts at 1. */
public enum PricingSeries {
    PRICE_BOOK,
    QUOTE
}
