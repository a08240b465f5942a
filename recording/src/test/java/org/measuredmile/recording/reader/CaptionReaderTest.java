package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;

class CaptionReaderTest {
    private static Mark caption(double fromS, double toS, String text) {
        return new Mark(Mark.Kind.CAPTION, fromS, toS, text);
    }

    private static Recording read(String... lines) {
        return Decode.recording("clip.vtt", String.join("\n", lines) + "\n");
    }

    @Test
    void aClipOfWebVttGivesItsWordsAndTimes() {
        Recording clip = Decode.recording(Decode.bytes("ride-along.vtt", Decode.resource("ride-along.vtt")));
        assertThat(clip.format()).isEqualTo(Format.CAPTIONS);
        assertThat(clip.start()).isEmpty();
        assertThat(clip.channels()).isEmpty();
        assertThat(clip.findings()).isEmpty();
        assertThat(clip.samples()).isEqualTo(5);
        assertThat(clip.marks())
                .containsExactly(
                        caption(2, 5.5, "Right, we are rolling, highest level."),
                        caption(65.25, 68, "Nineteen point four miles an hour."),
                        caption(70, 73.1, "and that is 15.2 mph & falling"),
                        caption(90.5, 93.25, "twenty two feet four inches"),
                        caption(3661, 3663, "a minute eight, up the hill"));
        assertThat(clip.spanS()).isEqualTo(3663);
        ReaderContract.holds(clip);
    }

