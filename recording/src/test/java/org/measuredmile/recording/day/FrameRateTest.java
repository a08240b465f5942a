package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FrameRateTest {
    @ParameterizedTest
    @CsvSource({
        "30000/1001, 30000, 1001, 30000/1001",
        "60000/1001 fps, 60000, 1001, 60000/1001",
        "29.97, 2997, 100, 29.97",
        "59.94 Hz, 2997, 50, 59.94",
        "'59,94', 2997, 50, 59.94",
        "240, 240, 1, 240",
        "50/2, 25, 1, 25",
        "120 frames a second, 120, 1, 120"
    })
    void aSteadyRateIsKeptAsTheExactRatioThatWasWritten(String text, long frames, long seconds, String again) {
        assertThat(FrameRate.parse(text)).contains(new FrameRate.Steady(frames, seconds));
        assertThat(FrameRate.parse(text).orElseThrow().text()).isEqualTo(again);
        assertThat(FrameRate.parse(again)).isEqualTo(FrameRate.parse(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "0", "-30", "30/0", "29.97/1001", "fast", "30 mph", "1/2/3", "99999999"})
    void whatIsNoRateIsNone(String text) {
        assertThat(FrameRate.parse(text)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"variable", " Variable "})
    void aVariableRateIsSaidToBeSo(String text) {
        assertThat(FrameRate.parse(text)).contains(new FrameRate.Variable());
    }

    // 30000/1001 frames a second: 1001 frames of 30000 take 1001 · 1001 / 30000 s; arithmetic.
    @ParameterizedTest
    @CsvSource({"30000/1001, 30000, 1001", "240, 63, 0.2625", "variable, 0, 0"})
    void framesTakeTheirTime(String text, long frames, double seconds) {
        switch (FrameRate.parse(text).orElseThrow()) {
            case FrameRate.Steady steady -> assertThat(steady.secondsOf(frames)).isEqualTo(seconds);
            case FrameRate.Variable variable -> assertThat(variable.text()).isEqualTo(text);
        }
    }
}
