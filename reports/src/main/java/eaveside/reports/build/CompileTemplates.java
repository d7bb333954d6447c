package eaveside.reports.build;

import eaveside.reports.PaperSize;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.sf.jasperreports.engine.DefaultJasperReportsContext;
import net.sf.jasperreports.engine.JRException;
import net.sf.jasperreports.engine.JasperCompileManager;
import net.sf.jasperreports.engine.JasperReport;
import net.sf.jasperreports.engine.design.JasperDesign;
import net.sf.jasperreports.engine.type.OrientationEnum;
import net.sf.jasperreports.engine.util.JRSaver;
import net.sf.jasperreports.engine.xml.JRXmlLoader;

/**
 * Compiles every template once per paper size, so that the running program needs no compiler. The two sizes differ in
 * their margins alone: what is printed is equally wide on both. An instruction {@code <?include parts/x.xml?>} puts in
 * what the templates share.
 */
public final class CompileTemplates {
    private static final Pattern INCLUDE = Pattern.compile("<\\?include ([a-z/.-]+)\\?>");

    private CompileTemplates() {}

    /** Takes the folder of the templates and the folder for what is compiled. */
    public static void main(String[] arguments) throws IOException, JRException {
        Path templates = Path.of(arguments[0]);
        Path output = Files.createDirectories(Path.of(arguments[1]));
        // The compiler of the JDK that builds: the library's own is a dependency more, and older than the language.
        DefaultJasperReportsContext.getInstance()
                .setProperty(
                        "net.sf.jasperreports.compiler.java", "net.sf.jasperreports.engine.design.JRJdk13Compiler");
        List<Path> sources;
        try (Stream<Path> files = Files.list(templates)) {
            sources =
                    files.filter(f -> f.toString().endsWith(".jrxml")).sorted().toList();
        }
        for (Path source : sources) {
            String name = source.getFileName().toString().replace(".jrxml", "");
            for (PaperSize size : PaperSize.values()) {
                JRSaver.saveObject(
                        compile(text(source), size),
                        output.resolve(size.template(name)).toFile());
            }
        }
    }

    private static JasperReport compile(String template, PaperSize size) throws JRException, IOException {
        try (InputStream xml = new ByteArrayInputStream(template.getBytes(StandardCharsets.UTF_8))) {
            JasperDesign design = JRXmlLoader.load(xml);
            boolean landscape = design.getOrientation() == OrientationEnum.LANDSCAPE;
            design.setPageWidth(landscape ? size.longSide() : size.shortSide());
            design.setPageHeight(landscape ? size.shortSide() : size.longSide());
            int margins = design.getPageWidth() - design.getColumnWidth();
            design.setLeftMargin(margins / 2);
            design.setRightMargin(margins - margins / 2);
            return JasperCompileManager.compileReport(design);
        }
    }

    private static String text(Path file) throws IOException {
        Matcher include = INCLUDE.matcher(Files.readString(file));
        StringBuilder text = new StringBuilder();
        while (include.find()) {
            String part = Files.readString(file.resolveSibling(include.group(1)));
            include.appendReplacement(text, Matcher.quoteReplacement(part));
        }
        return include.appendTail(text).toString();
    }
}
