package eaveside.web.forms;

import eaveside.web.Page;
import eaveside.web.View;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Set;

/**
 * The page of a simple form: every field of its record in turn, saved under the address of its list, to which it returns.
 * Its texts are of the list's bundle: {@code title} of the list, {@code new}, {@code edit}, {@code saved}, and the labels.
 *
 * @param  fixed fields that are typed once, while the thing is new, and only shown afterwards
 * @param  areas fields of several lines
 * @param  template that shows it: every field of the record in turn, unless it is another
 */
public record EditPage(
        Form<?> form, String bundle, String address, Set<String> fixed, Set<String> areas, String template)
        implements Page {
    public static EditPage of(Form<?> form, String bundle, String address) {
        return new EditPage(form.labeled(bundle), bundle, address, Set.of(), Set.of("note"), "parts/edit-page.jte");
    }

    /** With fields that never change once they are saved. */
    public EditPage fixing(String... names) {
        return new EditPage(form, bundle, address, Set.of(names), areas, template);
    }

    /** With fields of several lines. */
    public EditPage areas(String... names) {
        return new EditPage(form, bundle, address, fixed, Set.of(names), template);
    }

    /** By a template of its own, where there is more to the form than one field after the other. */
    public EditPage shownBy(String ownTemplate) {
        return new EditPage(form, bundle, address, fixed, areas, ownTemplate);
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

    /** Whether the field is only shown. */
    public boolean isFixed(String name) {
        return fixed.contains(name) && !form.isNew();
    }

    /** Back to the list once it is saved; otherwise the form again, with what is wrong. */
    public Response saved(boolean done) {
        return done ? Respond.to(address, bundle + ".saved") : Respond.again(form.fields(), this);
    }
}
