package eaveside.findings.internal;

import eaveside.findings.Answer;
import eaveside.findings.AnswerId;
import eaveside.findings.FindingRefusal;
import eaveside.findings.FindingView;
import eaveside.kernel.FindingId;
import eaveside.kernel.Fingerprint;
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

/** An answer to a finding. */
@Entity
@Immutable
@Table(name = "finding_answer")
public class AnswerRow {
    /** What was done. */
    enum Action {
        NOTICE,
        UPSELL,
        REFERRAL,
        CLOSING
    }

    @Id
    UUID id;

    @Column(name = "finding_id")
    UUID findingId;

    @Enumerated(EnumType.STRING)
    Action action;

    /** Where a notice went, or whom a referral names. */
    String recipient = "";

    String trade = "";

    String note;

    @Column(name = "given_by")
    UUID givenBy;

    @Column(name = "given_at")
    Instant givenAt;

    String fingerprint;

    AnswerRow() {}

    public AnswerRow(Answer answer, Fingerprint fingerprint, Instant at) {
        this.id = answer.id().value();
        this.findingId = answer.finding().value();
        this.givenBy = answer.by().value();
        this.givenAt = at;
        this.fingerprint = fingerprint.hex();
        switch (answer) {
            case Answer.Notice notice -> {
                this.action = Action.NOTICE;
                this.recipient = notice.sentTo();
                this.note = notice.note();
            }
            case Answer.Upsell upsell -> {
                this.action = Action.UPSELL;
                this.note = upsell.note();
            }
            case Answer.Referral referral -> {
                this.action = Action.REFERRAL;
                this.trade = referral.trade();
                this.recipient = referral.referredTo();
                this.note = referral.note();
            }
            case Answer.Closing closing -> {
                this.action = Action.CLOSING;
                this.note = closing.reason();
            }
        }
    }

    public UUID finding() {
        return findingId;
    }

    /** Refuses other content under this id. */
    public void requireSame(Fingerprint other) {
        if (!fingerprint.equals(other.hex())) {
            throw new FindingRefusal.IdTaken("answer", id.toString());
        }
    }

    public FindingView.Given toGiven() {
        AnswerId answer = new AnswerId(id);
        FindingId finding = new FindingId(findingId);
        UserId by = new UserId(givenBy);
        return new FindingView.Given(
                switch (action) {
                    case NOTICE -> new Answer.Notice(answer, finding, recipient, note, by);
                    case UPSELL -> new Answer.Upsell(answer, finding, note, by);
                    case REFERRAL -> new Answer.Referral(answer, finding, trade, recipient, note, by);
                    case CLOSING -> new Answer.Closing(answer, finding, note, by);
                },
                givenAt);
    }
}
