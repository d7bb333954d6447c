package eaveside.testing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.persistence.EntityManager;
import jakarta.persistence.EntityManagerFactory;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Callable;

/** Binds one EntityManager to each running transaction, as the server's container does. */
@ApplicationScoped
public class TransactionScope {
    private static final ThreadLocal<Deque<EntityManager>> RUNNING = ThreadLocal.withInitial(ArrayDeque::new);

    private EntityManagerFactory factory() {
        return Bench.current().entityManagerFactory();
    }

    /** Hands every call to the EntityManager of the transaction that runs on this thread. */
    @Produces
    @ApplicationScoped
    EntityManager entityManager() {
        return (EntityManager) Proxy.newProxyInstance(
                EntityManager.class.getClassLoader(),
                new Class<?>[] {EntityManager.class, org.hibernate.Session.class},
                (proxy, method, arguments) -> {
                    EntityManager running = RUNNING.get().peek();
                    if (running == null) {
                        throw new IllegalStateException("no transaction runs: is the use case @Transactional?");
                    }
                    try {
                        return method.invoke(running, arguments);
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                });
    }

    static boolean isRunning() {
        return !RUNNING.get().isEmpty();
    }

    /** Runs the work in a new transaction; anything thrown rolls it back. */
    <T> T inNew(Callable<T> work) throws Exception {
        EntityManager manager = factory().createEntityManager();
        RUNNING.get().push(manager);
        try {
            manager.getTransaction().begin();
            T result = work.call();
            manager.getTransaction().commit();
            return result;
        } finally {
            RUNNING.get().pop();
            if (manager.getTransaction().isActive()) {
                manager.getTransaction().rollback();
            }
            manager.close();
        }
    }
}
