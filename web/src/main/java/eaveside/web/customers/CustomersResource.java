package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.Customer;
import eaveside.customers.FindCustomers;
import eaveside.customers.FindCustomers.CustomerLine;
import eaveside.customers.ImportColumn;
import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Customers, found while one types. */
@Path("/customers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class CustomersResource {
    private static final int PAGE = 40;
    private static final int EXPORT_PAGE = 200;

    /** Those that the import reads, so that the file can be imported. */
    private static final List<ImportColumn> COLUMNS =
            List.copyOf(EnumSet.range(ImportColumn.CUSTOMER, ImportColumn.ACTIVE));

    private final FindCustomers findCustomers;
    private final ReadCustomer readCustomer;

    @Inject
    public CustomersResource(FindCustomers findCustomers, ReadCustomer readCustomer) {
        this.findCustomers = findCustomers;
        this.readCustomer = readCustomer;
    }

    /**
     * A page of the list.
     *
     * @param  all  whether those are listed too for whom nothing is done any more
     * @param  csv  the address of the same list as a file
     * @param  more the address of the next page, or null
     */
    public record CustomersPage(
            String search,
            boolean all,
            Slice<CustomerLine> customers,
            String csv,
            @Nullable String more) implements Page {
        @Override
        public String template() {
            return "customers/customers.jte";
        }
    }

    @GET
    @Transactional
    public CustomersPage customers(
            @QueryParam("q") @DefaultValue("") String search,
            @QueryParam("all") @DefaultValue("") String all,
            @QueryParam("after") @Nullable String after) {
        boolean everybody = !all.isEmpty();
        Slice<CustomerLine> found = findCustomers.find(search, !everybody, after, PAGE);
        return new CustomersPage(
                search,
                everybody,
                found,
                address("/customers/list.csv", search, everybody, null),
                found.next() == null ? null : address("/customers", search, everybody, found.next()));
    }

    private static String address(String path, String search, boolean all, @Nullable String after) {
        UriBuilder address = UriBuilder.fromPath(path).queryParam("q", "{q}");
        if (all) {
            address.queryParam("all", "yes");
        }
        return after == null
                ? address.build(search).toString()
                : address.queryParam("after", "{after}").build(search, after).toString();
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(
            @QueryParam("q") @DefaultValue("") String search, @QueryParam("all") @DefaultValue("") String all) {
        List<List<String>> rows = new ArrayList<>();
        String after = null;
        do {
            Slice<CustomerLine> page = findCustomers.find(search, all.isEmpty(), after, EXPORT_PAGE);
            List<CustomerId> ids = page.rows().stream().map(CustomerLine::id).toList();
            Map<CustomerId, Customer> customers = readCustomer.customers(ids);
            ids.forEach(id -> rows.add(row(Objects.requireNonNull(customers.get(id)))));
            after = page.next();
        } while (after != null);
        return Csv.download(
                "customers", COLUMNS.stream().map(column -> column.title()).toList(), rows);
    }

    private static List<String> row(Customer customer) {
        return COLUMNS.stream().map(column -> cell(customer, column)).toList();
    }

    private static String cell(Customer c, ImportColumn column) {
        return switch (column) {
            case CUSTOMER -> c.name();
            case TYPE -> ImportColumn.title(c.type());
            case STREET -> c.address().street();
            case CITY -> c.address().city();
            case REGION -> c.address().region();
            case ZIP_CODE -> c.address().zipCode();
            case COUNTRY -> c.address().country();
            case EMAIL -> c.email();
            case PHONE -> c.phone();
            case PAYMENT_TERM_DAYS -> String.valueOf(c.paymentTermDays());
            case NOTE -> c.note();
            case ACTIVE -> c.active() ? "yes" : "no";
            default -> throw new IllegalArgumentException(column + " is not a customer's own");
        };
    }
}
