package eaveside.web;

import eaveside.kernel.CamelCase;

/**
 * What a screen shows. A page is a record of plain values which a resource returns and {@link PageWriter} renders; its
 * template takes it as the parameter {@code page}, and the surroundings of the request as {@code view}.
 */
public interface Page {

    /**
     * The template's path below {@code src/main/jte}. Unless a page says otherwise it is the one of its own name in the
     * folder of its package: {@code "quotes/no-book.jte"} for {@code eaveside.web.quotes}' {@code NoBookPage}.
     */
    default String template() {
        String folder = getClass().getPackageName().replaceFirst(".*\\.", "");
        String name = getClass().getSimpleName().replaceFirst("Page$", "");
        return folder + "/" + CamelCase.words(name, "-") + ".jte";
    }
}
