package eaveside.web.sheets;

import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.visits.Visit;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.visits.SheetFacts.Work;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A sheet to be filled. It names no price and no cost.
 *
 * @param  customer by name
 * @param  cautions of the site, the services, the panel manufacturers, and the usual ones
 * @param  surfaces of the site in use
 * @param  photos   of the visit, stored already
 */
public record SheetPage(
        Visit visit,
        String customer,
        Site site,
        List<String> cautions,
        List<Work> plan,
        List<Surface> surfaces,
        Choices choices,
        Stock stock,
        List<PhotoId> photos,
        Fields fields)
        implements Page {
    /** What the selects offer, by id. */
    public record Choices(
            Map<String, String> serviceItems,
            Map<String, String> surfaces,
            Map<String, String> lines,
            Map<String, String> types,
            Map<String, String> severities,
            Unit volume,
            Unit distance) {}

    /**
     * What the place holds that a sheet can draw.
     *
     * @param  location     name; empty where the signer has no van
     * @param  countable every item, and every canister and brush of the place
     * @param  other     other places, by id
     */
    public record Stock(
            String location,
            Map<String, String> canisters,
            Map<String, String> mixes,
            Map<String, String> brushes,
            Map<String, String> items,
            Map<String, String> countable,
            Map<String, String> other) {
        static final Stock NONE = new Stock("", Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of());
    }

    public String here() {
        return "/sheets/" + visit.id();
    }

    /** Whether something of a group is filled in or wrong, so that it is shown open. */
    public boolean isUsed(String group, String... names) {
        return fields.rows(group).stream()
                .flatMap(row -> Stream.of(names).map(name -> group + "-" + row + "-" + name))
                .anyMatch(field -> !fields.typed(field).isEmpty() || fields.error(field) != null);
    }

    /** What the page calls how much was done of planned work. */
    public String doneOf(Work work, View view) {
        return view.t("sheets.done-of", view.exactly(Objects.requireNonNull(work.planned())));
    }

    /** What it calls how much of a surface there is. */
    public String nowAt(Surface surface, View view) {
        return view.t("sheets.surface.now", surface.name());
    }

    /** What it calls the fields that are called by the thing they ask about. */
    public Map<String, String> labels(View view) {
        Map<String, String> labels = new HashMap<>();
        for (int row = 0; row < plan.size(); row++) {
            labels.put("line-" + row + "-done", view.t("forms.in-row", doneOf(plan.get(row), view), row + 1));
        }
        for (int row = 0; row < surfaces.size(); row++) {
            labels.put("surface-" + row + "-extent", nowAt(surfaces.get(row), view));
        }
        return labels;
    }

    /** How far one press of a stepper goes: areas are not counted one by one. */
    public String step(@Nullable Quantity planned) {
        return planned == null || planned.unit() == Unit.PIECE ? "1" : "10";
    }
}
