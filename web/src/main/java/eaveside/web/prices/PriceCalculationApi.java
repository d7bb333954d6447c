package eaveside.web.prices;

import eaveside.kernel.Money;
import eaveside.kernel.PriceBookId;
import eaveside.pricing.PriceWork;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.util.List;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Prices work for scripts without storing anything. */
@Path("/api/prices/calculation")
@Dependent
@Tag(name = "Prices")
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PriceCalculationApi extends JsonResource {
    @Inject
    PriceWork priceWork;

    /** The prices, net of tax, with the book that they are from. */
    public record Prices(PriceBookId book, List<LineAnswer> lines, Money total) {}

    @POST
    @Operation(summary = "Prices the work of a visit, each line with the sentence that explains it; stores nothing")
    public Prices price(PriceWork.Request request) {
        PriceWork.Answer answer = priceWork.answer(request);
        Locale locale = viewer.view().locale();
        return new Prices(
                answer.book(),
                answer.work().lines().stream()
                        .map(line -> LineAnswer.of(line, locale))
                        .toList(),
                answer.work().total());
    }
}
