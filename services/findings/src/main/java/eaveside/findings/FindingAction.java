package eaveside.findings;

import eaveside.kernel.FindingId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;

/** What the office did about a finding. */
public sealed interface FindingAction {
    FindingActionId id();

    FindingId finding();

    UserId by();

    /**
     * A notice went to the customer.
     *
     * @param  sentTo the mail address, or how else it got there
     */
    record Notice(FindingActionId id, FindingId finding, String sentTo, String note, UserId by)
            implements FindingAction {
        public Notice {
            sentTo = Texts.required("sentTo", sentTo, 200);
            note = Texts.optional("note", note, 2000);
        }
    }

    /** Work that could come of it; a quote may then name the finding that it came from. */
    record Upsell(FindingActionId id, FindingId finding, String note, UserId by) implements FindingAction {
        public Upsell {
            note = Texts.required("note", note, 2000);
        }
    }

    /**
     * The customer was sent to a licensed trade.
     *
     * @param  trade      such as "electrician"
     * @param  referredTo whom, by name
     */
    record Referral(FindingActionId id, FindingId finding, String trade, String referredTo, String note, UserId by)
            implements FindingAction {
        public Referral {
            trade = Texts.required("trade", trade, 100);
            referredTo = Texts.required("referredTo", referredTo, 200);
            note = Texts.optional("note", note, 2000);
        }
    }

    /** Nothing more is to be done; the last answer of a finding. */
    record Closing(FindingActionId id, FindingId finding, String reason, UserId by) implements FindingAction {
        public Closing {
            reason = Texts.required("reason", reason, 2000);
        }
    }
}
