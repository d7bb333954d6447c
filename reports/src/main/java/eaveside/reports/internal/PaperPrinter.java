package eaveside.reports.internal;

import eaveside.reports.PaperSize;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import net.sf.jasperreports.engine.JRException;
import net.sf.jasperreports.engine.JRParameter;
import net.sf.jasperreports.engine.JasperFillManager;
import net.sf.jasperreports.engine.JasperPrint;
import net.sf.jasperreports.engine.JasperReport;
import net.sf.jasperreports.engine.data.JRMapCollectionDataSource;
import net.sf.jasperreports.engine.export.ooxml.JRXlsxExporter;
import net.sf.jasperreports.engine.util.JRLoader;
import net.sf.jasperreports.export.SimpleExporterInput;
import net.sf.jasperreports.export.SimpleOutputStreamExporterOutput;
import net.sf.jasperreports.export.SimpleXlsxExporterConfiguration;
import net.sf.jasperreports.export.SimpleXlsxReportConfiguration;
import net.sf.jasperreports.pdf.JRPdfExporter;
import net.sf.jasperreports.pdf.SimplePdfExporterConfiguration;

/** Fills compiled templates and exports them. Templates are read once; any number of threads may print. */
public final class PaperPrinter {
    private static final String MAKER = "Eaveside";
    private static final Map<String, JasperReport> TEMPLATES = new ConcurrentHashMap<>();

    private PaperPrinter() {}

    /** A tagged PDF that names its language and title and embeds its fonts. */
    public static byte[] pdf(Layout layout) {
        SimplePdfExporterConfiguration configuration = new SimplePdfExporterConfiguration();
        configuration.setTagged(true);
        configuration.setTagLanguage(layout.words().locale().toLanguageTag());
        configuration.setMetadataTitle(layout.head().title());
        configuration.setMetadataAuthor(layout.from().company());
        // Nobody needs to know what it is made with, and in which version.
        configuration.setMetadataCreator(MAKER);
        configuration.setMetadataProducer(MAKER);
        configuration.setDisplayMetadataTitle(true);
        configuration.setCompressed(true);
        JRPdfExporter exporter = new JRPdfExporter();
        exporter.setConfiguration(configuration);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            exporter.setExporterInput(new SimpleExporterInput(filled(layout, false)));
            exporter.setExporterOutput(new SimpleOutputStreamExporterOutput(bytes));
            exporter.exportReport();
        } catch (JRException e) {
            throw broken(layout, e);
        }
        return bytes.toByteArray();
    }

    /** One sheet whose numbers are numbers. */
    public static byte[] xlsx(Layout layout) {
        SimpleXlsxReportConfiguration configuration = new SimpleXlsxReportConfiguration();
        configuration.setDetectCellType(true);
        configuration.setOnePagePerSheet(false);
        configuration.setRemoveEmptySpaceBetweenRows(true);
        configuration.setRemoveEmptySpaceBetweenColumns(true);
        configuration.setWhitePageBackground(false);
        configuration.setShowGridLines(false);
        configuration.setSheetNames(new String[] {layout.head().title()});
        JRXlsxExporter exporter = new JRXlsxExporter();
        exporter.setConfiguration(configuration);
        SimpleXlsxExporterConfiguration maker = new SimpleXlsxExporterConfiguration();
        maker.setMetadataApplication(MAKER);
        exporter.setConfiguration(maker);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            exporter.setExporterInput(new SimpleExporterInput(filled(layout, true)));
            exporter.setExporterOutput(new SimpleOutputStreamExporterOutput(bytes));
            exporter.exportReport();
        } catch (JRException e) {
            throw broken(layout, e);
        }
        return bytes.toByteArray();
    }

    private static JasperPrint filled(Layout layout, boolean endless) throws JRException {
        Map<String, Object> parameters = layout.head().parameters();
        parameters.put(JRParameter.REPORT_LOCALE, layout.words().locale());
        parameters.put(JRParameter.REPORT_RESOURCE_BUNDLE, layout.words().texts());
        parameters.put(JRParameter.IS_IGNORE_PAGINATION, endless);
        return JasperFillManager.fillReport(
                template(layout.template(), layout.from().size()),
                parameters,
                new JRMapCollectionDataSource(layout.rows().list()));
    }

    private static JasperReport template(String name, PaperSize size) {
        return TEMPLATES.computeIfAbsent(size.template(name), file -> {
            try (InputStream compiled = PaperPrinter.class.getResourceAsStream("/eaveside/reports/" + file)) {
                if (compiled == null) {
                    throw new IllegalStateException("the build left out the template " + file);
                }
                return (JasperReport) JRLoader.loadObject(compiled);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (JRException e) {
                throw new IllegalStateException("the template " + file + " cannot be read", e);
            }
        });
    }

    private static IllegalStateException broken(Layout layout, JRException cause) {
        return new IllegalStateException("the " + layout.template() + " cannot be printed", cause);
    }
}
