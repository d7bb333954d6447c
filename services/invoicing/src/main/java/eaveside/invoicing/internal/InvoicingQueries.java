package eaveside.invoicing.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.VisitId;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.processing.HQL;
import org.hibernate.annotations.processing.SQL;
import org.hibernate.query.Page;

/** Queries over drafts, invoices and payments; the annotation processor checks them when it compiles. */
public interface InvoicingQueries {
    EntityManager entityManager();

    @HQL("from DraftLineRow where key.invoiceId = :id order by key.position")
    List<DraftLineRow> draftLines(UUID id);

    @HQL("from DraftAdjustmentRow where key.invoiceId = :id order by key.position")
    List<DraftAdjustmentRow> draftAdjustments(UUID id);

    @HQL("from DraftRow where visitId = :visit")
    List<DraftRow> draftsOfVisit(VisitId visit);

    @HQL("from DraftRow where id < :before order by id desc")
    List<DraftRow> draftsBefore(UUID before, Page page);

    @HQL("select count(*), coalesce(sum(gross), 0) from DraftRow where serviceDate <= :day")
    DraftsInAll draftsBy(LocalDate day);

    /** How many drafts, and what they come to. */
    record DraftsInAll(Long drafts, BigDecimal gross) {}

    @HQL("from InvoiceLineRow where key.invoiceId = :id order by key.position")
    List<InvoiceLineRow> lines(UUID id);

    @HQL("from InvoiceAdjustmentRow where key.invoiceId = :id order by key.position")
    List<InvoiceAdjustmentRow> adjustments(UUID id);

    @HQL("from InvoiceTaxRow where key.invoiceId = :id order by key.position")
    List<InvoiceTaxRow> taxes(UUID id);

    @HQL("from InvoiceRow where visitId = :visit order by number desc")
    List<InvoiceRow> invoicesOfVisit(VisitId visit);

    @HQL("from InvoiceRow where number = :number")
    List<InvoiceRow> invoicesNumbered(long number);

    @HQL("from InvoiceRow where lower(reference) like :beginning and reference <> '' order by number desc")
    List<InvoiceRow> invoicesReferred(String beginning, Page page);

    @HQL("from InvoiceRow where number < :before order by number desc")
    List<InvoiceRow> invoicesBefore(long before, Page page);

    /** The newest invoices of a few customers: as many of each as a page holds, so that no history is walked. */
    @SQL(
            "select i.* from (select cast(c as uuid) as id from unnest(string_to_array(:customers, ',')) c) wanted "
                    + "cross join lateral (select * from invoice where customer_id = wanted.id and number < :before "
                    + "and open >= :least and due_date <= :dueUntil order by number desc limit :most) i order by i.number desc limit :most")
    List<InvoiceRow> invoicesOfCustomers(String customers, BigDecimal least, LocalDate dueUntil, long before, int most);

    @HQL("from InvoiceRow where open > 0 and dueDate <= :until and (dueDate, id) > (:afterDay, :afterId) "
            + "order by dueDate, id")
    List<InvoiceRow> outstanding(LocalDate until, LocalDate afterDay, UUID afterId, Page page);

    @HQL("from InvoiceRow where open > 0 and customerId in :customers order by dueDate, id")
    List<InvoiceRow> outstandingOf(Collection<CustomerId> customers);

    @HQL("select customerId, dueDate, sum(open) from InvoiceRow where open > 0 group by customerId, dueDate")
    List<OpenOfCustomer> openByCustomerAndDueDate();

    /**
     * The least unapplied credit that the ledger shows for the customer (with those merged into one) on the day or any
     * later one; below zero where money was used before it came.
     */
    @SQL(
            "select coalesce(min(running), 0) from (select sum(sum(moved.amount)) over (order by moved.day) as running from ("
                    + "select cast(:day as date) as day, cast(0 as numeric) as amount union all "
                    + "select greatest(e.posting_date, cast(:day as date)), -e.amount from money_entry e "
                    + "join account a on a.code = e.account_code where a.role = 'CUSTOMER_CREDIT' and e.customer_id in ("
                    + "select one.id from customer one, customer this where this.id = :customer "
                    + "and coalesce(one.merged_into, one.id) = coalesce(this.merged_into, this.id))"
                    + ") moved group by moved.day) days")
    BigDecimal leastCreditFrom(UUID customer, LocalDate day);

    @HQL("select dueDate, sum(open) from InvoiceRow where open > 0 group by dueDate")
    List<OpenOnDay> openByDueDate();

    @HQL("from SettlementRow where key.documentId = :document order by key.invoiceId")
    List<SettlementRow> settlementsBy(UUID document);

    @HQL("from SettlementRow where key.invoiceId = :invoice")
    List<SettlementRow> settlementsOf(UUID invoice);

    @HQL("from PaymentRow where customerId in :customers and number < :before order by number desc")
    List<PaymentRow> paymentsOf(Collection<CustomerId> customers, long before, Page page);

    /** A payment counts on its day, and is taken back on the day of its reversal. */
    @SQL("select coalesce(sum(case when d.posting_date between :from and :to then p.amount else 0 end "
            + "- case when r.posting_date between :from and :to then p.amount else 0 end), 0) from payment p "
            + "join document d on d.id = p.id left join document r on r.reverses = d.id "
            + "where d.posting_date between :from and :to or r.posting_date between :from and :to")
    BigDecimal received(LocalDate from, LocalDate to);

    @HQL("from PaymentRow where number = :number")
    List<PaymentRow> paymentsNumbered(long number);

    @HQL("from PaymentRow where lower(reference) like :beginning and reference <> '' order by number desc")
    List<PaymentRow> paymentsReferred(String beginning, Page page);

    @HQL("from PaymentRow where number < :before order by number desc")
    List<PaymentRow> paymentsBefore(long before, Page page);

    /** What a customer had open by due date. */
    record OpenOfCustomer(CustomerId customer, LocalDate dueDate, BigDecimal open) {}

    /** What was open by due date. */
    record OpenOnDay(LocalDate dueDate, BigDecimal open) {}
}
