package eaveside.customers.internal;

import eaveside.customers.Duplicate.Because;
import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Stores what two customers have in common as one text. */
@Converter
public class Reasons implements AttributeConverter<Set<Because>, String> {
    @Override
    public String convertToDatabaseColumn(Set<Because> reasons) {
        return reasons.stream().sorted().map(Because::name).collect(Collectors.joining(","));
    }

    @Override
    public Set<Because> convertToEntityAttribute(String text) {
        return Stream.of(text.split(",")).map(Because::valueOf).collect(Collectors.toSet());
    }
}
