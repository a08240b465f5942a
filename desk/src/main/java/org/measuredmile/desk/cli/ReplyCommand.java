package org.measuredmile.desk.cli;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.SentReply;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.verdict.ReplySheet;
import org.measuredmile.comparison.verdict.ReplySheet.Dates;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tools.jackson.databind.JsonNode;

/// `mile reply BIKE`: the sheet for the bike's maker, and the record of when it was sent.
@Command(
        name = "reply",
        description = "Write the sheet of facts for a bike's maker; with --by, record that it was sent.",
        mixinStandardHelpOptions = true)
final class ReplyCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(index = "0", paramLabel = "BIKE", description = "a bike's id, or its maker and model")
    private String name = "";

    @Option(names = "--sent", paramLabel = "DATE", description = "the day it is sent, as 2031-05-04 (default: today)")
    private @Nullable LocalDate sent;

    @Option(
            names = "--due",
            paramLabel = "DATE",
            description = "the day an answer is due (default: five working days after it is sent)")
    private @Nullable LocalDate due;

    @Option(names = "--by", paramLabel = "CODE", description = "record it as sent by this member of the crew")
    private String by = "";

    @Override
    public Integer call() {
        try (var archive = chosen.open()) {
            var claims = VerdictCommand.claims(archive, name);
            var sheet = claims.reply(dates(), shown.units());
            if (!by.isBlank()) {
                keep(archive, claims.bike().bike().id(), sheet);
            }
            if (shown.asJson()) {
                shown.json(Json.array().add(json(archive, claims.bike().bike().id(), sheet)));
            } else {
                sheet.text().lines().forEach(shown::line);
            }
            return Mile.DONE;
        }
    }

    private Dates dates() {
        var goes = sent == null ? LocalDate.now(Clock.system(ZoneId.systemDefault())) : sent;
        var dates = due == null ? Dates.from(goes) : new Dates(goes, due);
        if (dates.due().isBefore(dates.sent())) {
            throw new Trouble("--due " + dates.due() + " is before --sent " + dates.sent() + "; give a later day");
        }
        return dates;
    }

    private void keep(Archive archive, String bike, ReplySheet sheet) {
        var kept = archive.keepSent(
                new SentReply.Sheet(bike, sheet.text(), sheet.sent(), sheet.due()),
                new Act(by.strip(), "sent to the maker on " + sheet.sent() + ", an answer is due by " + sheet.due()));
        shown.err().println("kept as sheet " + kept.number() + " sent for " + bike + ", SHA-256 " + kept.sha256());
    }

    private static JsonNode json(Archive archive, String bike, ReplySheet sheet) {
        var object = Json.object()
                .put("bike", bike)
                .put("sent", sheet.sent().toString())
                .put("due", sheet.due().toString());
        object.set("claims", Json.array(sheet.claims(), ReplyCommand::section));
        object.set("days", Json.array(sheet.days(), ReplyCommand::section));
        object.set("asked", Json.texts(sheet.asked()));
        object.set("history", Json.array(archive.sent(bike), ReplyCommand::sent));
        return object;
    }

    private static JsonNode section(ReplySheet.Section section) {
        var object = Json.object().put("title", section.title());
        object.set(
                "facts",
                Json.array(
                        section.facts(),
                        fact -> Json.object()
                                .put("name", fact.name())
                                .put("words", fact.words().replace('\u00a0', ' '))));
        return object;
    }

    private static JsonNode sent(SentReply reply) {
        return Json.object()
                .put("number", reply.number())
                .put("sent", reply.sent().toString())
                .put("due", reply.due().toString())
                .put("who", reply.who())
                .put("sha256", reply.sha256());
    }
}
