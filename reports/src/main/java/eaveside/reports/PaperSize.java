package eaveside.reports;

import java.util.Locale;

/** What the papers are printed on. */
public enum PaperSize {
    /** 8½ × 11 inches, where measures are customary. */
    US_LETTER(612, 792),
    /** 210 × 297 mm (ISO 216), where they are metric. */
    A4(595, 842);

    private final int shortSide;
    private final int longSide;

    PaperSize(int shortSide, int longSide) {
        this.shortSide = shortSide;
        this.longSide = longSide;
    }

    /** In points of 1/72 inch. */
    public int shortSide() {
        return shortSide;
    }

    /** In points of 1/72 inch. */
    public int longSide() {
        return longSide;
    }

    /** The file of a template compiled for this size. */
    public String template(String name) {
        return name + "-" + name().toLowerCase(Locale.ROOT).replace('_', '-') + ".jasper";
    }
}
