package eaveside.reports.internal;

import eaveside.reports.QuotePaper;

/** Lays out a quote. */
public final class QuoteLayout {
    private QuoteLayout() {}

    public static Layout of(QuotePaper paper) {
        Words words = new Words(paper.from().locale());
        Rows rows = new Rows();
        LineRows.add(
                rows,
                paper.lines().stream()
                        .map(line -> new LineRows.Line(
                                line.serviceLine(),
                                line.description(),
                                line.detail(),
                                words.quantity(line.quantity()),
                                words.price(line.price()),
                                "",
                                line.net()))
                        .toList(),
                words);
        rows.block().add("GRAND").put("text", words.text("net")).put("amount", words.withCurrency(paper.total()));
        rows.words(words.text("tax.note"), paper.taxNote());
        rows.words(words.text("quote.terms"), paper.terms());
        rows.words(words.text("note"), paper.note());
        rows.caution(words, paper.cautions());
        rows.block().add("SIGN").put("text", words.text("sign"));
        Head head = new Head(paper.from(), words, words.text("quote"), paper.number())
                .to(words.text("prepared-for"), paper.customer())
                .site(words.text("work-at"), paper.workAt())
                .fact(words.text("number"), paper.number())
                .fact(words.text("made"), words.date(paper.made()))
                .fact(words.text("valid-until"), words.date(paper.validUntil()))
                .put(
                        "amountLabel",
                        words.text("amount", paper.total().currency().getCode()));
        return new Layout("quote", paper.from(), words, head, rows);
    }
}
