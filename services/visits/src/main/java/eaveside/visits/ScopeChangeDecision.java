package eaveside.visits;

import eaveside.kernel.Default;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;

/** @param  version of the scope change as it was read */
public record ScopeChangeDecision(
        VisitId visit,
        ScopeChangeId scopeChange,
        int version,
        ScopeDecision decision,
        @Default String note,
        UserId by) implements VisitEdit {
    public ScopeChangeDecision {
        note = Texts.optional("note", note, 500);
    }

    @Override
    public String what() {
        return "scope change";
    }
}
