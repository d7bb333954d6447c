package eaveside.reports.internal;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.text.NumberFormat;
import java.util.Locale;
import net.sf.jasperreports.charts.JRAbstractChartCustomizer;
import net.sf.jasperreports.charts.JRChart;
import net.sf.jasperreports.engine.DefaultJasperReportsContext;
import net.sf.jasperreports.engine.JRParameter;
import net.sf.jasperreports.engine.fonts.FontUtil;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.renderer.category.BarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;

/** Gives the margin report's chart the sober look of its paper: flat bars, thin grid, the paper's own font. */
public final class MarginChart extends JRAbstractChartCustomizer {
    private static final Color INK = new Color(0x1B2A33);
    private static final Color GRID = new Color(0xDDE4E8);

    @Override
    public void customize(JFreeChart chart, JRChart element) {
        Locale locale = (Locale) getParameterValue(JRParameter.REPORT_LOCALE);
        Font font = FontUtil.getInstance(DefaultJasperReportsContext.getInstance())
                .getAwtFontFromBundles(true, "DejaVu Sans Condensed", Font.PLAIN, 8f, locale, false);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setBorderVisible(false);
        if (chart.getLegend() != null) {
            chart.getLegend().setItemFont(font);
            chart.getLegend().setItemPaint(INK);
            chart.getLegend().setFrame(BlockBorder.NONE);
        }
        CategoryPlot plot = chart.getCategoryPlot();
        plot.setBackgroundPaint(Color.WHITE);
        plot.setOutlineVisible(false);
        plot.setRangeGridlinePaint(GRID);
        plot.setRangeGridlineStroke(new BasicStroke(0.5f));
        plot.setRangeZeroBaselineVisible(true);
        plot.setRangeZeroBaselinePaint(INK);
        plot.setRangeZeroBaselineStroke(new BasicStroke(0.5f));
        plot.getDomainAxis().setTickLabelFont(font);
        plot.getDomainAxis().setTickLabelPaint(INK);
        plot.getDomainAxis().setAxisLineVisible(false);
        plot.getDomainAxis().setMaximumCategoryLabelLines(2);
        NumberAxis range = (NumberAxis) plot.getRangeAxis();
        range.setTickLabelFont(font);
        range.setTickLabelPaint(INK);
        range.setAxisLineVisible(false);
        range.setNumberFormatOverride(NumberFormat.getIntegerInstance(locale));
        BarRenderer bars = (BarRenderer) plot.getRenderer();
        bars.setBarPainter(new StandardBarPainter());
        bars.setShadowVisible(false);
        bars.setDrawBarOutline(false);
        bars.setMaximumBarWidth(0.12);
    }
}
