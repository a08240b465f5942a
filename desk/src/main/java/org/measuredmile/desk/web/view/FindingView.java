package org.measuredmile.desk.web.view;

import java.util.List;
import org.measuredmile.recording.Finding;

/// A finding as a page shows it: its mark, its word, what is so, where, and what would mend it.
public record FindingView(String mark, String word, String message, String where, String remedy) {
    static FindingView of(Finding finding) {
        return switch (finding.level()) {
            case NOTE -> of(finding, "noted", "Noted.");
            case WARNING -> of(finding, "widened", "Mind.");
            case REFUSED -> of(finding, "refused", "Refused.");
        };
    }

    private static FindingView of(Finding finding, String mark, String word) {
        return new FindingView(
                mark,
                word,
                sentence(finding.message()),
                finding.place().text(),
                finding.remedy().isEmpty() ? "" : sentence(finding.remedy()));
    }

    static List<FindingView> of(List<Finding> findings) {
        return findings.stream().map(FindingView::of).distinct().toList();
    }

    private static String sentence(String words) {
        String begun = Printing.capital(words.strip());
        return begun.endsWith(".") || begun.endsWith("?") ? begun : begun + ".";
    }
}
