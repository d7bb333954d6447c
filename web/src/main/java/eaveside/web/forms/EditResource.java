package eaveside.web.forms;

import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;

/**
 * A {@link FormResource} whose rows are also edited, each under its key: a resource also says what is stored there.
 *
 * @param <K> what the address of a row says: its id, or a code
 */
public abstract class EditResource<R extends Record, K> extends FormResource<R> {
    protected EditResource(Class<R> type, String bundle, String address) {
        super(type, bundle, address);
    }

    /** What there is to edit under the key. */
    protected abstract R stored(K key);

    @GET
    @Path("{id}")
    @Transactional
    public EditPage edit(@PathParam("id") K key) {
        return page(viewer.form(stored(key)));
    }
}
