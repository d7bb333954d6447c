package eaveside.access;

import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

/** How much room a user wants between rows and fields: compact, or comfortable. Each for themselves, on every device. */
@Shared
public class SetSpacing {
    private final EntityManager entities;
    private final RecordAudit audit;

    @Inject
    public SetSpacing(EntityManager entities, RecordAudit audit) {
        this.entities = entities;
        this.audit = audit;
    }

    @Transactional
    public void set(UserId user, boolean comfortable) {
        entities.createNativeQuery("insert into user_preference (user_id, comfortable) values (:user, :comfortable)"
                        + " on conflict (user_id) do update set comfortable = excluded.comfortable")
                .setParameter("user", user.value())
                .setParameter("comfortable", comfortable)
                .executeUpdate();
        audit.done("user.spacing", user, comfortable ? "comfortable" : "compact");
    }
}
