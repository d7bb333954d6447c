package eaveside.web.forms;

import eaveside.web.Page;
import eaveside.web.View;
import jakarta.ws.rs.core.Response;
import java.util.List;

/**
 * The page of a simple form: every field of its record in turn, saved under the address of its list, to which it returns.
 * Its texts are of the list's bundle: {@code title} of the list, {@code new}, {@code edit}, {@code saved}, and the labels.
 */
public record EditPage(Form<?> form, String bundle, String address) implements Page {
    public static EditPage of(Form<?> form, String bundle, String address) {
        return new EditPage(form.labeled(bundle), bundle, address);
    }

    @Override
    public String template() {
        return "parts/edit-page.jte";
    }

    public String title(View view) {
        return view.t(bundle + (form.isNew() ? ".new" : ".edit"));
    }

    /** The fields that people fill in. */
    public List<Shape.Field> fields() {
        return form.shape().fields().stream()
                .filter(field -> !List.of("id", "version", "by").contains(field.name()))
                .toList();
    }

    /** Back to the list once it is saved; otherwise the form again, with what is wrong. */
    public Response saved(boolean done) {
        return done ? Respond.to(address, bundle + ".saved") : Respond.again(form.fields(), this);
    }
}
