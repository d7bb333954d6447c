package eaveside.findings;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.FindingId;
import eaveside.kernel.UserId;

/** What the office did about a finding. */
public sealed interface FindingAction {
    FindingActionId id();

    FindingId finding();

    UserId by();

    /** What was done. */
    enum Type {
        NOTICE,
        UPSELL,
        REFERRAL,
        CLOSING
    }

    /**
     * A notice went to the customer.
     *
     * @param  sentTo the email address, or how else it got there
     */
    record Notice(
            FindingActionId id,
            FindingId finding,
            String sentTo,
            @Default String note,
            UserId by) implements FindingAction {
        public Notice {
            Check check = new Check();
            sentTo = check.required("sentTo", sentTo, 200);
            note = check.optional("note", note, 2000);
            check.done();
        }
    }

    /** Work that could come of it; a quote may then name the finding that it came from. */
    record Upsell(FindingActionId id, FindingId finding, String note, UserId by) implements FindingAction {
        public Upsell {
            Check check = new Check();
            note = check.required("note", note, 2000);
            check.done();
        }
    }

    /**
     * The customer was sent to a licensed trade.
     *
     * @param  trade      such as "electrician"
     * @param  referredTo whom, by name
     */
    record Referral(
            FindingActionId id,
            FindingId finding,
            String trade,
            String referredTo,
            @Default String note,
            UserId by) implements FindingAction {
        public Referral {
            Check check = new Check();
            trade = check.required("trade", trade, 100);
            referredTo = check.required("referredTo", referredTo, 200);
            note = check.optional("note", note, 2000);
            check.done();
        }
    }

    /** Nothing more is to be done; the last action of a finding. */
    record Closing(FindingActionId id, FindingId finding, String reason, UserId by) implements FindingAction {
        public Closing {
            Check check = new Check();
            reason = check.required("reason", reason, 2000);
            check.done();
        }
    }
}
