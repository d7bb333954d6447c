package eaveside.kernel;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;

/** Stores units under their codes of UN/ECE Recommendation 20, so that rows hold them typed. */
@Converter(autoApply = true)
public class UnitCodes implements AttributeConverter<Unit, String> {
    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable Unit unit) {
        return unit == null ? null : unit.code();
    }

    @Override
    public @Nullable Unit convertToEntityAttribute(@Nullable String code) {
        return code == null ? null : Unit.ofCode(code);
    }
}
