package eaveside.catalog;

/** The owner's short name for a way of taxing, such as {@code STD}: capitals, digits and hyphens, at most 20. */
public record TaxCode(String value) {
    public TaxCode {
        value = Codes.checked("taxCode", value);
    }

    @Override
    public String toString() {
        return value;
    }
}
