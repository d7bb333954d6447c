package eaveside.findings;

import eaveside.findings.internal.FindingPhotoRow;
import eaveside.findings.internal.FindingRow;
import eaveside.findings.internal.FindingTypeRow;
import eaveside.findings.internal.PhotoRow;
import eaveside.findings.internal.SeverityRow;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Clock;

/** Opens a finding from a job sheet, in the transaction that signs the sheet off. */
@Shared
public class OpenFinding {
    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public OpenFinding(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /**
     * Opens it once: the same finding again changes nothing. Takes a type that was retired since the technician's phone
     * loaded its list. Refuses unknown types and severities, photos that are not the visit's, and an id used before
     * with other content or withdrawn.
     */
    @Transactional(TxType.MANDATORY)
    public void open(NewFinding finding) {
        Fingerprint fingerprint = Fingerprint.of(finding);
        FindingRow before = entities.find(FindingRow.class, finding.id().value());
        if (before != null) {
            before.requireSame(fingerprint);
            return;
        }
        if (entities.find(FindingTypeRow.class, finding.type().value()) == null) {
            throw new KernelRefusal.NotFound("finding type", finding.type()).namedBy("type");
        }
        if (entities.find(SeverityRow.class, finding.severity().value()) == null) {
            throw new KernelRefusal.NotFound("severity", finding.severity()).namedBy("severity");
        }
        entities.persist(new FindingRow(finding, fingerprint, clock.instant()));
        int position = 0;
        for (PhotoId id : finding.photos()) {
            PhotoRow photo = entities.find(PhotoRow.class, id.value());
            if (photo == null || !photo.isOf(finding.visit())) {
                throw new FindingRefusal.PhotoNotOfVisit(id.toString());
            }
            entities.persist(new FindingPhotoRow(finding.id(), photo, ++position));
        }
        // The finding must stand before a skipped line of the sheet can point at it.
        entities.flush();
    }
}
