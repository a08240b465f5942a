package org.measuredmile.publication.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Track;

class TrackSketchTest {
    /// Karney's geodesics place the corners; the sketch's own metres have to agree with them.
    @ParameterizedTest
    @ValueSource(doubles = {0, 51.5, -33.9, 68})
    void a_square_kilometre_is_square_at_every_latitude(double latitude) {
        var way = LocalWay.of(square(latitude, 12.3, 1_000)).extent();
        // A metre in a kilometre is far less than a line is wide (no source: what the eye can tell).
        assertThat(way.wideM()).isCloseTo(1_000, within(1.0));
        assertThat(way.highM()).isCloseTo(1_000, within(1.0));
    }

    @Test
    void a_track_across_the_date_line_is_one_piece() {
        assertThat(LocalWay.of(square(-17, 179.9995, 1_000)).extent().wideM()).isCloseTo(1_000, within(1.0));
    }

    @Test
    void north_is_up_the_start_is_marked_and_a_round_length_stands_below() {
        String svg = TrackSketch.of(square(51.5, 0.1, 1_000), UnitSystem.METRIC, 240, 240)
                .orElseThrow()
                .svg("ride.gpx");
        var drawing = Drawing.of(svg);
        drawing.holdsAllMarks();
        assertThat(drawing.texts()).containsExactly("start", "200 m", "north");
        assertThat(drawing.count("way-end")).isOne();
        assertThat(drawing.label())
                .isEqualTo("Track of ride.gpx, north up, 1,000 m from west to east, 1,000 m from south to north");
    }

    @Test
    void miles_for_a_crew_that_has_them_first() {
        String svg = TrackSketch.of(square(51.5, 0.1, 30_000), UnitSystem.IMPERIAL, 240, 240)
                .orElseThrow()
                .svg("ride.gpx");
        assertThat(Drawing.of(svg).texts()).contains("5 mi");
    }

    @Test
    void a_long_ride_is_drawn_by_few_points_and_keeps_its_corners() {
        int count = 80_000;
        double[] latitudes = new double[count];
        double[] longitudes = new double[count];
        for (int i = 0; i < count; i++) {
            latitudes[i] = 51.5 + 0.03 * StrictMath.sin(i / 900.0) + 0.0005 * StrictMath.sin(i * 1.3);
            longitudes[i] = -0.1 + 0.05 * StrictMath.cos(i / 1_700.0) + 0.0005 * StrictMath.cos(i * 2.1);
        }
        var track = new Track(latitudes, longitudes, new int[] {0});
        var sketch = TrackSketch.of(track, UnitSystem.METRIC, 240, 240).orElseThrow();
        assertThat(sketch.points()).isBetween(50, 500);
        var drawing = Drawing.of(sketch.svg("long.gpx"));
        drawing.holdsAllMarks();
    }

    @Test
    void a_break_stays_a_break_and_standing_still_is_no_fault() {
        var broken = new Track(new double[] {51.5, 51.501, 51.52, 51.521}, new double[] {0, 0, 0, 0}, new int[] {0, 2});
        assertThat(Drawing.of(TrackSketch.of(broken, UnitSystem.METRIC, 200, 200)
                                .orElseThrow()
                                .svg("two.gpx"))
                        .count("way"))
                .isEqualTo(2);
        var standing = new Track(new double[] {51.5, 51.5}, new double[] {0, 0}, new int[] {0});
        Drawing.of(TrackSketch.of(standing, UnitSystem.METRIC, 200, 200)
                        .orElseThrow()
                        .svg("still.gpx"))
                .holdsAllMarks();
        assertThat(TrackSketch.of(Track.NONE, UnitSystem.METRIC, 200, 200)).isEmpty();
    }

    private static Track square(double latitude, double longitude, double sideM) {
        var east = Geodesic.WGS84.Direct(latitude, longitude, 90, sideM);
        var north = Geodesic.WGS84.Direct(latitude, longitude, 0, sideM);
        return new Track(
                new double[] {latitude, latitude, north.lat2, north.lat2, latitude},
                new double[] {longitude, east.lon2, east.lon2, longitude, longitude},
                new int[] {0});
    }
}
