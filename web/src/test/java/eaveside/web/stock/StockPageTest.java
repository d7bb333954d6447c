package eaveside.web.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.Location;
import eaveside.inventory.MixRatio;
import eaveside.kernel.LocationId;
import eaveside.kernel.Money;
import eaveside.web.View;
import eaveside.web.stock.StockPages.StockPage;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.joda.money.CurrencyUnit;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

/** What the stock page tells a company that has entered nothing or little: a server of the tests is never that empty. */
class StockPageTest {
    private static final Money NOTHING = Money.zero(CurrencyUnit.USD);
    private static final Location STORE = Location.store(LocationId.next(), "Store room");
    private static final Location VAN = Location.van(LocationId.next(), "Van 1");

    private static View view(boolean us) {
        return new View(
                null,
                "Test",
                ZoneOffset.UTC,
                LocalDate.of(2026, 3, 2),
                Locale.US,
                us,
                "/stock",
                null,
                Set.of(),
                false,
                false,
                Map.of());
    }

    private static Document shown(StockPage page) {
        StringOutput output = new StringOutput();
        TemplateEngine.createPrecompiled(
                        null, ContentType.Html, StockPageTest.class.getClassLoader(), "eaveside.web.templates")
                .render(page.template(), Map.of("page", page, "view", view(true)), output);
        return Jsoup.parse(output.toString());
    }

    @Test
    void an_empty_company_is_told_to_begin_with_locations() {
        Document page = shown(new StockPage(List.of(), null, false, List.of(), NOTHING, List.of()));
        assertEquals(
                List.of("/stock/locations/new", "/stock/items/new", "/stock/new/receipt", "/stock/mixes"),
                page.select("main ol a").eachAttr("href"));
        assertEquals(
                List.of("/stock/items", "/stock/locations", "/stock/mixes"),
                page.select("main nav a").eachAttr("href"));
    }

    @Test
    void then_comes_what_is_missing() {
        StockPage page = new StockPage(List.of(STORE, VAN), STORE, false, List.of(), NOTHING, List.of());
        assertEquals("Done", shown(page).select("main ol li:first-child .tag").text());
        assertEquals(
                0, shown(page).select("main ol a[href=/stock/locations/new]").size());
        assertEquals(1, shown(page).select("main ol a[href=/stock/items/new]").size());
    }

    @Test
    void nothing_is_told_to_those_who_have_begun() {
        StockPage page = new StockPage(List.of(STORE, VAN), VAN, true, List.of(), NOTHING, List.of());
        assertFalse(page.isFirst());
        assertTrue(shown(page).select("main").text().contains("No stock in Van 1 yet."));
    }

    @Test
    void a_ratio_is_said_in_what_the_company_measures_with() {
        assertEquals(
                "A liter of the mix takes 30.3\u00a0mL of Soap and 970\u00a0mL of water.",
                MixWords.inWords(view(false), MixRatio.addedToWater("32"), "Soap"));
        assertEquals("1 : 32 added to water", MixWords.ratio(view(true), MixRatio.addedToWater("32")));
    }
}
