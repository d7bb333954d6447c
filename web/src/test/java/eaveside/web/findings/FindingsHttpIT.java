package eaveside.web.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import org.junit.jupiter.api.Test;

class FindingsHttpIT {
    private final Visitor office = Visitor.office();

    @Test
    void the_list_is_a_file_as_well() {
        SiteToQuote.shared();
        String link = Visitor.page(office.get("findings?q=alder"))
                .select("a.button[href*=.csv]")
                .attr("href");

        var file = office.get(link.substring(1));

        assertEquals(200, file.statusCode());
        assertTrue(file.headers().firstValue("content-type").orElse("").startsWith("text/csv"));
        assertTrue(file.body().contains("Thick along the north eaves"), file.body());
        assertEquals(200, office.get("findings/" + SiteToQuote.FINDING).statusCode());
        assertEquals(404, office.get("findings/no-such-file.csv").statusCode());
    }
}
