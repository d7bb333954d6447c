package eaveside.findings;

import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.SaveCustomer;
import eaveside.customers.SaveSite;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.PhotoId;
import eaveside.kernel.SiteId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
import java.util.List;

/** A visit of its own with a technician who notices things. */
final class FindingFixture {
    private final Bench bench;
    private final VisitId visit = VisitId.next();
    private final CustomerId customer = CustomerId.next();
    private final SiteId site = SiteId.next();
    private final UserId technician;

    FindingFixture(Bench bench) {
        this.bench = bench;
        this.technician = user(bench);
        Address address = new Address("1 Eaves Road", "Gutterby", "", "00001", "US");
        bench.get(SaveCustomer.class)
                .save(Customer.of(customer, "Kim Lark", CustomerType.HOUSEHOLD, address, 30), technician);
        bench.get(SaveSite.class).save(new Site(site, customer, "Home", address, "", "", true, true, 0), technician);
    }

    /** A technician as the access module would have added one, who cannot sign in. */
    static UserId user(Bench bench) {
        UserId id = UserId.next();
        bench.execute(
                "insert into app_user (id, username, name, role, password_hash) values (?, ?, 'Tess Ladder', 'TECHNICIAN',"
                        + " '$argon2id$v=19$m=1,t=1,p=1$none$none')",
                id.value(),
                "tess." + id);
        return id;
    }

    UserId technician() {
        return technician;
    }

    SiteId site() {
        return site;
    }

    VisitId visit() {
        return visit;
    }

    CustomerId customer() {
        return customer;
    }

    PhotoId photo(int width, int height) {
        PhotoId id = PhotoId.next();
        bench.get(StorePhoto.class).store(id, visit, technician, Pictures.jpeg(width, height));
        return id;
    }

    NewFinding finding(FindingId id, String type, String severity, List<PhotoId> photos) {
        return new NewFinding(
                id,
                new FindingTypeCode(type),
                new SeverityCode(severity),
                visit,
                customer,
                site,
                null,
                "Second row, near the chimney",
                true,
                photos,
                technician);
    }

    FindingId open(String type, String severity, List<PhotoId> photos) {
        NewFinding finding = finding(FindingId.next(), type, severity, photos);
        open(finding);
        return finding.id();
    }

    /** As signing a sheet off does it. */
    void open(NewFinding finding) {
        bench.inTransaction(() -> {
            bench.get(OpenFinding.class).open(finding);
            return finding;
        });
    }

    /** As reversing the sheet does it. */
    int withdraw(UserId by) {
        return bench.inTransaction(() -> bench.get(WithdrawFindings.class).ofVisit(visit, by));
    }
}
