package eaveside.web.worklist;

import eaveside.pricing.QuoteStatus;
import eaveside.pricing.QuoteSummary;
import eaveside.pricing.ReadQuotes;
import eaveside.web.Names;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;

/** Quotes to finish, and quotes that the customer has not accepted or declined. */
@Dependent
class OpenQuotes implements Kind {
    @Inject
    ReadQuotes readQuotes;

    @Inject
    Names names;

    @Override
    public Waiting.Type type() {
        return Waiting.Type.QUOTE;
    }

    @Override
    public long count(View view) {
        return readQuotes.countOpen();
    }

    @Override
    public List<Waiting> longest(View view, int most) {
        return readQuotes.open(null, most).map(quote -> waiting(view, quote)).rows();
    }

    private Waiting waiting(View view, QuoteSummary quote) {
        boolean draft = quote.status() == QuoteStatus.DRAFT;
        return new Waiting(
                type(),
                quote.date(),
                quote.customer(),
                () -> view.t(
                        draft ? "worklist.quote-draft" : "worklist.quote-sent",
                        String.valueOf(quote.number()),
                        names.customer(quote.customer()),
                        view.shortDate(quote.validUntil())),
                quote.total(),
                "/quotes/" + quote.id(),
                draft ? "worklist.finish" : "worklist.follow-up");
    }
}
