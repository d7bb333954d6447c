package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.Mix;
import eaveside.inventory.MixRatio;
import eaveside.inventory.RatioMeaning;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveMix;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.MixId;
import eaveside.kernel.Refusal;
import eaveside.kernel.StockItemId;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.math.BigDecimal;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What crews mix of a concentrate and water: one part to so many, by volume, said in words as well. */
@Path("/stock/mixes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class MixResource {
    private final ReadStock readStock;
    private final SaveMix saveMix;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public MixResource(ReadStock readStock, SaveMix saveMix, Viewer viewer, AuditLog auditLog) {
        this.readStock = readStock;
        this.saveMix = saveMix;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** A mix and what it is made of. */
    public record Made(Mix mix, StockItem concentrate) {}

    /** @param  concentrates whether there is any consumable to make a mix of */
    public record MixesPage(List<Made> mixes, boolean concentrates) implements Page {
        @Override
        public String template() {
            return "stock/mixes.jte";
        }
    }

    /**
     * The form.
     *
     * @param  concentrates by id
     * @param  inWords      what the ratio typed so far means; empty as long as it means nothing
     */
    public record MixPage(
            Fields fields,
            boolean isNew,
            Map<String, String> concentrates,
            Map<String, String> meanings,
            String inWords)
            implements Page {
        @Override
        public String template() {
            return "stock/mix-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            labels.put("name", view.t("stock.mix.name"));
            labels.put("concentrate", view.t("stock.mix.concentrate"));
            labels.put("ratio", view.t("stock.mix.ratio"));
            labels.put("meaning", view.t("stock.mix.meaning"));
            labels.put("active", view.t("settings.in-use"));
            return labels;
        }

        public Map<String, String> texts(View view) {
            Map<String, String> texts = new LinkedHashMap<>(concentrates);
            texts.putAll(meanings);
            texts.put("yes", view.t("common.yes"));
            return texts;
        }
    }

    /** The one sentence of a form that is being filled in. */
    public record InWords(String inWords) implements Page {
        @Override
        public String template() {
            return "stock/inwords.jte";
        }
    }

    @GET
    @Transactional
    public MixesPage mixes() {
        Map<StockItemId, StockItem> items =
                readStock.items().stream().collect(Collectors.toMap(StockItem::id, Function.identity()));
        return new MixesPage(
                readStock.mixes().stream()
                        .flatMap(mix ->
                                Optional.ofNullable(items.get(mix.concentrate()))
                                        .map(item -> new Made(mix, item))
                                        .stream())
                        .toList(),
                items.values().stream().anyMatch(item -> item.type() == StockType.CONCENTRATE));
    }

    @GET
    @Path("new")
    @Transactional
    public MixPage fresh() {
        return page(Fields.showing(
                Map.of("id", MixId.next().toString(), "meaning", RatioMeaning.ADDED_TO_WATER.name(), "active", "yes")));
    }

    @GET
    @Path("in-words")
    @Transactional
    public InWords inWords(@Context UriInfo asked) {
        Fields fields = viewer.fields(asked.getQueryParameters());
        return new InWords(inWords(fields, concentrates(fields)));
    }

    @GET
    @Path("{id}")
    @Transactional
    public MixPage edit(@PathParam("id") String id) {
        Mix mix = readStock.mix(MixId.of(id));
        Map<String, String> values = values(mix);
        values.put("id", mix.id().toString());
        values.put("version", String.valueOf(mix.version()));
        return page(Fields.showing(values));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        MixId id = new MixId(fields.id("id"));
        Integer version = Versions.read(fields);
        String name = fields.text("name");
        String concentrate = fields.optional("concentrate");
        if (concentrate.isEmpty()) {
            fields.wrong("concentrate", "forms.choose");
        }
        MixRatio ratio = ratio(fields);
        boolean saved = fields.run(
                () -> saveMix.save(new Mix(
                        id,
                        name,
                        StockItemId.of(concentrate),
                        // Nothing runs as long as there is an error, and without a ratio there is one.
                        ratio == null ? MixRatio.inSolution("1") : ratio,
                        fields.ticked("active"),
                        version)),
                refusal -> meanwhile(refusal, id));
        if (!saved) {
            return Response.status(fields.status()).entity(page(fields)).build();
        }
        auditLog.done("mix.save", name);
        return Response.seeOther(URI.create("/stock/mixes?done=stock.saved")).build();
    }

    private static @Nullable MixRatio ratio(Fields fields) {
        BigDecimal parts = fields.decimal("ratio");
        RatioMeaning meaning = fields.choice("meaning", RatioMeaning.class);
        return meaning == null || fields.error("ratio") != null
                ? null
                : fields.made("ratio", () -> new MixRatio(parts, meaning));
    }

    private Optional<Fields.Stored> meanwhile(Refusal refusal, MixId id) {
        if (refusal instanceof InventoryRefusal.Stale || refusal instanceof InventoryRefusal.IdTaken) {
            Mix theirs = readStock.mix(id);
            return Optional.of(Versions.stored(theirs.version(), values(theirs)));
        }
        return Optional.empty();
    }

    private MixPage page(Fields fields) {
        View view = viewer.view();
        Map<String, String> concentrates = concentrates(fields);
        Map<String, String> meanings = new LinkedHashMap<>();
        for (RatioMeaning meaning : RatioMeaning.values()) {
            meanings.put(meaning.name(), view.t("stock.mix.meaning", meaning));
        }
        return new MixPage(fields, Versions.isNew(fields), concentrates, meanings, inWords(fields, concentrates));
    }

    /** Concentrates in use, and the one that is chosen. */
    private Map<String, String> concentrates(Fields fields) {
        Map<String, String> concentrates = new LinkedHashMap<>();
        readStock.items().stream()
                .filter(item -> item.type() == StockType.CONCENTRATE)
                .filter(item -> item.active() || item.id().toString().equals(fields.typed("concentrate")))
                .forEach(item -> concentrates.put(item.id().toString(), item.name()));
        return concentrates;
    }

    private String inWords(Fields fields, Map<String, String> concentrates) {
        View view = viewer.view();
        // A copy, so that reading what is half typed does not mark it.
        Fields soFar = Fields.showing(Map.of("ratio", fields.typed("ratio"), "meaning", fields.typed("meaning")));
        MixRatio ratio = ratio(soFar);
        String concentrate = concentrates.getOrDefault(fields.typed("concentrate"), view.t("stock.mix.soap"));
        return ratio == null ? "" : MixWords.inWords(view, ratio, concentrate);
    }

    private static Map<String, String> values(Mix mix) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("name", mix.name());
        values.put("concentrate", mix.concentrate().toString());
        values.put("ratio", mix.ratio().parts().toPlainString());
        values.put("meaning", mix.ratio().meaning().name());
        values.put("active", mix.active() ? "yes" : "");
        return values;
    }
}
