package eaveside.web.worklist;

import eaveside.visits.ReadSentSheets;
import eaveside.web.Names;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;

/** What was sent from a site, did not become the visit's job sheet, and nobody has read. */
@Dependent
class SentSheets implements Kind {
    @Inject
    ReadSentSheets readSentSheets;

    @Inject
    Names names;

    @Override
    public Waiting.Type type() {
        return Waiting.Type.SHEET;
    }

    @Override
    public long count(View view) {
        return readSentSheets.countWaiting();
    }

    @Override
    public List<Waiting> longest(View view, int most) {
        return readSentSheets.waiting(most).stream()
                .map(sheet -> new Waiting(
                        type(),
                        sheet.at().atZone(view.zone()).toLocalDate(),
                        sheet.customer(),
                        () -> view.t(
                                sheet.urgent() ? "worklist.sheet-urgent" : "worklist.sheet-sent",
                                names.user(sheet.by()),
                                names.customer(sheet.customer())),
                        null,
                        "/visits/" + sheet.visit() + "/sent/" + sheet.id(),
                        "worklist.read"))
                .toList();
    }
}
