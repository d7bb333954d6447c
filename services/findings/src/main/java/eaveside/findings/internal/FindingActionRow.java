package eaveside.findings.internal;

import eaveside.findings.FindingAction;
import eaveside.findings.FindingActionId;
import eaveside.findings.FindingView;
import eaveside.kernel.FindingId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** An action on a finding. */
@Entity
@Immutable
@Table(name = "finding_action")
public class FindingActionRow {
    @Id
    UUID id;

    @Column(name = "finding_id")
    FindingId findingId;

    @Enumerated(EnumType.STRING)
    FindingAction.Type type;

    /** Where a notice went, or whom a referral names. */
    String recipient = "";

    String trade = "";

    String note;

    @Column(name = "given_by")
    UserId givenBy;

    @Column(name = "given_at")
    Instant givenAt;

    String fingerprint;

    FindingActionRow() {}

    public FindingActionRow(FindingAction action, Fingerprint fingerprint, Instant at) {
        this.id = action.id().value();
        this.findingId = action.finding();
        this.givenBy = action.by();
        this.givenAt = at;
        this.fingerprint = fingerprint.hex();
        switch (action) {
            case FindingAction.Notice notice -> {
                this.type = FindingAction.Type.NOTICE;
                this.recipient = notice.sentTo();
                this.note = notice.note();
            }
            case FindingAction.Upsell upsell -> {
                this.type = FindingAction.Type.UPSELL;
                this.note = upsell.note();
            }
            case FindingAction.Referral referral -> {
                this.type = FindingAction.Type.REFERRAL;
                this.trade = referral.trade();
                this.recipient = referral.referredTo();
                this.note = referral.note();
            }
            case FindingAction.Closing closing -> {
                this.type = FindingAction.Type.CLOSING;
                this.note = closing.reason();
            }
        }
    }

    public FindingId finding() {
        return findingId;
    }

    /** Refuses other content under this id. */
    public void requireSame(Fingerprint other) {
        if (!fingerprint.equals(other.hex())) {
            throw new KernelRefusal.IdTaken("finding action", id, "of other content");
        }
    }

    public FindingView.Action toAction() {
        FindingActionId action = new FindingActionId(id);
        return new FindingView.Action(
                type,
                switch (type) {
                    case NOTICE -> new FindingAction.Notice(action, findingId, recipient, note, givenBy);
                    case UPSELL -> new FindingAction.Upsell(action, findingId, note, givenBy);
                    case REFERRAL -> new FindingAction.Referral(action, findingId, trade, recipient, note, givenBy);
                    case CLOSING -> new FindingAction.Closing(action, findingId, note, givenBy);
                },
                givenAt);
    }
}
