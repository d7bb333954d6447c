package eaveside.ledger;

/** How an entry names its account: by the role that the program posts to, or by a code of the company's chart. */
public sealed interface AccountRef permits AccountRole, AccountCode {}
