package eaveside.reports;

import java.util.List;
import java.util.Locale;

/**
 * Who a paper comes from, and how that company writes.
 *
 * @param  address   line by line
 * @param  taxNumber as it must stand on invoices; may be empty
 * @param  locale    how numbers, money and dates are written, such as {@code en-US}; also names the paper's language
 */
public record Letterhead(
        String company,
        List<String> address,
        String email,
        String phone,
        String taxNumber,
        Locale locale,
        PaperSize size) {
    public Letterhead {
        address = address.stream().filter(line -> !line.isBlank()).toList();
    }
}
