package eaveside.web.visits;

import eaveside.access.User;
import eaveside.catalog.ServiceItem;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.visits.Scheduling;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The form for a visit: with the work that a quote or an earlier visit says, or rows to fill in for the site's surfaces.
 *
 * @param  customer    by name
 * @param  quoteNumber null without a quote
 * @param  said        by the quote or the earlier visit; empty without either
 * @param  staff       who may be on the crew, technicians first
 * @param  surfaces    of the site, where work is to be filled in
 * @param  serviceItems that are sold, where work is to be filled in
 */
public record SchedulingPage(
        Form<Scheduling> form,
        String customer,
        Site site,
        @Nullable Long quoteNumber,
        List<Said> said,
        List<User> staff,
        List<Surface> surfaces,
        List<ServiceItem> serviceItems)
        implements Page {
    @Override
    public String template() {
        return "visits/scheduling.jte";
    }

    /** Work that the quote or the earlier visit says. */
    public record Said(String serviceItem, String surface, Quantity quantity) {}

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

    /** A row for each surface, and those in which the surface can be chosen. */
    public List<Row> rows() {
        return SchedulingForms.prefixes(fields()).map(this::row).toList();
    }

    private Row row(String prefix) {
        Surface surface = fields().typed(prefix + "quantityUnit").isEmpty()
                ? null
                : surfaces.stream()
                        .filter(s -> s.id().toString().equals(fields().typed(prefix + "surface")))
                        .findFirst()
                        .orElse(null);
        return new Row(
                prefix,
                surface,
                serviceItems.stream().filter(item -> fits(item, surface)).toList(),
                surface == null
                        ? null
                        : Objects.requireNonNull(surface.extent()).unit());
    }

    /** The row asks for as much as there is of the surface, so a service that is counted otherwise has no place in it. */
    private static boolean fits(ServiceItem item, @Nullable Surface surface) {
        return surface == null
                || (item.surfaceType() == null || item.surfaceType() == surface.type())
                        && item.unit()
                                .isLike(Objects.requireNonNull(surface.extent()).unit());
    }
}
