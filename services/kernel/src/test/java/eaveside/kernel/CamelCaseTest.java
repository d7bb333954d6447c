package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CamelCaseTest {
    @ParameterizedTest
    @CsvSource({
        "paymentTermDays, payment-term-days",
        "NotAStockDocument, not-a-stock-document",
        "OneAtATime, one-at-a-time",
        "zipCode, zip-code",
        "name, name"
    })
    void each_word_stands_by_itself(String name, String words) {
        assertEquals(words, CamelCase.words(name, "-"));
    }
}
