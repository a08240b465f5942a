package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Inspection;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

/// What must hold of whatever comes out of any reader, whatever went in.
final class ReaderContract {
    private static final int MOST_FINDINGS = 1500;

    private ReaderContract() {}

    static void holds(Decoding decoding) {
        switch (decoding) {
            case Decoded(Recording recording) -> holds(recording);
            case Refused refused -> {
                assertThat(refused.findings()).anyMatch(finding -> finding.level() == Finding.Level.REFUSED);
                assertThat(refused.findings()).hasSizeLessThan(MOST_FINDINGS);
            }
        }
    }

    /// Every finding names its file, says what is so, and a refusal says what to do.
    static void saysWhere(Decoding decoding) {
        for (Finding finding : decoding.findings()) {
            assertThat(finding.place().source()).as(finding.code()).isNotEmpty();
            assertThat(finding.message()).as(finding.code()).isNotBlank();
            if (finding.level() == Finding.Level.REFUSED) {
                assertThat(finding.remedy()).as(finding.code()).isNotBlank();
            }
        }
    }

    static void holds(Recording recording) {
        double[] timesS = recording.timesS();
        assertThat(timesS).isNotEmpty();
        assertThat(timesS[0]).isZero();
        assertThat(firstThatDoesNotRise(timesS))
                .as("the first time that does not rise")
                .isEqualTo(-1);
        if (recording.format() == Format.CAPTIONS) {
            // The time base is the clip's: its beginning and the end of the last words, however few the cues.
            assertThat(recording.marks()).hasSizeLessThanOrEqualTo((int) recording.samples());
        } else {
            assertThat(recording.samples()).isGreaterThanOrEqualTo(timesS.length);
        }
        assertThat(recording.findings()).hasSizeLessThan(MOST_FINDINGS);
        for (Channel channel : recording.channels()) {
            holds(channel, timesS);
        }
        double before = -1;
        for (Segment segment : recording.segments()) {
            assertThat(segment.fromS()).isGreaterThan(before);
            assertThat(segment.toS()).isGreaterThanOrEqualTo(segment.fromS());
            before = segment.toS();
        }
        Inspection inspection = Inspection.of(recording, List.of());
        assertThat(inspection.trackDistanceMetres().orElse(0)).isNotNegative();
        assertThat(inspection.clockSeconds()).isNotNegative();
    }

    private static void holds(Channel channel, double[] timesS) {
        assertThat(channel.values()).as(channel.name()).hasSameSizeAs(channel.timesS());
        assertThat(firstThatDoesNotRise(channel.timesS())).as(channel.name()).isEqualTo(-1);
        assertThat(Arrays.stream(channel.values()).allMatch(Double::isFinite))
                .as(channel.name())
                .isTrue();
        assertThat(Arrays.stream(channel.timesS()).allMatch(timeS -> Arrays.binarySearch(timesS, timeS) >= 0))
                .as(channel.name() + " has only times of the recording")
                .isTrue();
        if (channel.kind() == ChannelKind.LATITUDE) {
            assertThat(Arrays.stream(channel.values()).map(Math::abs).max().orElse(0))
                    .isLessThanOrEqualTo(90);
        }
    }

    private static int firstThatDoesNotRise(double[] timesS) {
        for (int i = 1; i < timesS.length; i++) {
            if (!(timesS[i] > timesS[i - 1])) {
                return i;
            }
        }
        return -1;
    }
}