    @Test
    void aClipOfSrtGivesItsWordsAndTimes() {
        Recording clip = Decode.recording(Decode.bytes("ride-along.srt", Decode.resource("ride-along.srt")));
        assertThat(clip.format()).isEqualTo(Format.CAPTIONS);
        assertThat(clip.findings()).isEmpty();
        assertThat(clip.marks())
                .containsExactly(
                        caption(1.2, 3.45, "eleven miles an hour"),
                        caption(4, 6.5, "level two, fifteen and a half"),
                        caption(7, 9, "one hundred and five watts"));
        ReaderContract.holds(clip);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void lineEndsOfAnySystemAreRead(String end) {
        Recording clip = Decode.recording(
                "clip.vtt", "\uFEFF" + String.join(end, "WEBVTT", "", "00:01.000 --> 00:02.000", "twelve", ""));
        assertThat(clip.marks()).containsExactly(caption(1, 2, "twelve"));
    }

    @Test
    void sixteenBitTextIsRead() {
        byte[] bytes = "\uFEFF1\n00:00:01,000 --> 00:00:02,000\nzwölf\n".getBytes(UTF_16LE);
        assertThat(Decode.recording(Decode.bytes("clip.srt", bytes)).marks()).containsExactly(caption(1, 2, "zwölf"));
    }

    // Source: W3C, WebVTT, 6.1: a line with an arrow begins a cue even inside a block; NOTE, STYLE, REGION are no cues.
    @Test
    void notesStylesAndRegionsArePassedOver() {
        Recording clip = read(
                "WEBVTT ride-along",
                "Kind: captions",
                "",
                "STYLE",
                "::cue { color: white }",
                "",
                "REGION",
                "id:low",
                "",
                "NOTE nobody",
                "says nineteen here",
                "",
                "00:01.000 --> 00:02.000",
                "ten");
        assertThat(clip.marks()).containsExactly(caption(1, 2, "ten"));
        assertThat(clip.findings()).isEmpty();
    }

    @Test
    void settingsTagsAndReferencesAreNoWords() {
        Recording clip = read(
                "WEBVTT",
                "",
                "first",
                "00:01.000 --> 00:02.000 align:start position:0% line:-1",
                "<v.loud Rider One>nine<00:01.500><c.wind> point</c> <i>four</i> &lt;ish&gt; &amp;&nbsp;steady</v>",
                "",
                "00:03.000 --> 00:04.000",
                "{\\an8}<font color=\"#fff\">5 &#60; 6</font>");
        assertThat(clip.marks())
                .containsExactly(caption(1, 2, "nine point four <ish> & steady"), caption(3, 4, "5 < 6"));
    }

    @Test
    void damagedCuesAreNamedWithTheirLineAndTheRestIsKept() {
        Recording clip = read(
                "WEBVTT",
                "",
                "00:01.000 --> 00:02.000",
                "ten",
                "",
                "00:0x.000 --> 00:04.000",
                "eleven",
                "",
                "00:09.000 --> 00:08.000",
                "twelve",
                "",
                "words that lost their times",
                "",
                "00:61.000 --> 00:62.000",
                "thirteen",
                "",
                "00:20.000 --> 00:21.000",
                "",
                "00:22.000 --> 00:23.000",
                "fourteen");
        assertThat(clip.marks()).containsExactly(caption(1, 2, "ten"), caption(22, 23, "fourteen"));
        List<Finding> damaged = clip.findings().stream()
                .filter(finding -> finding.code().equals("damaged-cue"))
                .toList();
        assertThat(damaged)
                .extracting(Finding::place)
                .containsExactly(
                        Place.atLine("clip.vtt", 6),
                        Place.atLine("clip.vtt", 9),
                        Place.atLine("clip.vtt", 12),
                        Place.atLine("clip.vtt", 14));
        assertThat(damaged.getFirst().message()).contains("00:0x.000").contains("eleven");
        assertThat(Decode.finding(clip, "cue-without-words").place()).isEqualTo(Place.atLine("clip.vtt", 17));
    }

    @Test
    void aMissingEmptyLineDoesNotGlueTwoCues() {
        Recording clip = Decode.recording(
                "clip.srt", "1\n00:00:01,000 --> 00:00:02,000\nten\n2\n00:00:02,000 --> 00:00:03,000\neleven\n");
        assertThat(clip.marks()).containsExactly(caption(1, 2, "ten"), caption(2, 3, "eleven"));
    }

    @Test
    void overlappingCuesAreAllKeptAndSaid() {
        Recording clip = read(
                "WEBVTT",
                "",
                "00:01.000 --> 00:05.000",
                "ten",
                "",
                "00:03.000 --> 00:06.000",
                "eleven",
                "",
                "00:00.500 --> 00:00.900",
                "nine");
        assertThat(clip.marks())
                .containsExactly(caption(1, 5, "ten"), caption(3, 6, "eleven"), caption(0.5, 0.9, "nine"));
        assertThat(Decode.finding(clip, "overlapping-cues").place()).isEqualTo(Place.atLine("clip.vtt", 6));
        assertThat(Decode.finding(clip, "cue-out-of-order").place()).isEqualTo(Place.atLine("clip.vtt", 9));
    }

    @Test
    void rollingCaptionsSayEachWordOnce() {
        Recording clip = read(
                "WEBVTT",
                "",
                "00:01.000 --> 00:03.000",
                "we are rolling",
                "",
                "00:03.000 --> 00:03.010",
                "we are rolling",
                "",
                "00:03.010 --> 00:05.000",
                "we are rolling",
                "nineteen point",
                "",
                "00:05.000 --> 00:07.000",
                "nineteen point",
                "four miles an hour");
        assertThat(clip.marks())
                .containsExactly(
                        caption(1, 3, "we are rolling"),
                        caption(3.01, 5, "nineteen point"),
                        caption(5, 7, "four miles an hour"));
        assertThat(Decode.finding(clip, "repeated-words").message()).startsWith("3 cues");
    }

    @Test
    void growingCaptionsSayEachWordOnce() {
        Recording clip = read(
                "WEBVTT",
                "",
                "00:01.000 --> 00:01.500",
                "nineteen",
                "",
                "00:01.500 --> 00:02.000",
                "nineteen point",
                "",
                "00:02.000 --> 00:03.000",
                "nineteen point four");
        assertThat(clip.marks())
                .containsExactly(caption(1, 1.5, "nineteen"), caption(1.5, 2, "point"), caption(2, 3, "four"));
    }

    @Test
    void whatSomebodySaysTwiceStaysSaidTwice() {
        Recording clip = read(
                "WEBVTT",
                "",
                "00:01.000 --> 00:02.000",
                "nineteen",
                "",
                "00:02.000 --> 00:03.000",
                "nineteen",
                "",
                "00:03.000 --> 00:04.000",
                "twenty");
        assertThat(clip.marks()).hasSize(3);
    }

    @Test
    void aFileWithoutAnyCueIsRefused() {
        assertThat(Decode.refusal("clip.vtt", "WEBVTT\n\nNOTE nothing yet\n").code())
                .isEqualTo("no-cue");
        assertThat(Decode.refusal("clip.srt", "words, and no times at all").code())
                .isEqualTo("no-cue");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void whateverIsChangedInAFileTheContractHolds(long seed) {
        byte[] whole = Decode.resource("ride-along.vtt");
        RandomGenerator random = new Seed(seed).stream(0);
        for (int i = 0; i < 200; i++) {
            byte[] bytes = Arrays.copyOf(whole, 1 + random.nextInt(whole.length));
            for (int j = random.nextInt(12); j > 0; j--) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            ReaderContract.holds(Decode.bytes("clip.vtt", bytes));
        }
    }
}
