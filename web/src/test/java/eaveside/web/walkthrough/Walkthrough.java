package eaveside.web.walkthrough;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.schema.BooksProof;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * The main job from the quote to the margin, as office, technician and owner at their own browsers, on the demo company.
 * Pictures of the pages and the papers stay in {@link Person#kept}.
 */
final class Walkthrough {
    private static final String CUSTOMER = "Odalys Fennimore";

    private final Server server;
    private final Office office;
    private final Technician technician;
    private final Owner owner;
    private final LocalDate today;

    Walkthrough(Server server, Browser browser) throws IOException, SQLException {
        this.server = server;
        Path kept = Files.createDirectories(Person.kept(server));
        try (var old = Files.list(kept)) {
            for (Path file : old.toList()) {
                Files.delete(file);
            }
        }
        office = new Office(browser.desk(), server);
        technician = new Technician(browser.phone(), server);
        owner = new Owner(browser.desk(), server);
        today = LocalDate.ofInstant(server.clock().instant(), ZoneId.of(value("select zone from company")));
    }

    void oneJobFromTheQuoteToTheMargin() throws SQLException {
        String customer = theOfficeKnowsTheCustomer();
        String visit = theOfficeQuotesAndBooks(customer);
        theTechnicianSignsOffAWrongSheetAndTheOfficeReversesIt(visit);
        theTechnicianSignsOffTheRightSheet(visit);
        theOfficeDecidesEachScopeChange(visit);
        String invoice = theOfficeBillsAndIsPaid(visit);
        theOfficeFollowsUpWhatWasSeen(visit, customer);
        theOwnerReadsTheMargin(invoice);
        everyProofOfTheBooksHolds();
        assertEquals(List.of(), Person.FAULTS);
    }

    private String theOfficeKnowsTheCustomer() {
        office.go("worklist");
        office.look("worklist");
        String customer = office.opens(CUSTOMER);
        office.look("customer");
        String all = office.main();
        for (String known : List.of(
                "in 2 rows Story", "Skylights Story", "Windows Story", "1,900 sq ft", "Gate code", "Work safely")) {
            assertTrue(all.contains(known), known + " in " + all);
        }
        assertEquals(2, office.page.locator("main section.panel[aria-label]").count(), "sites");
        return customer;
    }

    private String theOfficeQuotesAndBooks(String customer) {
        String quote = office.quotes(customer);
        office.look("quote-accepted");
        assertTrue(office.text("h1").contains("Accepted"), office.text("h1"));
        assertTrue(office.paper("quotes/" + quote + ".pdf", "quote.pdf").contains(CUSTOMER));

        String visit = office.books(quote, "Bram");
        office.moves(visit, today, "Heavy rain is forecast for tomorrow");
        office.look("visit-rescheduled");
        assertTrue(office.main().contains("Heavy rain is forecast for tomorrow"));

        String other = office.schedulesWithoutQuote(customer);
        office.cancels(other, "Booked twice by mistake");
        office.look("visit-canceled");
        assertTrue(office.main().contains("Booked twice by mistake"));
        return visit;
    }

    private void theTechnicianSignsOffAWrongSheetAndTheOfficeReversesIt(String visit) {
        technician.opensSheet(visit);
        technician.look("sheet-empty");
        technician.fills("990");
        technician.look("sheet-filled");
        technician.signsOffWithoutSignal(visit);
        technician.look("sheet-signed");

        office.reversesTheSheetOf(visit, "990 minutes were meant to be 190");
        office.look("sheet-reversed");
        assertTrue(office.main().contains("Reversal") || office.main().contains("reversal"), office.main());
    }

    private void theTechnicianSignsOffTheRightSheet(String visit) {
        technician.opensSheet(visit);
        technician.fills("190");
        technician.signsOffAfterTheSessionEnded();
    }

    private void theOfficeDecidesEachScopeChange(String visit) {
        office.go("worklist");
        assertTrue(office.page.locator("main a[href=\"/visits/" + visit + "\"]").count() > 0, "waits to be billed");
        office.go("visits/" + visit);
        office.look("visit-done");
        office.decides("Skipped", "RETURN_VISIT");
        office.decides("Extra: 4", "BILL");
        office.decides("Extra: 2", "NO_CHARGE");
        office.look("visit-decided");
    }

    private String theOfficeBillsAndIsPaid(String visit) {
        String wrong = office.bills(visit);
        office.credits(wrong, "Addressed to the tenant by mistake");
        office.look("invoice-credited");

        String invoice = office.bills(visit);
        office.look("invoice-issued");
        String printed = office.paper("invoices/" + invoice + ".pdf", "invoice.pdf");
        String number = office.text("h1").replaceAll("\\D+", "");
        assertTrue(printed.contains(number) && printed.contains(CUSTOMER), printed);
        assertTrue(printed.contains("46"), "the panels that were washed");

        String payment = office.recordsPayment(invoice, "100.00");
        office.reversesPayment(payment, "It was another customer's money");
        office.look("payment-reversed");
        office.recordsPayment(invoice, "100.00");
        office.go("invoices/" + invoice);
        office.look("invoice-part-paid");
        office.recordsPayment(invoice, "");
        office.go("invoices/" + invoice);
        office.look("invoice-paid");
        assertTrue(office.main().contains("Paid"), office.main());
        return invoice;
    }

    private void theOfficeFollowsUpWhatWasSeen(String visit, String customer) {
        String cracked = office.opensFinding(visit, "Cracked");
        office.look("finding");
        office.sendsNotice(cracked);
        office.refers("Electrician", "Licensed electrician of the customer's choice");
        office.closes("The customer's electrician replaces both panels");
        office.look("finding-closed");

        String gutter = office.opensFinding(visit, "Blocked gutter");
        String quote = office.upsells(gutter, "Clean the gutter with the panes in spring");
        assertTrue(office.page.locator("a[href=\"/quotes/" + quote + "\"]").count() > 0, "the quote is on the finding");
        office.closes("Quoted");

        office.go("customers/" + customer);
        office.look("customer-afterwards");
        assertTrue(
                Pattern.compile("Skylights Story.{0,160}? 10\\b")
                        .matcher(office.main())
                        .find(),
                office.main());
    }

    private void theOwnerReadsTheMargin(String invoice) {
        YearMonth month = YearMonth.from(today);
        Map<String, List<String>> rows = owner.readsMargin(month.atDay(1), month.atEndOfMonth());
        String query = "?from=" + month.atDay(1) + "&to=" + month.atEndOfMonth();
        owner.readsTheSameOnPaper(rows, query);
        owner.readsTheSameInTheSpreadsheet(rows, query);
        owner.opensEveryFigure();
        owner.go("invoices/" + invoice);
        owner.follow("main td.num a[href^=\"/documents/\"]");
        owner.look("document-of-the-invoice");
    }

    private void everyProofOfTheBooksHolds() throws SQLException {
        try (Connection connection = server.database().asOwner().getConnection()) {
            List<String> broken = BooksProof.run(connection).stream()
                    .filter(proof -> !proof.holds())
                    .map(BooksProof.Result::toString)
                    .toList();
            assertEquals(List.of(), broken);
        }
    }

    private String value(String sql) throws SQLException {
        try (Connection connection = server.database().asOwner().getConnection();
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(sql)) {
            result.next();
            return result.getString(1);
        }
    }
}
