package org.measuredmile.comparison.verdict;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.Trials;

/// What a maker is sent before anything is published: what is claimed, what was measured and how, and what is
/// asked.
///
/// Facts only: no verdict, no other bike, no opinion. Everything that a maker needs to contest a number stands
/// in it: each run, the instruments and their calibrations, the configuration, the conditions, the files by
/// their hashes and the version of the method.
/// Shape: `claims` one section a claim, in the order of the specification; `days` one section for each test day
/// that they rest on.
public record ReplySheet(String title, LocalDate sent, LocalDate due, List<Section> claims, List<Section> days) {
    /// What is said first.
    public static final String OPENING =
            "We have tested this bike and shall publish what we measured. Before we do, we "
                    + "send you the facts, so that you can correct what is wrong and say what you think of it.";

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

    /// A head with facts under it.
    public record Section(String title, List<Fact> facts) {
        public Section {
            facts = List.copyOf(facts);
        }
    }

    /// A fact and what it is about.
    public record Fact(String name, String words) {}

    public ReplySheet {
        claims = List.copyOf(claims);
        days = List.copyOf(days);
    }

    /// The sheet for a bike.
    public static ReplySheet of(
            TestedBike bike, List<ClaimVerdict> verdicts, Map<String, TestDay> days, Dates dates, UnitSystem system) {
        var facts = new ReplyFacts(bike, system);
        var used = new LinkedHashSet<String>();
        var claims = new ArrayList<Section>();
        for (var verdict : verdicts) {
            claims.add(new Section(capital(verdict.item().words()), facts.of(verdict)));
            verdict.measured()
                    .or(verdict::atConditions)
                    .ifPresent(tried -> used.add(tried.result().day()));
        }
        var sections = used.stream()
                .flatMap(id -> Optional.ofNullable(days.get(id)).stream())
                .map(day -> new Section("Test day " + DAY.format(day.date()), facts.of(day)))
                .toList();
        return new ReplySheet(bike.bike().title(), dates.sent(), dates.due(), claims, sections);
    }

    /// When the sheet goes out and when an answer is due.
    public record Dates(LocalDate sent, LocalDate due) {
        /// The house gives so many working days.
        public static final int WORKING_DAYS = 5;

        /// An answer is due after the house's working days, Saturdays and Sundays left out; public
        /// holidays differ by country and are not known here.
        ///
        /// Source: house value.
        public static Dates from(LocalDate sent) {
            return from(sent, WORKING_DAYS);
        }

        public static Dates from(LocalDate sent, int workingDays) {
            var due = sent;
            for (int left = workingDays; left > 0; ) {
                due = due.plusDays(1);
                if (due.getDayOfWeek().getValue() <= 5) {
                    left--;
                }
            }
            return new Dates(sent, due);
        }
    }

    /// What the maker is asked.
    public List<String> asked() {
        return List.of(
                "Is each claim quoted rightly, with its conditions and its date? If not, how does it read, and where?",
                "Was the bike, its firmware or its battery other than what you sell? How can one tell?",
                "Is any fact here wrong? Say which, and what is right.",
                "How was each claimed value found: which rider, road, level, temperature and method?",
                "Please answer by " + DAY.format(due)
                        + ". We print your answer in full or sum it up fairly, and correct "
                        + "facts that are wrong. What we publish is ours to decide.");
    }

    /// The sheet as plain text, as it is kept when it is sent.
    public String text() {
        var text = new StringBuilder("Measured Mile\n\nTo: ____________________\n    ____________________\n"
                + "By e-mail or post: ____________________\n\n");
        text.append(title).append(": what we measured\n\nSent ").append(DAY.format(sent));
        text.append("; an answer is due by ")
                .append(DAY.format(due))
                .append(".\n\n")
                .append(OPENING)
                .append('\n');
        claims.forEach(section -> section(text, section));
        days.forEach(section -> section(text, section));
        text.append("\nWhat we ask\n\n");
        asked().forEach(line -> text.append("- ").append(line).append('\n'));
        text.append("\nFrom: ____________________\nOur address: ____________________\n");
        return text.toString().replace('\u00a0', ' ');
    }

    private static void section(StringBuilder text, Section section) {
        text.append('\n').append(section.title()).append('\n');
        section.facts()
                .forEach(fact -> text.append("  ")
                        .append(fact.name())
                        .append(": ")
                        .append(fact.words())
                        .append('\n'));
    }

    /// The method by which a figure was come by.
    static String method(String trial, int version) {
        String title = Trials.find(trial).map(one -> one.declaration().title()).orElse(trial);
        return title + ", version " + version + " of the method";
    }

    static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
