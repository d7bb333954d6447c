package eaveside.web;

import eaveside.kernel.CamelCase;

/**
 * What a screen shows. A page is a record of plain values which a resource returns and {@link PageWriter} renders; its
 * template takes it as the parameter {@code page}, and the surroundings of the request as {@code view}.
 */
public interface Page {

    /**
     * The template's path below {@code src/main/jte}. Where a page does not say it, its own name does:
     * {@code eaveside.web.visits.VisitPage} is shown by {@code visits/visit.jte}.
     */
    default String template() {
        String area = getClass().getPackageName().substring(Page.class.getPackageName().length() + 1);
        String page = getClass().getSimpleName().replaceFirst("Page$", "");
        return area + "/" + CamelCase.words(page, "-") + ".jte";
    }
}
