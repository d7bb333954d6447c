package eaveside.reports;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.logging.Logger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Prints each sample paper into {@code target/papers} and says how long a warm one takes; asserts no time. */
@Tag("once")
class PaperSpeedTest {
    private static final Logger LOG = Logger.getLogger(PaperSpeedTest.class.getName());

    private final Papers papers = new Papers();

    @Test
    void says_how_long_each_paper_takes() throws IOException {
        measure("invoice.pdf", () -> papers.invoice(Samples.invoice()));
        measure("invoice-60-lines.pdf", () -> papers.invoice(Samples.longInvoice()));
        measure("quote.pdf", () -> papers.quote(Samples.quote()));
        measure("margin.pdf", () -> papers.marginPdf(Samples.margin()));
        measure("margin.xlsx", () -> papers.marginXlsx(Samples.margin()));
        NoticePaper notice = Samples.notice();
        measure("notice.pdf", () -> papers.notice(notice));
    }

    @Test
    void prints_the_odd_ones_to_look_at() throws IOException {
        keep("invoice-wordy.pdf", papers.invoice(Samples.wordyInvoice()));
        keep("invoice-a4.pdf", papers.invoice(Samples.metricInvoice()));
        keep("notice-tall.pdf", papers.notice(Samples.tallNotice()));
    }

    private static void measure(String name, Supplier<byte[]> paper) throws IOException {
        long[] millis = new long[25];
        byte[] printed = new byte[0];
        for (int i = 0; i < millis.length; i++) {
            long start = System.nanoTime();
            printed = paper.get();
            millis[i] = (System.nanoTime() - start) / 1_000_000;
        }
        long first = millis[0];
        long[] warm = Arrays.copyOfRange(millis, 10, millis.length);
        Arrays.sort(warm);
        LOG.info(String.format(
                Locale.ROOT,
                "%-22s first %5d ms, warm median %4d ms, worst %4d ms, %7d bytes",
                name,
                first,
                warm[warm.length / 2],
                warm[warm.length - 1],
                printed.length));
        keep(name, printed);
    }

    private static void keep(String name, byte[] printed) throws IOException {
        Path folder = Files.createDirectories(Path.of("target", "papers"));
        Files.write(folder.resolve(name), printed);
        assertTrue(printed.length > 1000);
    }
}
