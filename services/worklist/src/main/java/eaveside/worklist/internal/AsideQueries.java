package eaveside.worklist.internal;

import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.processing.SQL;
import org.jspecify.annotations.Nullable;

/** What is put aside; the annotation processor checks the queries when it compiles. */
public interface AsideQueries {
    EntityManager entityManager();

    @SQL(
            "insert into put_aside (type, id, place, until, note, put_by, put_at) "
                    + "values (:type, cast(:thing as uuid), cast(:place as uuid), cast(:until as date), :note, :by, :at) on conflict (type, id, place) "
                    + "do update set until = excluded.until, note = excluded.note, put_by = excluded.put_by, put_at = excluded.put_at")
    int put(String type, String thing, String place, @Nullable LocalDate until, String note, UUID by, Instant at);

    @SQL("delete from put_aside where type = :type and id = cast(:thing as uuid) and place = cast(:place as uuid)")
    int delete(String type, String thing, String place);
}
