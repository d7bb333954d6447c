package eaveside.web.forms;

import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * A list with the form of its rows: under {@code new} the form of a new one, and what is sent to the list's address is saved. A
 * resource says what the list is, and how a row is saved.
 *
 * @param <R> a row, which its form asks for field by field
 */
public abstract class FormResource<R extends Record> extends ListResource<R> {
    private final Class<R> type;
    private final String bundle;
    private final String address;

    /** @param  bundle the texts of both the list and the form */
    protected FormResource(Class<R> type, String bundle, String address) {
        this.type = type;
        this.bundle = bundle;
        this.address = address;
    }

    protected abstract void save(R row);

    /** What a new one begins with, beside an id and the boxes that are checked by default. */
    protected Map<String, String> first() {
        return Map.of();
    }

    /** The form as a page. */
    protected EditPage page(Form<R> form) {
        return EditPage.of(form, bundle, address);
    }

    /** The list of rows that come whole, with a link to a new one; its columns are still to be named. */
    protected Listing<R> rows(Supplier<List<R>> rows) {
        return Listing.<R>whole(bundle, address, query -> rows.get()).action("new", at("new"));
    }

    /** The address of the form of the row under that key. */
    protected String at(Object key) {
        return address + "/" + key;
    }

    @GET
    @Path("new")
    @Transactional
    public EditPage fresh() {
        return page(viewer.fresh(type, first()));
    }

    @POST
    public Response sent(Form<R> form) {
        return page(form).saved(form.run(this::save));
    }
}
