package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.reader.TimeText.DateOrder;

class IsoTimePropertyTest {
    private static final String SIGNS = "0123456789:-+.TZ ,tz";

    private static long fast(String text) {
        char[] padded = ("x" + text + "y").toCharArray();
        return IsoTime.ns(padded, 1, padded.length - 1);
    }

    private static void agrees(String text) {
        long fast = fast(text);
        if (fast != IsoTime.OTHER_FORM) {
            assertThat(TimeText.dateTime(text, DateOrder.YEAR_FIRST)).as(text).hasValue(fast);
        }
    }

    @Test
    void everyDayOfTwoCenturiesIsTheCalendarsOwn() {
        LocalDate end = LocalDate.of(2200, 12, 31);
        for (LocalDate day = LocalDate.EPOCH; !day.isAfter(end); day = day.plusDays(1)) {
            assertThat(fast(day + "T00:00:00Z")).isEqualTo(day.toEpochDay() * TimeText.DAY_NS);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void timesWithSignsChangedAreReadAlikeOrLeftToTheSlowReader(long seed) {
        Random random = new Random(seed);
        String[] seeds = {
            "2031-05-04T10:15:30Z",
            "2031-05-04 10:15:30.123456789",
            "2032-02-29T23:59:60.5+02:00",
            "2031-02-28T00:00:00,5-11:30"
        };
        for (int i = 0; i < 100_000; i++) {
            StringBuilder text = new StringBuilder(seeds[random.nextInt(seeds.length)]);
            for (int change = random.nextInt(3); change >= 0; change--) {
                text.setCharAt(random.nextInt(text.length()), SIGNS.charAt(random.nextInt(SIGNS.length())));
            }
            agrees(text.toString());
        }
    }

    @Test
    void theCommonFormsAreAllRead() {
        for (String text : new String[] {
            "2031-05-04T10:15:30Z",
            "2031-05-04 10:15:30.25",
            "2031-05-04T10:15:30.123456789012Z",
            "2032-02-29T23:59:60+02:00"
        }) {
            assertThat(fast(text)).as(text).isNotEqualTo(IsoTime.OTHER_FORM);
            agrees(text);
        }
    }

    @Test
    void whatIsNoTimeIsLeftToTheSlowReader() {
        for (String text : new String[] {
            "",
            "2031-02-29T10:15:30Z",
            "2031-05-04T24:15:30Z",
            "2031-05-04T10:15:30.Z",
            "2031-05-04",
            "04.05.2031 10:15:30"
        }) {
            assertThat(fast(text)).as(text).isEqualTo(IsoTime.OTHER_FORM);
        }
    }
}
