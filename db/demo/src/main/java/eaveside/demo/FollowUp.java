package eaveside.demo;

import eaveside.findings.Answer;
import eaveside.findings.AnswerFinding;
import eaveside.findings.AnswerId;
import eaveside.kernel.FindingId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.Map;

/** What the office does about findings. */
@Dependent
class FollowUp {
    private static final Map<String, String> TRADES = Map.of(
            "electrician", "Pinnock Electric, Tansyford",
            "glazier", "Orrin Glass and Frame",
            "tree surgeon", "Hazelby Tree Care");

    private final AnswerFinding answerFinding;

    @Inject
    FollowUp(AnswerFinding answerFinding) {
        this.answerFinding = answerFinding;
    }

    void notifyCustomer(Scene scene, FindingId finding) {
        answerFinding.sendNotice(new Answer.Notice(
                AnswerId.next(),
                finding,
                "by e-mail",
                "With the photos from the visit.",
                scene.staff().booker()));
    }

    void refer(Scene scene, FindingId finding, String trade) {
        answerFinding.refer(new Answer.Referral(
                AnswerId.next(),
                finding,
                trade,
                TRADES.getOrDefault(trade, "a licensed " + trade),
                "Licensed trade; not ours to mend.",
                scene.staff().booker()));
    }

    void noteUpsell(Scene scene, FindingId finding, String note) {
        answerFinding.noteUpsell(
                new Answer.Upsell(AnswerId.next(), finding, note, scene.staff().booker()));
    }

    void close(Scene scene, FindingId finding, String reason) {
        answerFinding.close(new Answer.Closing(
                AnswerId.next(), finding, reason, scene.staff().booker()));
    }
}
