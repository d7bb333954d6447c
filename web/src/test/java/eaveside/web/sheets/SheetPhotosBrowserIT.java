package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Dialog;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Route;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

/** What the server refuses of a sheet's photos is nowhere else but on the phone. */
class SheetPhotosBrowserIT extends PhoneInHand {
    /** What the server refuses is nowhere else: it stays on the phone, past the sheet that goes without it. */
    @Test
    void a_photo_that_is_refused_stays_until_its_technician_discards_it() {
        String visit = open();
        fill();
        takePhoto("image/png", "no picture at all".getBytes(StandardCharsets.UTF_8));
        Locator refused = page.locator("[data-refused] > li");
        refused.waitFor();
        assertTrue(refused.innerText().contains("only JPEG and PNG pictures are taken"), refused.innerText());
        assertEquals(0, page.locator("#findings .shot").count(), "the sheet goes without it");
        look("refused-photo");
        page.reload();
        refused.waitFor();
        Download saved = page.waitForDownload(() -> refused.locator("a").click());
        assertEquals("no picture at all", contentOf(saved));

        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"));
        refused.waitFor();
        look("refused-photo-after-sign-off");
        page.onDialog(Dialog::accept);
        refused.locator("[data-discard]").click();
        page.waitForCondition(() -> refused.count() == 0);
        assertFalse(page.locator("#unsent").isVisible());
        assertEquals(1, sheetsOf(visit));
    }

    @Test
    void a_refused_photo_is_sent_again_on_request() {
        String visit = open();
        awaitKeptPage();
        fill();
        boolean[] refuses = {true};
        context.route("**/photos/*", route -> {
            if (refuses[0] && route.request().method().equals("POST")) {
                route.fulfill(new Route.FulfillOptions()
                        .setStatus(422)
                        .setContentType("application/problem+json")
                        .setBody("{\"title\": \"Not today\"}"));
            } else {
                route.resume();
            }
        });
        takePhoto();
        Locator refused = page.locator("[data-refused] > li");
        refused.waitFor();
        assertTrue(refused.innerText().contains("Not today"), refused.innerText());
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"));
        assertEquals("0", photosOf(visit));

        refuses[0] = false;
        page.locator("[data-again]").click();
        page.waitForCondition(() -> photosOf(visit).equals("1"));
        page.waitForCondition(() -> refused.count() == 0);
    }

    private static String contentOf(Download download) {
        try {
            return Files.readString(download.path());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
