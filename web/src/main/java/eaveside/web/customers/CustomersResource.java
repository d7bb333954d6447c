package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.FindCustomers;
import eaveside.customers.FindCustomers.CustomerLine;
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
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Customers, found while one types. */
@Path("/customers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class CustomersResource {
    private static final int PAGE = 40;
    private static final int EXPORT_PAGE = 200;

    private final FindCustomers findCustomers;

    @Inject
    public CustomersResource(FindCustomers findCustomers) {
        this.findCustomers = findCustomers;
    }

    /**
     * A page of the list.
     *
     * @param all  whether those are listed too for whom nothing is done any more
     * @param csv  the address of the same list as a file
     * @param more the address of the next page, or null
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
            page.rows()
                    .forEach(c -> rows.add(List.of(
                            c.name(),
                            c.kind().name(),
                            c.street(),
                            c.city(),
                            c.phone(),
                            c.email(),
                            c.active() ? "yes" : "no")));
            after = page.next();
        } while (after != null);
        return Csv.download("customers", List.of("name", "kind", "street", "city", "phone", "email", "active"), rows);
    }
}
