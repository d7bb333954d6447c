package eaveside.web.visits;

import eaveside.access.User;
import eaveside.catalog.ServiceItem;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.visits.Scheduling;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The form for a visit: with the work that a quote or an earlier visit says, or rows to fill in for the site's surfaces.
 *
 * @param  quoteNumber null without a quote
 * @param  said        by the quote or the earlier visit; empty without either
 * @param  staff       who may be on the crew, technicians first
 * @param  surfaces    of the site, where work is to be filled in
 * @param  serviceItems that are sold, where work is to be filled in
 */
public record SchedulingPage(
        Form<Scheduling> form,
        Site site,
        @Nullable Long quoteNumber,
        List<Said> said,
        List<User> staff,
        List<Surface> surfaces,
        List<ServiceItem> serviceItems,
        Names names)
        implements Page {
    /** Work that the quote or the earlier visit says. */
    public record Said(ServiceItemId serviceItem, @Nullable SurfaceId surface, Quantity quantity) {}

    /**
     * A row to fill in.
     *
     * @param  prefix       of its fields
     * @param  surface      that the row is for; null where one can be chosen
     * @param  serviceItems that are done on it
     * @param  unit         what its quantity is typed in; null until a service is chosen
     */
    public record Row(
            String prefix,
            @Nullable Surface surface,
            List<ServiceItem> serviceItems,
            @Nullable Unit unit) {}

    public Fields fields() {
        return form.fields();
    }

    public boolean isReturn() {
        return !fields().typed("returnsTo").isEmpty();
    }

    /** The beginnings of the names of each row's fields. */
    static Stream<String> prefixes(Fields fields) {
        return fields.rows("line").stream().map(row -> "line-" + row + "-");
    }

    /** A row for each surface, and those in which the surface can be chosen. */
    public List<Row> rows() {
        return prefixes(fields()).map(this::row).toList();
    }

    private Row row(String prefix) {
        Surface surface = surfaces.stream()
                .filter(s -> !fields().typed(prefix + "quantityUnit").isEmpty()
                        && s.id().toString().equals(fields().typed(prefix + "surface")))
                .findFirst()
                .orElse(null);
        return new Row(
                prefix,
                surface,
                serviceItems.stream().filter(item -> fits(item, surface)).toList(),
                surface == null ? null : surface.extent().unit());
    }

    /** The row asks for as much as there is of the surface, so a service that is counted otherwise has no place in it. */
    private static boolean fits(ServiceItem item, @Nullable Surface surface) {
        return surface == null
                || (item.surfaceType() == null || item.surfaceType() == surface.type())
                        && item.unit().isLike(surface.extent().unit());
    }
}
