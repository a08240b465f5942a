package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.reader.Clock.Form;
import org.measuredmile.recording.reader.TimeText.DateOrder;

/// Finds the clocks of a table by name and values, and chooses the one that the rows are put in time by.
///
/// The clock that moves from row to row wins, and of those that do so about equally well the one that gives a date.
/// `start` is a second clock that gives the date where the chosen one counts from its own zero; `marker` is a slower
/// clock, by whose steps values that were only repeated can be told.
record ClockChoice(Clock clock, Optional<Clock> start, Optional<Clock> marker, List<Finding> findings) {
    private static final double MOST_ROWS = 0.9;
    private static final double TEN_YEARS_NS = 3e17;

    /// A clock with how often it moved over the rows seen, in a million rows.
    private record Rated(Clock clock, double covered, int moves, int back) {}

    /// The columns, their first rows and how they are written.
    ///
    /// `setBy` says in words who set what the names were set to.
    record Sample(
            String source,
            List<ColumnName> names,
            List<String[]> rows,
            char decimalMark,
            String setBy,
            List<List<String>> filled) {
        Sample(String source, List<ColumnName> names, List<String[]> rows, char decimalMark, String setBy) {
            this(
                    source,
                    names,
                    rows,
                    decimalMark,
                    setBy,
                    IntStream.range(0, names.size())
                            .mapToObj(column -> filled(rows, column))
                            .toList());
        }

        private static List<String> filled(List<String[]> rows, int column) {
            List<String> filled = new ArrayList<>();
            for (String[] cells : rows) {
                String text = Clock.cell(cells, column);
                if (!text.isEmpty() && !NoDataMark.isWord(text)) {
                    filled.add(text);
                }
            }
            return filled;
        }

        /// The cells of a column that hold something.
        List<String> filled(int column) {
            return filled.get(column);
        }
    }

    /// Whether a column holds the times or the dates of one of the clocks.
    boolean reads(int column) {
        return Stream.of(Optional.of(clock), start, marker)
                .flatMap(Optional::stream)
                .anyMatch(one -> one.timeColumn() == column || one.dateColumn() == column);
    }

    static Optional<ClockChoice> of(Sample sample) {
        List<Finding> findings = new ArrayList<>();
        List<Rated> rated = new ArrayList<>();
        List<Clock> clocks = clocks(sample, findings);
        for (Clock clock : clocks) {
            rated.add(rate(clock, sample));
        }
        List<Rated> fit = rated.stream()
                .filter(each -> each.covered >= MOST_ROWS && each.back * 5 <= Math.max(each.moves, 1))
                .toList();
        Rated absolute = best(fit, true);
        Rated relative = best(fit, false);
        Rated chosen =
                relative == null || (absolute != null && absolute.moves * 2 >= relative.moves) ? absolute : relative;
        if (chosen == null) {
            return Optional.empty();
        }
        ClockOffset.of(chosen.clock, clocks, sample).ifPresent(findings::add);
        Optional<Clock> start =
                chosen.clock.isAbsolute() || absolute == null ? Optional.empty() : Optional.of(absolute.clock);
        Optional<Clock> marker = fit.stream()
                .filter(each -> each.moves > 0 && each.moves * 3 < chosen.moves * 2)
                .max(java.util.Comparator.comparingInt(each -> each.moves))
                .map(Rated::clock);
        return Optional.of(new ClockChoice(chosen.clock, start, marker, findings));
    }

    private static @org.jspecify.annotations.Nullable Rated best(List<Rated> fit, boolean absolute) {
        Rated best = null;
        for (Rated each : fit) {
            if (each.clock.isAbsolute() == absolute && (best == null || each.moves > best.moves)) {
                best = each;
            }
        }
        return best;
    }

    private static Rated rate(Clock clock, Sample sample) {
        int read = 0;
        int moves = 0;
        int back = 0;
        long before = 0;
        for (String[] cells : sample.rows) {
            OptionalLong ns = clock.read(cells, sample.decimalMark);
            if (ns.isEmpty()) {
                continue;
            }
            boolean midnight = clock.form() == Form.TIME_OF_DAY && ns.getAsLong() < before - TimeText.DAY_NS / 2;
            moves += read > 0 && (midnight || ns.getAsLong() > before) ? 1 : 0;
            back += read > 0 && !midnight && ns.getAsLong() < before ? 1 : 0;
            before = ns.getAsLong();
            read++;
        }
        return new Rated(clock, read / (double) Math.max(1, sample.rows.size()), moves, back);
    }

