package eaveside.inventory;

import jakarta.persistence.Embeddable;
import java.math.BigDecimal;

/** Dissolved solids in water as a TDS meter shows them: parts per million, taken as milligrams in a liter. Rows embed it. */
@Embeddable
public record Ppm(BigDecimal value) {
    private static final BigDecimal SEA_WATER_AND_MORE = BigDecimal.valueOf(100_000);

    public Ppm {
        if (value.signum() < 0
                || value.compareTo(SEA_WATER_AND_MORE) > 0
                || value.stripTrailingZeros().scale() > 6) {
            throw new InventoryRefusal.BadReading(
                    "value", value.toPlainString() + " ppm is not a reading of a TDS meter");
        }
        value = value.stripTrailingZeros();
    }

    public static Ppm of(String value) {
        return new Ppm(new BigDecimal(value));
    }

    @Override
    public String toString() {
        return value.toPlainString() + " ppm";
    }
}
