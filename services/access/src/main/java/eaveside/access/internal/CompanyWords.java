package eaveside.access.internal;

import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;

/** The company's name, which no password should be made of. The table is asked: companies are kept by a module beside this one. */
@Shared
public class CompanyWords {
    private final EntityManager entities;

    @Inject
    public CompanyWords(EntityManager entities) {
        this.entities = entities;
    }

    @Transactional
    @SuppressWarnings("unchecked")
    public List<String> words() {
        return entities.createNativeQuery("select name from company", String.class)
                .getResultList();
    }
}
