package eaveside.web.stock;

import eaveside.inventory.Mix;
import eaveside.inventory.MixRatio;
import eaveside.inventory.RatioMeaning;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveMix;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.MixId;
import eaveside.kernel.StockItemId;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
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
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The list of mixes and its form: one part of a concentrate to so many, by volume, said in words as well. */
@Path("/stock/mixes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class MixPages extends ListResource<MixPages.Made> {
    private static final String TEXTS = "stock.mixes";

    @Inject
    ReadStock readStock;

    @Inject
    SaveMix saveMix;

    /** A mix and what it is made of. */
    record Made(Mix mix, StockItem concentrate) {}

    /** @param  inWords what the ratio typed so far means; empty as long as it means nothing */
    public record MixForm(Form<Mix> form, String inWords) implements Page {
        @Override
        public String template() {
            return "stock/mix-form.jte";
        }
    }

    /** The one sentence of a form that is being filled in. */
    public record InWords(String inWords) implements Page {
        @Override
        public String template() {
            return "stock/inwords.jte";
        }
    }

    @Override
    protected Listing<Made> list() {
        View view = viewer.view();
        return Listing.whole(TEXTS, "/stock/mixes", query -> mixes())
                .column(
                        "name",
                        made -> made.mix().name(),
                        made -> "/stock/mixes/" + made.mix().id())
                .column(
                        "concentrate",
                        made -> made.concentrate().name(),
                        made -> "/stock/items/" + made.concentrate().id())
                .column("parts", made -> MixWords.ratio(view, made.mix().ratio()))
                .column(
                        "takes",
                        made -> MixWords.inWords(
                                view, made.mix().ratio(), made.concentrate().name()))
                .column("alkaline", made -> made.concentrate().alkaline())
                .column("active", made -> made.mix().active())
                .action("new", "/stock/mixes/new");
    }

    private List<Made> mixes() {
        Map<StockItemId, StockItem> items =
                readStock.items().stream().collect(Collectors.toMap(StockItem::id, Function.identity()));
        return readStock.mixes().stream()
                .map(mix -> new Made(mix, Objects.requireNonNull(items.get(mix.concentrate()))))
                .toList();
    }

    @GET
    @Path("new")
    @Transactional
    public MixForm fresh() {
        return page(viewer.form(
                Mix.class,
                Map.of("id", MixId.next().toString(), "meaning", RatioMeaning.ADDED_TO_WATER.name(), "active", "yes")));
    }

    @GET
    @Path("in-words")
    @Transactional
    public InWords inWords(@Context UriInfo asked) {
        return new InWords(inWords(viewer.fields(asked.getQueryParameters())));
    }

    @GET
    @Path("{id}")
    @Transactional
    public MixForm edit(@PathParam("id") MixId id) {
        return page(viewer.form(readStock.mix(id)));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<Mix> form) {
        MixForm page = page(form);
        return form.run(mix -> saveMix.save(mix, viewer.id()))
                ? Respond.to("/stock/mixes", "stock.mixes.saved")
                : Respond.again(form.fields(), page);
    }

    private MixForm page(Form<Mix> form) {
        form.labeled(TEXTS).choosing("concentrate", concentrates(form.fields()));
        return new MixForm(form, inWords(form.fields()));
    }

    /** Active concentrates, and the one that is chosen. */
    private Map<String, String> concentrates(Fields fields) {
        Map<String, String> concentrates = new LinkedHashMap<>();
        readStock.items().stream()
                .filter(item -> item.type() == StockType.CONCENTRATE)
                .filter(item -> item.active() || item.id().toString().equals(fields.typed("concentrate")))
                .forEach(item -> concentrates.put(item.id().toString(), item.name()));
        return concentrates;
    }

    private String inWords(Fields fields) {
        View view = viewer.view();
        // A copy, so that reading what is half typed does not mark it.
        MultivaluedMap<String, String> soFar = new MultivaluedHashMap<>();
        List.of("parts", "meaning").forEach(name -> soFar.putSingle(name, fields.typed(name)));
        MixRatio ratio = Form.sent(MixRatio.class, viewer.fields(soFar)).read();
        String concentrate = concentrates(fields).getOrDefault(fields.typed("concentrate"), view.t("stock.mixes.soap"));
        return ratio == null ? "" : MixWords.inWords(view, ratio, concentrate);
    }
}
