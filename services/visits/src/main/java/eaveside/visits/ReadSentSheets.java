package eaveside.visits;

import eaveside.kernel.SentSheetId;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.visits.internal.SentSheets;
import eaveside.visits.internal.VisitQueries;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/** Shows the office what was sent as a visit's sheet and did not become it. */
@Shared
public class ReadSentSheets {
    private final SentSheets sentSheets;
    private final VisitQueries queries;

    @Inject
    public ReadSentSheets(SentSheets sentSheets, VisitQueries queries) {
        this.sentSheets = sentSheets;
        this.queries = queries;
    }

    /** Refuses an unknown id. */
    @Transactional
    public SentSheet sheet(SentSheetId id) {
        return sentSheets.view(sentSheets.required(id));
    }

    /** All that were sent for a visit, the oldest first. */
    @Transactional
    public List<SentSheet> ofVisit(VisitId visit) {
        return queries.sentSheetsOf(visit).stream().map(sentSheets::view).toList();
    }
}
