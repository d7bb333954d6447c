package eaveside.customers.internal;

import eaveside.kernel.Shared;
import eaveside.kernel.Texts;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.stream.Stream;

/** Cuts what was typed into words, as the database itself cuts and lowers them; letters and digits only, so safe in a pattern. */
@Shared
class SearchedWords {
    private static final int MOST_WORDS = 8;
    private static final int LONGEST_TEXT = 200;

    private final EntityManager entities;

    @Inject
    SearchedWords(EntityManager entities) {
        this.entities = entities;
    }

    /** Refuses a text of more than 200 characters. */
    List<String> of(String text) {
        String given = Texts.optional("text", text, LONGEST_TEXT);
        String cut = (String) entities.createNativeQuery("select search_words(:text)", String.class)
                .setParameter("text", given)
                .getSingleResult();
        return cut.isBlank()
                ? List.of()
                : Stream.of(cut.strip().split(" ")).distinct().limit(MOST_WORDS).toList();
    }
}
