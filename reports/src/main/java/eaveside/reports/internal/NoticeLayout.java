package eaveside.reports.internal;

import eaveside.reports.NoticePaper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;

/** Lays out a notice of findings. */
public final class NoticeLayout {
    private NoticeLayout() {}

    public static Layout of(NoticePaper paper) {
        Words words = new Words(paper.from().locale());
        Rows rows = new Rows();
        paragraph(rows, paper.greeting());
        int number = 0;
        for (NoticePaper.Finding finding : paper.findings()) {
            add(rows, words, ++number, finding);
        }
        paragraph(rows, paper.closing());
        Head head = new Head(paper.from(), words, words.text("notice"), "")
                .to(words.text("to"), paper.customer())
                .site(words.text("work-at"), paper.site())
                .fact(words.text("written"), words.date(paper.written()))
                .fact(words.text("visited"), words.date(paper.visited()));
        return new Layout("notice", paper.from(), words, head, rows);
    }

    private static void paragraph(Rows rows, String text) {
        if (!text.isBlank()) {
            rows.block().add("PARAGRAPH").put("text", text);
        }
    }

    /** Its words stay together with its first photos. */
    private static void add(Rows rows, Words words, int number, NoticePaper.Finding finding) {
        rows.block().add("HEADING").put("text", number + ". " + finding.title()).put("detail", finding.urgency());
        fact(rows, words, "finding.location", finding.location());
        fact(rows, words, "finding.note", finding.note());
        fact(
                rows,
                words,
                "finding.trade",
                finding.trade().isBlank() ? "" : words.text("finding.trade.value", finding.trade()));
        fact(rows, words, "finding.told", finding.told() ? words.text("finding.told.value") : "");
        if (!finding.caution().isBlank()) {
            rows.frame(words, words.text("finding.caution"), finding.caution());
        }
        List<NoticePaper.Photo> photos = finding.photos();
        for (int i = 0; i < photos.size(); i += 2) {
            if (i > 0) {
                rows.block();
            }
            boolean tall =
                    photos.subList(i, Math.min(i + 2, photos.size())).stream().anyMatch(NoticeLayout::isTall);
            Rows.Row row = rows.add(tall ? "TALL_PHOTOS" : "PHOTOS")
                    .put("leftPhoto", new ByteArrayInputStream(photos.get(i).jpeg()))
                    .put("text", photos.get(i).caption());
            if (i + 1 < photos.size()) {
                row.put("rightPhoto", new ByteArrayInputStream(photos.get(i + 1).jpeg()))
                        .put("detail", photos.get(i + 1).caption());
            }
        }
    }

    /** Taller than three to four: such a photo is fitted into a box, so that it never outgrows the page. */
    private static boolean isTall(NoticePaper.Photo photo) {
        ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
        try (var input = new MemoryCacheImageInputStream(new ByteArrayInputStream(photo.jpeg()))) {
            reader.setInput(input, true, true);
            return 3 * reader.getHeight(0) > 4 * reader.getWidth(0);
        } catch (IOException e) {
            throw new IllegalArgumentException("the photo '" + photo.caption() + "' is no JPEG", e);
        } finally {
            reader.dispose();
        }
    }

    private static void fact(Rows rows, Words words, String label, String value) {
        if (!value.isBlank()) {
            rows.add("FACT").put("text", words.text(label)).put("detail", value);
        }
    }
}
