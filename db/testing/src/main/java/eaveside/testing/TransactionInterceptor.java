package eaveside.testing;

import jakarta.annotation.Priority;
import jakarta.inject.Inject;
import jakarta.interceptor.AroundInvoke;
import jakarta.interceptor.Interceptor;
import jakarta.interceptor.InvocationContext;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.io.Serializable;

/**
 * What {@code @Transactional} means on the bench: the same as in the server, for the types that this project uses. The
 * type is part of the binding, so each has an interceptor of its own.
 */
abstract class TransactionInterceptor implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int PRIORITY = Interceptor.Priority.PLATFORM_BEFORE + 200;

    private final transient TransactionScope scope;

    private TransactionInterceptor(TransactionScope scope) {
        this.scope = scope;
    }

    @AroundInvoke
    Object run(InvocationContext call) throws Exception {
        return run(call, scope);
    }

    abstract Object run(InvocationContext call, TransactionScope transactions) throws Exception;

    /** Joins the transaction that runs, or opens one. */
    @Transactional
    @Interceptor
    @Priority(PRIORITY)
    static class Required extends TransactionInterceptor {
        private static final long serialVersionUID = 1;

        @Inject
        Required(TransactionScope scope) {
            super(scope);
        }

        @Override
        Object run(InvocationContext call, TransactionScope transactions) throws Exception {
            return TransactionScope.isRunning() ? call.proceed() : transactions.inNew(call::proceed);
        }
    }

    /** Opens one of its own beside whatever runs. */
    @Transactional(TxType.REQUIRES_NEW)
    @Interceptor
    @Priority(PRIORITY)
    static class RequiresNew extends TransactionInterceptor {
        private static final long serialVersionUID = 1;

        @Inject
        RequiresNew(TransactionScope scope) {
            super(scope);
        }

        @Override
        Object run(InvocationContext call, TransactionScope transactions) throws Exception {
            return transactions.inNew(call::proceed);
        }
    }

    /** Joins the transaction that runs, or fails. */
    @Transactional(TxType.MANDATORY)
    @Interceptor
    @Priority(PRIORITY)
    static class Mandatory extends TransactionInterceptor {
        private static final long serialVersionUID = 1;

        @Inject
        Mandatory(TransactionScope scope) {
            super(scope);
        }

        @Override
        Object run(InvocationContext call, TransactionScope transactions) throws Exception {
            if (!TransactionScope.isRunning()) {
                throw new IllegalStateException(call.getMethod() + " joins a transaction, and none runs");
            }
            return call.proceed();
        }
    }
}
