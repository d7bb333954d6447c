package eaveside.access;

import eaveside.access.internal.AnswerKey;
import eaveside.access.internal.AnswerRow;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what requests were answered with, so that one that is sent again gets its answer also where its thing has been
 * changed since. That a request is not carried out twice does not rest on it: each use case knows its retries.
 */
@Shared
public class KeepAnswers {
    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public KeepAnswers(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /** @param  request SHA-256 of all that makes it the same */
    @Transactional
    public Optional<Answer> find(UserId by, String request) {
        @Nullable AnswerRow row = entities.find(AnswerRow.class, new AnswerKey(by.value(), request));
        return Optional.ofNullable(row).map(AnswerRow::toAnswer);
    }

    /** The answer to the last time that the request did something; of two at once it is either's. */
    @Transactional
    public void keep(UserId by, String request, Answer answer) {
        entities.createNativeQuery("insert into kept_answer (user_id, request, status, location, body, answered_at)"
                        + " values (:by, :request, :status, :location, :body, :at) on conflict (user_id, request) do update"
                        + " set status = excluded.status, location = excluded.location, body = excluded.body,"
                        + " answered_at = excluded.answered_at")
                .setParameter("by", by.value())
                .setParameter("request", request)
                .setParameter("status", answer.status())
                .setParameter("location", answer.location())
                .setParameter("body", answer.body())
                .setParameter("at", clock.instant())
                .executeUpdate();
    }
}
