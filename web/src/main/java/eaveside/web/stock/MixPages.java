package eaveside.web.stock;

import eaveside.inventory.Mix;
import eaveside.inventory.RatioMeaning;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveMix;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.MixId;
import eaveside.kernel.StockItemId;
import eaveside.web.View;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.EditResource;
import eaveside.web.forms.Form;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Options;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The list of mixes and its form: one part of a concentrate to so many, by volume, said in words as well. */
@Path("/stock/mixes")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class MixPages extends EditResource<Mix, MixId> {
    @Inject
    ReadStock readStock;

    @Inject
    SaveMix saveMix;

    public MixPages() {
        super(Mix.class, "stock.mixes", "/stock/mixes");
    }

    @Override
    protected Listing<Mix> list() {
        View view = viewer.view();
        Map<StockItemId, StockItem> items =
                readStock.items().stream().collect(Collectors.toMap(StockItem::id, Function.identity()));
        Function<Mix, StockItem> concentrate = mix -> Objects.requireNonNull(items.get(mix.concentrate()));
        return rows(readStock::mixes)
                .opening("name", mix -> at(mix.id()))
                .column("concentrate", mix -> concentrate.apply(mix).name(), mix -> "/stock/items/" + mix.concentrate())
                .column("parts", mix -> MixWords.ratio(view, mix.ratio()))
                .column(
                        "takes",
                        mix -> MixWords.inWords(
                                view, mix.ratio(), concentrate.apply(mix).name()))
                .column("alkaline", mix -> concentrate.apply(mix).alkaline())
                .columns("active");
    }

    @Override
    protected Map<String, String> first() {
        return Map.of("meaning", RatioMeaning.ADDED_TO_WATER.name());
    }

    @Override
    protected Mix stored(MixId id) {
        return readStock.mix(id);
    }

    @Override
    protected void save(Mix mix) {
        saveMix.save(mix, viewer.id());
    }

    /** The one sentence of a form that is being filled in. */
    @GET
    @Path("in-words")
    @Transactional
    public EditPage inWords() {
        return page(Form.sent(Mix.class, viewer.fields(asked.getQueryParameters())))
                .shownBy("stock/inwords.jte");
    }

    /** With active concentrates, and the one that is chosen. */
    @Override
    protected EditPage page(Form<Mix> form) {
        List<StockItem> concentrates = readStock.items().stream()
                .filter(item -> item.type() == StockType.CONCENTRATE)
                .filter(item -> item.active()
                        || item.id().toString().equals(form.fields().typed("concentrate")))
                .toList();
        form.choosing("concentrate", Options.of(concentrates, StockItem::id, StockItem::name));
        return super.page(form).shownBy("stock/mix-form.jte");
    }
}
