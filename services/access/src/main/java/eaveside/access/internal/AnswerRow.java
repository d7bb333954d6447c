package eaveside.access.internal;

import eaveside.access.Answer;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What a request was answered with. */
@Entity
@Table(name = "kept_answer")
public class AnswerRow {
    @EmbeddedId
    AnswerKey key;

    @Column(updatable = false)
    int status;

    @Column(updatable = false)
    @Nullable
    String location;

    @Column(updatable = false)
    @Nullable
    String body;

    @Column(name = "answered_at", updatable = false)
    Instant answeredAt;

    AnswerRow() {}

    public AnswerRow(AnswerKey key, Answer answer, Instant at) {
        this.key = key;
        this.status = answer.status();
        this.location = answer.location();
        this.body = answer.body();
        this.answeredAt = at;
    }

    public Answer toAnswer() {
        return new Answer(status, location, body);
    }
}
