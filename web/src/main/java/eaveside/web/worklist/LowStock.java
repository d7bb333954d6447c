package eaveside.web.worklist;

import eaveside.inventory.ReadStock;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;

/** Items of which a location holds less than their reorder point. */
@Dependent
class LowStock implements Kind {
    @Inject
    ReadStock readStock;

    @Override
    public Waiting.Type type() {
        return Waiting.Type.STOCK;
    }

    @Override
    public long count(View view) {
        return readStock.belowReorderPoint().size();
    }

    @Override
    public List<Waiting> longest(View view, int most) {
        return readStock.belowReorderPoint().stream()
                .map(shortage -> new Waiting(
                        type(),
                        view.today(),
                        null,
                        () -> view.t(
                                "worklist.stock-low",
                                shortage.item().name(),
                                shortage.location().name(),
                                view.quantity(shortage.held()),
                                view.quantity(shortage.reorderPoint())),
                        null,
                        "/stock?location=" + shortage.location().id(),
                        "worklist.reorder"))
                .toList();
    }
}
