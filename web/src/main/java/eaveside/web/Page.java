package eaveside.web;

import eaveside.kernel.CamelCase;

/**
 * What a screen shows. A page is a record of plain values which a resource returns and {@link PageWriter} renders; its
 * template takes it as the parameter {@code page}, and the surroundings of the request as {@code view}.
 */
public interface Page {
    /**
     * The template's path below {@code src/main/jte}: unless the page says otherwise, by its own name in the folder that is
     * called like its package. {@code SiteFormPage} of {@code customers} is shown by {@code customers/site-form.jte}.
     */
    default String template() {
        String area = getClass().getPackageName().replaceFirst(".*\\.", "");
        String name = getClass().getSimpleName().replaceFirst("Page$", "");
        return area + "/" + CamelCase.words(name, "-") + ".jte";
    }
}
