package eaveside.web.forms;

import eaveside.kernel.UserId;
import eaveside.web.security.Viewer;
import jakarta.ws.rs.core.UriInfo;
import java.util.HashMap;
import java.util.Map;

/** What a record gets from the request instead of its body: the ids in the address, and the signed-in user as {@code by}. */
final class Given {
    private Given() {}

    /** The values by component, for those components that the address or the session decides. */
    static Map<String, Object> of(Shape<?> shape, UriInfo uri, Viewer viewer) {
        Map<String, Object> given = new HashMap<>();
        for (Shape.Field field : shape.fields()) {
            if (field.name().equals("by") && field.element() == UserId.class) {
                given.put("by", viewer.id());
                continue;
            }
            String inAddress = uri.getPathParameters().getFirst(field.name());
            if (inAddress != null && field.type() == Shape.Type.SINGLE) {
                given.put(field.name(), field.scalar().typed().read(field.name(), inAddress, viewer.notation()));
            }
        }
        return given;
    }
}
