package org.measuredmile.recording;

/// The file formats that recordings come in.
public enum Format {
    GPX("GPX", "GPX 1.0 and 1.1, track points with extensions"),
    TCX("TCX", "training file: activities, laps and track points"),
    FIT("FIT", "activity files of bike computers, watches and action cameras"),
    NMEA("NMEA 0183", "sentences of a satellite receiver"),
    DELIMITED("delimited text", "columns separated by comma, semicolon, tab or bar"),
    CAPTIONS("captions", "WebVTT or SRT: the words said in a clip, with their times");

    private final String title;
    private final String meaning;

    Format(String title, String meaning) {
        this.title = title;
        this.meaning = meaning;
    }

    public String title() {
        return title;
    }

    public String meaning() {
        return meaning;
    }
}
