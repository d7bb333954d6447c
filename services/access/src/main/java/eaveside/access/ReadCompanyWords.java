package eaveside.access;

import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;

/** The company's name, which no password should be made of. The table is asked: companies are kept by a module beside this one. */
@Shared
public class ReadCompanyWords {
    private final EntityManager entities;

    @Inject
    public ReadCompanyWords(EntityManager entities) {
        this.entities = entities;
    }

    @Transactional
    @SuppressWarnings("unchecked")
    public List<String> words() {
        return entities.createNativeQuery("select name from company", String.class)
                .getResultList();
    }
}
