package org.measuredmile.desk.web.view;

import java.util.List;
import org.measuredmile.archive.SentReply;
import org.measuredmile.comparison.verdict.ReplySheet;
import org.measuredmile.desk.web.edit.Typed;

/// The sheet for a bike's maker, and the form that records when it was sent.
///
/// Shape: `kept` tells what was sent before, latest first; `form` holds what somebody typed and what is wrong
/// with it.
public record ReplyView(
        String bikeHref,
        String claimsHref,
        String action,
        ReplySheet sheet,
        String sent,
        String due,
        List<String> kept,
        Typed form) {
    public static ReplyView of(String bike, ReplySheet sheet, List<SentReply> sent, Typed form) {
        return new ReplyView(
                Paths.bike(bike),
                Paths.claims(bike),
                Paths.reply(bike),
                sheet,
                Printing.day(sheet.sent()),
                Printing.day(sheet.due()),
                sent.reversed().stream().map(ReplyView::words).toList(),
                form);
    }

    private static String words(SentReply one) {
        return "Sheet " + one.number() + ": sent " + Printing.day(one.sent()) + ", an answer is due by "
                + Printing.day(one.due()) + "; recorded by " + one.who() + "; SHA-256 " + one.sha256();
    }
}
