package org.measuredmile.desk.web.view;

import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.comparison.standing.StandingRow;
import org.measuredmile.desk.CsvText;

/// A standing as delimited text: a line a bike, SI units, every digit.
public final class StandingCsv {
    private static final String[] HEAD = {
        "rank",
        "joint",
        "bike",
        "title",
        "category",
        "date",
        "value",
        "unit",
        "interval-low",
        "interval-high",
        "rank-low",
        "rank-high",
        "probability-best",
        "told-apart-from-next",
        "ledger",
        "most-likely-rank",
        "probability-top-three",
        "percentile",
        "day",
        "configuration"
    };

    private StandingCsv() {}

    public static String of(Standing standing) {
        String unit = standing.figure().kind().si().symbol();
        var out = new CsvText().line(HEAD);
        standing.rows().forEach(row -> out.line(cells(row, unit)));
        return out.text();
    }

    private static String[] cells(StandingRow row, String unit) {
        var entrant = row.entrant();
        return new String[] {
            Integer.toString(row.rank()),
            yesOrNo(row.joint()),
            entrant.bike(),
            entrant.title(),
            entrant.category(),
            entrant.date().toString(),
            CsvText.number(entrant.value()),
            unit,
            CsvText.number(entrant.anyDay().interval95().low()),
            CsvText.number(entrant.anyDay().interval95().high()),
            Integer.toString(row.rankLow()),
            Integer.toString(row.rankHigh()),
            CsvText.number(row.probabilityBest()),
            yesOrNo(row.toldApartFromNext()),
            yesOrNo(entrant.isFromLedger()),
            Integer.toString(row.mostLikelyRank()),
            CsvText.number(row.probabilityTopThree()),
            CsvText.number(row.percentile().mean()),
            entrant.origin().day(),
            entrant.origin().configuration()
        };
    }

    private static String yesOrNo(boolean yes) {
        return yes ? "yes" : "no";
    }
}
