package eaveside.web.stock;

import eaveside.inventory.MixRatio;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.web.View;
import eaveside.web.forms.Form;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Set;

/** How strong a mix is, as a crew would measure it out. */
public final class MixWords {
    /** What a measuring cup can show. */
    private static final MathContext DIGITS = new MathContext(3, RoundingMode.HALF_UP);

    private MixWords() {}

    /** Such as {@code 1 : 32 added to water}. */
    public static String ratio(View view, MixRatio ratio) {
        return view.t("stock.mixes.ratio." + ratio.meaning().name(), view.number(ratio.parts()));
    }

    /** What a gallon of the mix takes in fluid ounces, or a liter in milliliters, to three digits. */
    public static String inWords(View view, MixRatio ratio, String concentrate) {
        Quantity whole = Quantity.of(1, view.us() ? Unit.US_GALLON : Unit.LITER)
                .in(view.us() ? Unit.US_FLUID_OUNCE : Unit.MILLILITER);
        Quantity soap = ratio.concentrateIn(whole);
        return view.t(
                view.us() ? "stock.mixes.takes.US" : "stock.mixes.takes.METRIC",
                view.quantity(about(soap)),
                concentrate,
                view.quantity(about(whole.minus(soap))));
    }

    /** The same of what has been typed into a mix's form so far; empty as long as it means nothing. */
    public static String inWords(View view, Form<?> form) {
        // Read from a copy, so that what is half typed is not marked.
        MixRatio ratio =
                Form.sent(MixRatio.class, form.fields().without(Set.of())).read();
        String concentrate = form.options("concentrate")
                .getOrDefault(form.fields().typed("concentrate"), view.t("stock.mixes.soap"));
        return ratio == null ? "" : inWords(view, ratio, concentrate);
    }

    private static Quantity about(Quantity exact) {
        return Quantity.of(exact.value().round(DIGITS), exact.unit());
    }
}
