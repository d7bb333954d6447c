package eaveside.reports;

import eaveside.reports.internal.InvoiceLayout;
import eaveside.reports.internal.MarginLayout;
import eaveside.reports.internal.NoticeLayout;
import eaveside.reports.internal.PaperPrinter;
import eaveside.reports.internal.QuoteLayout;
import eaveside.reports.internal.TrialBalanceLayout;

/**
 * Prints the company's papers. PDFs are tagged, name their language and title, embed their fonts, and come in the size
 * that the letterhead names. Holds no state; any number of threads may print at once.
 */
public class Papers {
    /** The media type of what the PDF methods answer. */
    public static final String PDF = "application/pdf";

    /** The media type of {@link #marginXlsx}. */
    public static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    /** An invoice, credit memo or draft as PDF. */
    public byte[] invoice(InvoicePaper paper) {
        return PaperPrinter.pdf(InvoiceLayout.of(paper));
    }

    /** A quote as PDF, with a place to sign. */
    public byte[] quote(QuotePaper paper) {
        return PaperPrinter.pdf(QuoteLayout.of(paper));
    }

    /** A notice of findings with its photos as PDF. */
    public byte[] notice(NoticePaper paper) {
        return PaperPrinter.pdf(NoticeLayout.of(paper));
    }

    /** The margin report as PDF, with a chart. */
    public byte[] marginPdf(MarginPaper paper) {
        return PaperPrinter.pdf(MarginLayout.of(paper));
    }

    /** The trial balance as PDF. */
    public byte[] trialBalance(TrialBalancePaper paper) {
        return PaperPrinter.pdf(TrialBalanceLayout.of(paper));
    }

    /** The margin report as a sheet whose figures are numbers. */
    public byte[] marginXlsx(MarginPaper paper) {
        return PaperPrinter.xlsx(MarginLayout.of(paper));
    }
}
