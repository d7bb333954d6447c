package eaveside.reports;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** A PDF as another program reads it. */
final class ReadBack {
    private final byte[] pdf;

    ReadBack(byte[] pdf) {
        this.pdf = pdf;
    }

    private interface Reading<T> {
        T from(PDDocument document) throws IOException;
    }

    private <T> T read(Reading<T> reading) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return reading.from(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All text in the order of reading, blanks and line ends reduced to single blanks. */
    String text() {
        return String.join(" ", pages());
    }

    List<String> pages() {
        return read(document -> {
            List<String> pages = new ArrayList<>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(true);
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document).replaceAll("[\\s\\u00a0\\u202f]+", " "));
            }
            return pages;
        });
    }

    String title() {
        return read(document -> document.getDocumentInformation().getTitle());
    }

    /** What it says that it was made with. */
    String makers() {
        return read(document -> document.getDocumentInformation().getCreator() + ", "
                + document.getDocumentInformation().getProducer());
    }

    String language() {
        return read(document -> document.getDocumentCatalog().getLanguage());
    }

    boolean isTagged() {
        return read(document -> document.getDocumentCatalog().getMarkInfo().isMarked());
    }

    /** Width and height of the first page as it is looked at, in points. */
    List<Integer> size() {
        return read(document -> {
            PDPage page = document.getPage(0);
            int width = Math.round(page.getMediaBox().getWidth());
            int height = Math.round(page.getMediaBox().getHeight());
            return page.getRotation() % 180 == 0 ? List.of(width, height) : List.of(height, width);
        });
    }

    /** Names of fonts that are not embedded. */
    List<String> fontsLeftOut() {
        return read(document -> {
            List<String> left = new ArrayList<>();
            int fonts = 0;
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    fonts++;
                    if (!font.isEmbedded()) {
                        left.add(font.getName());
                    }
                }
            }
            if (fonts == 0) {
                left.add("no font at all");
            }
            return left;
        });
    }

    /** What stands for the pictures where they cannot be seen. */
    List<String> alternativeTexts() {
        return read(document -> {
            List<String> found = new ArrayList<>();
            collect(document.getDocumentCatalog().getStructureTreeRoot(), found);
            return found;
        });
    }

    private static void collect(PDStructureNode node, List<String> found) {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                if ("Figure".equals(element.getStandardStructureType())) {
                    found.add(String.valueOf(element.getAlternateDescription()));
                }
                collect(element, found);
            }
        }
    }

    /** Glyphs outside the page's margins of that many points. */
    List<String> outside(int margin) {
        int width = size().get(0);
        int height = size().get(1);
        return read(document -> {
            List<String> outside = new ArrayList<>();
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition glyph) {
                    boolean within = glyph.getXDirAdj() >= margin
                            && glyph.getXDirAdj() + glyph.getWidthDirAdj() <= width - margin
                            && glyph.getYDirAdj() >= margin
                            && glyph.getYDirAdj() <= height - margin;
                    if (!within) {
                        outside.add(glyph.getUnicode() + " at " + glyph.getXDirAdj() + ", " + glyph.getYDirAdj());
                    }
                }
            };
            stripper.getText(document);
            return outside;
        });
    }
}