    private static List<Clock> clocks(Sample sample, List<Finding> findings) {
        List<Clock> clocks = new ArrayList<>();
        int dateColumn = dateColumn(sample);
        boolean anySet =
                sample.names.stream().anyMatch(name -> name.set().isPresent() && name.mayBeClock() && !name.isDate());
        for (int column = 0; column < sample.names.size(); column++) {
            ColumnName name = sample.names.get(column);
            List<String> cells = sample.filled(column);
            boolean passedOver = anySet && name.set().isEmpty();
            if (!name.mayBeClock() || passedOver || cells.isEmpty() || column == dateColumn) {
                continue;
            }
            Optional<DateOrder> order = orderOf(cells, true);
            if (order.isPresent()) {
                clocks.add(new Clock(Form.DATE_TIME, -1, column, order.get(), 1));
            } else if (looksLikeTimeOfDay(cells, dateColumn >= 0 && !name.has("millis", "ms"))) {
                Form form = dateColumn < 0 ? Form.TIME_OF_DAY : Form.DATE_AND_TIME;
                clocks.add(new Clock(form, dateColumn, column, DateOrder.YEAR_FIRST, 1));
            } else {
                number(name, column, cells, sample, findings).ifPresent(clocks::add);
            }
        }
        return dateColumn < 0 ? clocks : withDateOrder(clocks, dateColumn, sample, findings);
    }

    /// Whether the cells of a column can be read as times, or as the dates of another column's times.
    static boolean canBeRead(int column, Sample sample) {
        List<String> cells = sample.filled(column);
        return column == dateColumn(sample)
                || orderOf(cells, true).isPresent()
                || cells.stream().allMatch(cell -> TimeText.clock(cell).isPresent())
                || cells.stream()
                        .allMatch(cell -> NumberText.parse(cell.replace(sample.decimalMark, '.'))
                                .isPresent());
    }

    private static int dateColumn(Sample sample) {
        for (int column = 0; column < sample.names.size(); column++) {
            List<String> cells = sample.filled(column);
            if (sample.names.get(column).isDate()
                    && !cells.isEmpty()
                    && orderOf(cells, false).isPresent()) {
                return column;
            }
        }
        return -1;
    }

    private static Optional<DateOrder> orderOf(List<String> cells, boolean withTime) {
        for (DateOrder order : DateOrder.values()) {
            boolean all = cells.stream()
                    .allMatch(cell ->
                            (withTime ? TimeText.dateTime(cell, order) : TimeText.date(cell, order)).isPresent());
            if (all) {
                return Optional.of(order);
            }
        }
        return Optional.empty();
    }

    private static boolean looksLikeTimeOfDay(List<String> cells, boolean compactToo) {
        boolean colons = cells.stream().allMatch(cell -> cell.indexOf(':') > 0);
        return (colons || compactToo)
                && cells.stream().allMatch(cell -> TimeText.clock(cell).isPresent());
    }

    private static Optional<Clock> number(
            ColumnName name, int column, List<String> cells, Sample sample, List<Finding> findings) {
        double[] values = new double[cells.size()];
        for (int i = 0; i < values.length; i++) {
            String plain = cells.get(i).replace(sample.decimalMark, '.');
            OptionalDouble value = NumberText.parse(plain);
            if (value.isEmpty()) {
                return Optional.empty();
            }
            values[i] = value.getAsDouble();
        }
        String unit = unitOf(name);
        double epochNs = epochUnitNs(Math.abs(values[0]), unit);
        if (epochNs > 0) {
            return Optional.of(new Clock(Form.EPOCH, -1, column, DateOrder.YEAR_FIRST, epochNs));
        }
        double ns = elapsedUnitNs(name, unit, medianStep(values), sample.source, findings);
        return Optional.of(new Clock(Form.ELAPSED, -1, column, DateOrder.YEAR_FIRST, ns));
    }

    /// The unit in which a number of this size counts from 1970; 0 where it does not: no instrument has run for ten
    /// years, and none writes of a time before 1979.
    private static double epochUnitNs(double size, String unit) {
        if (!unit.isEmpty()) {
            double atNs = size * unitNs(unit);
            return atNs < TEN_YEARS_NS ? 0 : atNs < Clock.FARTHEST_NS ? unitNs(unit) : epochUnitNs(size, "");
        }
        for (double ns = 1e9; ns >= 1; ns /= 1000) {
            if (size * ns > TEN_YEARS_NS && size * ns < Clock.FARTHEST_NS) {
                return ns;
            }
        }
        return 0;
    }

