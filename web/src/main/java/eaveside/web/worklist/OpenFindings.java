package eaveside.web.worklist;

import eaveside.findings.ReadFindings;
import eaveside.web.Names;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;

/** Findings that are not closed. */
@Dependent
class OpenFindings implements Kind {
    @Inject
    ReadFindings readFindings;

    @Inject
    Names names;

    @Override
    public Waiting.Type type() {
        return Waiting.Type.FINDING;
    }

    @Override
    public long count(View view) {
        return readFindings.countOpen();
    }

    @Override
    public List<Waiting> longest(View view, int most) {
        return readFindings
                .open(null, most)
                .map(finding -> {
                    boolean untouched = finding.actions() == 0;
                    return new Waiting(
                            type(),
                            finding.openedAt().atZone(view.zone()).toLocalDate(),
                            finding.customer(),
                            () -> view.t(
                                    untouched ? "worklist.finding-new" : "worklist.finding-open",
                                    finding.typeName(),
                                    names.customer(finding.customer())),
                            null,
                            "/findings/" + finding.id(),
                            "worklist.follow-up");
                })
                .rows();
    }
}
