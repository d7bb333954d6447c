package eaveside.web.customers;

import eaveside.web.View;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the fields of these forms are called, for comparing two versions. */
final class Labels {
    private Labels() {}

    @SafeVarargs
    static Map<String, String> of(View view, List<String>... names) {
        Map<String, String> labels = new LinkedHashMap<>();
        for (List<String> some : names) {
            some.forEach(name -> labels.put(name, view.t("customers.field." + name)));
        }
        return labels;
    }
}