    private static String unitOf(ColumnName name) {
        String written = name.written().toLowerCase(Locale.ROOT).replace('μ', 'µ');
        if (!written.isEmpty()) {
            return written;
        }
        if (name.has("ms", "millis", "milliseconds")) {
            return "ms";
        }
        if (name.has("us", "micros", "microseconds") || name.has("ns", "nanos", "nanoseconds")) {
            return name.has("ns", "nanos", "nanoseconds") ? "ns" : "us";
        }
        return name.has("seconds", "secs", "sec", "s") ? "s" : "";
    }

    private static double medianStep(double[] values) {
        double[] steps = new double[Math.max(0, values.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = values[i + 1] - values[i];
        }
        java.util.Arrays.sort(steps);
        return steps.length == 0 ? 0 : steps[steps.length / 2];
    }

    private static double elapsedUnitNs(
            ColumnName name, String unit, double step, String source, List<Finding> findings) {
        Place place = new Place(source, name.text());
        double stated = unitNs(unit);
        if (stated == 1e6 && step > 0 && step < 0.5) {
            findings.add(Finding.warning(
                    "time-unit",
                    place,
                    "the head says milliseconds, but the step of " + shown(step)
                            + " would then be thousands of samples a second; read as seconds",
                    "check the length of the recording against the clock"));
            return 1e9;
        }
        if (unit.isEmpty() && step >= 5 && step == Math.rint(step)) {
            double ns = step >= 2e8 ? 1 : step >= 2e5 ? 1e3 : 1e6;
            String words = ns == 1 ? "nanoseconds" : ns == 1e3 ? "microseconds" : "milliseconds";
            findings.add(Finding.warning(
                    "unit-assumed",
                    place,
                    "times without a unit go up by " + shown(step) + "; read as " + words,
                    "write the unit in the head"));
            return ns;
        }
        return stated;
    }

    private static double unitNs(String unit) {
        return switch (unit) {
            case "ns", "nanos", "nanoseconds" -> 1;
            case "us", "µs", "micros", "microseconds" -> 1e3;
            case "ms", "millis", "milliseconds", "msec" -> 1e6;
            case "min", "minutes" -> 60e9;
            case "h", "hours" -> 3600e9;
            default -> 1e9;
        };
    }

    private static String shown(double value) {
        return ShortNumber.of(value);
    }

    private static List<Clock> withDateOrder(
            List<Clock> clocks, int dateColumn, Sample sample, List<Finding> findings) {
        List<String> dates = sample.filled(dateColumn);
        List<DateOrder> possible = java.util.Arrays.stream(DateOrder.values())
                .filter(order -> dates.stream()
                        .allMatch(date -> TimeText.date(date, order).isPresent()))
                .toList();
        DateOrder order = settled(possible, dates.getFirst(), clocks, sample)
                .orElseGet(() -> assumed(possible, dates.getFirst(), sample.source, findings));
        return clocks.stream()
                .map(clock -> clock.form() == Form.DATE_AND_TIME
                        ? new Clock(clock.form(), dateColumn, clock.timeColumn(), order, 1)
                        : clock)
                .toList();
    }

    /// The order that cannot be otherwise, or that another clock of the same table agrees with.
    private static Optional<DateOrder> settled(
            List<DateOrder> possible, String date, List<Clock> clocks, Sample sample) {
        long readings = possible.stream()
                .map(order -> TimeText.date(date, order).getAsLong())
                .distinct()
                .count();
        if (readings == 1) {
            return Optional.of(possible.getFirst());
        }
        for (Clock clock : clocks) {
            if (clock.form() != Form.EPOCH || sample.rows.isEmpty()) {
                continue;
            }
            OptionalLong ns = clock.read(sample.rows.getFirst(), sample.decimalMark);
            for (DateOrder order : possible) {
                long day = TimeText.date(date, order).getAsLong();
                if (ns.isPresent() && Math.abs(Math.floorDiv(ns.getAsLong(), TimeText.DAY_NS) - day) <= 1) {
                    return Optional.of(order);
                }
            }
        }
        return Optional.empty();
    }

    private static DateOrder assumed(List<DateOrder> possible, String date, String source, List<Finding> findings) {
        DateOrder order = possible.getFirst();
        String words = switch (order) {
            case YEAR_FIRST -> "year, month, day";
            case MONTH_FIRST -> "month, day, year";
            case DAY_FIRST -> "day, month, year";
        };
        findings.add(Finding.warning(
                "date-order-assumed",
                new Place(source, "date"),
                "\"" + Remarks.quoted(date) + "\" can be read in more than one way; read as " + words,
                "compare with the date of the test day"));
        return order;
    }
}
