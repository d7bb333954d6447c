package eaveside.visits.internal;

import eaveside.customers.CorrectSurface;
import eaveside.customers.Surface;
import eaveside.findings.NewFinding;
import eaveside.findings.OpenFinding;
import eaveside.findings.ReadFindings;
import eaveside.kernel.Elements;
import eaveside.kernel.Shared;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.visits.JobSheet;
import eaveside.visits.JobSheet.SurfaceFact;
import eaveside.visits.VisitRefusal;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.List;

/** Hands on what a sheet says about the site: surfaces to the customers' book, what was seen to the findings. */
@Shared
public class SiteFacts {
    private final CorrectSurface correctSurface;
    private final OpenFinding openFinding;
    private final ReadFindings readFindings;
    private final Surroundings surroundings;

    @Inject
    public SiteFacts(
            CorrectSurface correctSurface,
            OpenFinding openFinding,
            ReadFindings readFindings,
            Surroundings surroundings) {
        this.correctSurface = correctSurface;
        this.openFinding = openFinding;
        this.readFindings = readFindings;
        this.surroundings = surroundings;
    }

    /** Corrects the surfaces in the order of their ids, so that two visits never wait for one another. */
    public void correctSurfaces(VisitRow visit, JobSheet sheet) {
        List<SurfaceFact> inOrder = sheet.surfaceFacts().stream()
                .sorted(Comparator.comparing(fact -> fact.surface().value()))
                .toList();
        for (SurfaceFact fact : inOrder) {
            switch (fact) {
                case SurfaceFact.Recounted counted -> {
                    int index = sheet.surfaces().indexOf(counted);
                    Elements.at("surfaces", sheet.surfaces(), index, () -> corrected(visit, counted, sheet.by()));
                }
                case SurfaceFact.Found found -> {
                    int index = sheet.newSurfaces().indexOf(found);
                    Elements.at("newSurfaces", sheet.newSurfaces(), index, () -> added(visit, found, sheet.by()));
                }
            }
        }
    }

    private SurfaceId corrected(VisitRow visit, SurfaceFact.Recounted counted, UserId by) {
        surroundings.requireOfSite(visit.site(), counted.surface());
        correctSurface.correct(new CorrectSurface.Correction(counted.surface(), counted.extent(), visit.id(), by));
        return counted.surface();
    }

    private SurfaceId added(VisitRow visit, SurfaceFact.Found found, UserId by) {
        correctSurface.add(new CorrectSurface.Find(surface(visit, found), visit.id(), by));
        return found.surface();
    }

    private static Surface surface(VisitRow visit, SurfaceFact.Found found) {
        return new Surface(
                found.surface(),
                visit.site(),
                found.type(),
                found.name(),
                found.extent(),
                found.rows(),
                null,
                found.attributes(),
                true,
                0);
    }

    /** Opens what was seen, and refuses a skip that names a finding of another site. */
    public void openFindings(VisitRow visit, JobSheet sheet) {
        Elements.each("findings", sheet.findings(), (seen, i) -> {
            SurfaceId surface = seen.surface();
            if (surface != null) {
                surroundings.requireOfSite(visit.site(), surface);
            }
            openFinding.open(new NewFinding(
                    seen.id(),
                    seen.type(),
                    seen.severity(),
                    visit.id(),
                    visit.customer(),
                    visit.site(),
                    surface,
                    seen.note(),
                    seen.customerNotified(),
                    seen.photos(),
                    sheet.by()));
        });
        requireExplained(visit, sheet);
    }

    /** Refuses a finding of another site as the reason of a skip. */
    private void requireExplained(VisitRow visit, JobSheet sheet) {
        Elements.each(
                "lines",
                sheet.lines(),
                (line, i) -> Elements.each("skips", line.skips(), (skip, j) -> {
                    if (skip.finding() != null
                            && !readFindings.finding(skip.finding()).site().equals(visit.site())) {
                        throw new VisitRefusal.OtherSite("finding");
                    }
                }));
    }
}
