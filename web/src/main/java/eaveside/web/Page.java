package eaveside.web;

/**
 * What a screen shows. A page is a record of plain values which a resource returns and {@link PageWriter} renders; its
 * template takes it as the parameter {@code page}, and the surroundings of the request as {@code view}.
 */
public interface Page {

    /** The template's path below {@code src/main/jte}, for instance {@code "customers/list.jte"}. */
    String template();
}
