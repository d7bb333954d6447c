package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.MixRatio;
import eaveside.inventory.RatioMeaning;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveMix;
import eaveside.kernel.MixId;
import eaveside.kernel.StockItemId;
import eaveside.web.Json;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What crews mix of a concentrate and water, for scripts. */
@Path("/api/stock/mixes")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Stock")
public class MixesApi {
    private final ReadStock readStock;
    private final SaveMix saveMix;
    private final AuditLog auditLog;

    @Inject
    public MixesApi(ReadStock readStock, SaveMix saveMix, AuditLog auditLog) {
        this.readStock = readStock;
        this.saveMix = saveMix;
        this.auditLog = auditLog;
    }

    /**
     * A mix: one part of the concentrate to so many, by volume.
     *
     * @param  concentrate the id of a consumable of type CONCENTRATE
     * @param  parts       a decimal number as text, one or more in solution, above zero added to water
     * @param  meaning     what the parts count: IN_SOLUTION the finished mix, ADDED_TO_WATER the water
     * @param  active      true where absent
     * @param  version     as read; absent for a new one
     */
    public record Mix(
            @Nullable String id,
            @Nullable String name,
            @Nullable String concentrate,
            @Nullable String parts,
            @Nullable String meaning,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Mix of(eaveside.inventory.Mix mix) {
            return new Mix(
                    mix.id().toString(),
                    mix.name(),
                    mix.concentrate().toString(),
                    mix.ratio().parts().toPlainString(),
                    mix.ratio().meaning().name(),
                    mix.active(),
                    mix.version());
        }

        eaveside.inventory.Mix read(MixId mix) {
            return new eaveside.inventory.Mix(
                    mix,
                    Json.required("name", name),
                    StockItemId.of(Json.required("concentrate", concentrate)),
                    new MixRatio(Json.number("parts", parts), Json.choice("meaning", RatioMeaning.class, meaning)),
                    active == null || active,
                    version);
        }
    }

    @GET
    @Transactional
    @Operation(summary = "All mixes, those no longer in use too")
    public List<Mix> mixes() {
        return readStock.mixes().stream().map(Mix::of).toList();
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A mix")
    public Mix mix(@PathParam("id") String id) {
        return Mix.of(readStock.mix(MixId.of(id)));
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Adds a mix, or changes the version named; the same again changes nothing")
    public Mix save(@PathParam("id") String id, @Nullable Mix body) {
        eaveside.inventory.Mix saved = saveMix.save(Json.required("body", body).read(MixId.of(id)));
        auditLog.done("mix.save", saved.name());
        return Mix.of(saved);
    }
}
