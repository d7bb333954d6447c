package eaveside.web.findings;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.findings.FindingView;
import eaveside.findings.Photo;
import eaveside.findings.ReadPhoto;
import eaveside.kernel.Shared;
import eaveside.reports.NoticePaper;
import eaveside.web.Names;
import eaveside.web.Texts;
import eaveside.web.View;
import eaveside.web.papers.Letterheads;
import eaveside.web.security.Viewer;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/** Puts findings of one site on paper for the customer. */
@Shared
public class NoticePapers {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    Names names;

    @Inject
    ReadPhoto readPhoto;

    @Inject
    Letterheads letterheads;

    @Inject
    Viewer viewer;

    NoticePaper paper(List<FindingView> findings) {
        View view = viewer.view();
        FindingView first = findings.getFirst();
        Customer customer = readCustomer.customer(first.customer());
        Site site = readCustomer.site(first.site());
        LocalDate seen = first.openedAt().atZone(view.zone()).toLocalDate();
        return new NoticePaper(
                letterheads.current(),
                view.today(),
                seen,
                customer.address().onPaper(customer.name()),
                site.address().onPaper(site.name()),
                text("greeting", customer.name()),
                findings.stream().map(this::finding).toList(),
                text("closing"));
    }

    private NoticePaper.Finding finding(FindingView finding) {
        return new NoticePaper.Finding(
                finding.type().name(),
                finding.severity().name(),
                names.surface(finding.surface()),
                finding.note(),
                finding.type().trade(),
                finding.type().caution(),
                finding.customerNotified(),
                finding.photos().stream()
                        .map(photo -> new NoticePaper.Photo(
                                readPhoto.picture(photo.id(), Photo.Size.FULL).jpeg(),
                                finding.type().name()))
                        .toList());
    }

    private static String text(String key, Object... arguments) {
        return Texts.of(Locale.ENGLISH, "findings.paper." + key, arguments);
    }
}
