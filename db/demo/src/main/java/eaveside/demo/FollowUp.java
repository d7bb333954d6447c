package eaveside.demo;

import eaveside.findings.ActOnFinding;
import eaveside.findings.FindingAction;
import eaveside.findings.FindingActionId;
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
            "arborist", "Hazelby Tree Care");

    private final ActOnFinding actOnFinding;

    @Inject
    FollowUp(ActOnFinding actOnFinding) {
        this.actOnFinding = actOnFinding;
    }

    void notifyCustomer(Scene scene, FindingId finding) {
        actOnFinding.sendNotice(new FindingAction.Notice(
                FindingActionId.next(),
                finding,
                "by email",
                "With the photos from the visit.",
                scene.staff().scheduler()));
    }

    void refer(Scene scene, FindingId finding, String trade) {
        actOnFinding.refer(new FindingAction.Referral(
                FindingActionId.next(),
                finding,
                trade,
                TRADES.getOrDefault(trade, "a licensed " + trade),
                "Licensed trade; not ours to mend.",
                scene.staff().scheduler()));
    }

    void noteUpsell(Scene scene, FindingId finding, String note) {
        actOnFinding.noteUpsell(new FindingAction.Upsell(
                FindingActionId.next(), finding, note, scene.staff().scheduler()));
    }

    void close(Scene scene, FindingId finding, String reason) {
        actOnFinding.close(new FindingAction.Closing(
                FindingActionId.next(), finding, reason, scene.staff().scheduler()));
    }
}
