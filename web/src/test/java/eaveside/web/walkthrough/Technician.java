package eaveside.web.walkthrough;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.FileChooser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.FilePayload;
import com.microsoft.playwright.options.SelectOption;
import eaveside.web.testing.Server;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import javax.imageio.ImageIO;

/** The technician on the roof, with a phone. */
final class Technician extends Person {
    private static final String SAYS = "#unsent [data-say]";

    Technician(BrowserContext context, Server server) {
        super(context, server, "bram");
    }

    void opensSheet(String visit) {
        go("sheets");
        look("todays-sheets");
        follow("a[href=\"/sheets/" + visit + "\"]");
    }

    /** Fills the whole sheet: 46 of 48 panels, four skylights and two panes more than planned, and the rest as planned. */
    void fills(String minutesOnSite) {
        Locator lines = page.locator("section[data-line]");
        assertEquals(4, lines.count());
        for (int i = 0; i < 4; i++) {
            Locator line = lines.nth(i);
            if (!line.innerText().contains("Solar panel")) {
                line.locator("[data-all]").click();
            }
        }
        skipsTwoCrackedPanels(lines.filter(new Locator.FilterOptions().setHasText("Solar panel")));

        unfold("#extras");
        extra(0, "Skylight, outside", "4", "Stair");
        page.locator("#extras button[name=more]").click();
        extra(1, "Window pane, outside", "2", "Ground");
        unfold("#surfaces");
        page.locator("#surfaces .field:has-text(\"Stair and studio\") input[data-number]")
                .fill("10");

        unfold("#water");
        page.fill("#reading-0-tapWater", "310");
        page.fill("#reading-0-pureWater", "4");
        page.fill("#reading-0-volume", "60");
        page.locator("#reading-0-canister")
                .selectOption(page.locator("#reading-0-canister option:not([value=\"\"])")
                        .last()
                        .getAttribute("value"));
        unfold("#soap");
        page.locator("#mix-0-mix").selectOption(new SelectOption().setLabel("Neutral panel mix, 1 to 128"));
        page.fill("#mix-0-volume", "6");

        unfold("#findings");
        page.locator("#finding-0-type").selectOption(new SelectOption().setLabel("Blocked gutter"));
        page.locator("#finding-0-severity").selectOption(new SelectOption().setIndex(2));
        page.fill("#finding-0-note", "Moss and leaves over the porch");

        page.fill("#onSiteMinutes", minutesOnSite);
        page.fill("#drivingMinutes", "40");
        page.fill("#loadingMinutes", "15");
        page.fill("#distance", "18");
    }

    private void skipsTwoCrackedPanels(Locator panels) {
        String line = panels.getAttribute("data-line");
        page.fill("#" + line + "done", "46");
        page.locator("#" + line + "done").press("Tab");
        Locator skipped = page.locator("#" + line + "skip-0-quantity");
        skipped.waitFor();
        assertEquals("2", skipped.inputValue(), "the rest of the plan is skipped");
        page.locator("#" + line + "skip-0-reason").selectOption("CRACKED");
        page.fill("#" + line + "skip-0-note", "Second row, far end, two panels side by side");
        page.locator("[name=\"" + line + "skip-0-customerNotified\"]").check();
        FileChooser chooser =
                page.waitForFileChooser(() -> panels.locator(".camera").first().click());
        chooser.setFiles(new FilePayload("cracked.jpg", "image/jpeg", crackedPanels()));
        // A photo of the sheet that was reversed is offered beside it.
        panels.locator(".shot img[src^=\"blob:\"]").waitFor();
    }

    private void extra(int row, String work, String quantity, String surface) {
        String prefix = "#extra-" + row + "-";
        page.locator(prefix + "serviceItem").selectOption(new SelectOption().setLabel(work));
        page.fill(prefix + "quantity", quantity);
        String named = page.locator(prefix + "surface option")
                .filter(new Locator.FilterOptions().setHasText(surface))
                .first()
                .getAttribute("value");
        page.locator(prefix + "surface").selectOption(named);
        page.fill(prefix + "acceptedBy", "Odalys Fennimore, on site");
    }

    /** Signs off without signal; the phone keeps the sheet through a reload and sends it when the signal is back. */
    void signsOffWithoutSignal(String visit) {
        context.setOffline(true);
        page.click(".bottom button");
        saysUnsent();
        look("sheet-not-sent");
        page.navigate(address("sheets/" + visit));
        saysUnsent();
        context.setOffline(false);
        awaitSigned();
    }

    /** Signs off when the session has long ended; the sheet waits for the sign-in, then goes. */
    void signsOffAfterTheSessionEnded() {
        context.clearCookies();
        page.click(".bottom button");
        page.locator("#unsent a[data-in]").waitFor();
        saysUnsent();
        look("sheet-needs-sign-in");
        follow("#unsent a[data-in]");
        signInAgain();
        awaitSigned();
    }

    private void saysUnsent() {
        page.locator(SAYS)
                .filter(new Locator.FilterOptions().setHasText("Not sent yet: 1 sheet"))
                .waitFor();
    }

    private void awaitSigned() {
        page.waitForCondition(() -> page.url().contains("done=sheets.signed")
                || page.locator(".errors").count() > 0);
        assertEquals(List.of(), page.locator(".errors").allInnerTexts());
        assertFalse(page.locator(SAYS).isVisible(), "nothing is left unsent");
        assertTrue(main().contains("Thank you") || main().contains("signed"), main());
    }

    /** Two panels, one with a crack across the glass. */
    private static byte[] crackedPanels() {
        var picture = new BufferedImage(2400, 1800, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = picture.createGraphics();
        g.setColor(new Color(0x8a8f94));
        g.fillRect(0, 0, 2400, 1800);
        for (int panel = 0; panel < 2; panel++) {
            g.setColor(new Color(0x16263f));
            g.fillRect(120 + panel * 1120, 120, 1040, 1560);
            g.setColor(new Color(0x9fb4c8));
            g.setStroke(new BasicStroke(4));
            for (int i = 1; i < 6; i++) {
                g.drawLine(120 + panel * 1120 + i * 173, 120, 120 + panel * 1120 + i * 173, 1680);
            }
            for (int i = 1; i < 10; i++) {
                g.drawLine(120 + panel * 1120, 120 + i * 156, 1160 + panel * 1120, 120 + i * 156);
            }
        }
        g.setColor(Color.WHITE);
        g.setStroke(new BasicStroke(9));
        g.drawPolyline(new int[] {300, 520, 480, 800, 760, 1100}, new int[] {250, 520, 700, 900, 1200, 1500}, 6);
        g.dispose();
        var out = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, "jpeg", out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
