package eaveside.visits;

import eaveside.kernel.Versioned;

/**
 * A change of a stored visit, or of what its job sheet changed in scope. It names the version that it started from, so that
 * nobody overwrites what they have not seen.
 */
public sealed interface VisitEdit extends Versioned permits Cancellation, ScopeChangeDecision, Rescheduling {
    @Override
    default String what() {
        return "visit";
    }
}
