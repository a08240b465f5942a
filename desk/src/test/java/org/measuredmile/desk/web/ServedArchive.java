package org.measuredmile.desk.web;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.measuredmile.archive.Archive;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.desk.WebDoor;
import org.measuredmile.recording.day.DayFolder;

/// A fresh archive, served; and a visitor who reads pages and sends forms as a browser would.
final class ServedArchive implements AutoCloseable {
    private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

    private final Archive archive;
    private final WebDoor.Served served;
    private final HttpClient visitor = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();

    ServedArchive(Path folder) {
        archive = Archive.open(folder, Clock.fixed(Instant.parse("2031-06-30T12:00:00Z"), ZoneOffset.UTC));
        served = new Web().open(archive, new WebDoor.Wish(0, true));
    }

    Archive archive() {
        return archive;
    }

    int port() {
        return served.port();
    }

    String url(String path) {
        return "http://127.0.0.1:" + served.port() + path;
    }

    HttpResponse<String> get(String path) {
        return send(HttpRequest.newBuilder(URI.create(url(path))).GET().build());
    }

    /// Sends a form with the token of a page that was read before.
    HttpResponse<String> post(String path, Map<String, String> fields) {
        var all = new LinkedHashMap<>(fields);
        all.put("_csrf", token());
        return postWithoutToken(path, all);
    }

    HttpResponse<String> postWithoutToken(String path, Map<String, String> fields) {
        String body = fields.entrySet().stream()
                .map(field -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
                .collect(Collectors.joining("&"));
        return send(HttpRequest.newBuilder(URI.create(url(path)))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(body))
                .build());
    }

    /// Sends files, by name, as a browser's file input does.
    HttpResponse<String> upload(String path, String who, Map<String, byte[]> files) {
        return upload(path, "files", who, files);
    }

    HttpResponse<String> upload(String path, String field, String who, Map<String, byte[]> files) {
        String boundary = "a-line-no-file-holds";
        var body = new java.io.ByteArrayOutputStream();
        part(body, boundary, "_csrf", token());
        part(body, boundary, "who", who);
        files.forEach((name, bytes) -> {
            String head = "--" + boundary + "\r\nContent-Disposition: form-data; name=\"" + field + "\"; filename=\""
                    + name + "\"\r\nContent-Type: application/octet-stream\r\n\r\n";
            body.writeBytes(head.getBytes(StandardCharsets.UTF_8));
            body.writeBytes(bytes);
            body.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
        });
        body.writeBytes(("--" + boundary + "--\r\n").getBytes(StandardCharsets.UTF_8));
        return send(HttpRequest.newBuilder(URI.create(url(path)))
                .header("Content-Type", "multipart/form-data; boundary=" + boundary)
                .POST(BodyPublishers.ofByteArray(body.toByteArray()))
                .build());
    }

    private static void part(java.io.ByteArrayOutputStream body, String boundary, String name, String value) {
        String part =
                "--" + boundary + "\r\nContent-Disposition: form-data; name=\"" + name + "\"\r\n\r\n" + value + "\r\n";
        body.writeBytes(part.getBytes(StandardCharsets.UTF_8));
    }

    private String token() {
        Matcher found = TOKEN.matcher(get("/handbook").body());
        if (!found.find()) {
            throw new AssertionError("no token on the page");
        }
        return found.group(1);
    }

    HttpResponse<byte[]> bytes(String path) {
        try {
            return visitor.send(
                    HttpRequest.newBuilder(URI.create(url(path))).GET().build(), BodyHandlers.ofByteArray());
        } catch (IOException | InterruptedException failed) {
            throw new AssertionError(path, failed);
        }
    }

    private HttpResponse<String> send(HttpRequest request) {
        try {
            return visitor.send(request, BodyHandlers.ofString(StandardCharsets.UTF_8));
        } catch (IOException | InterruptedException failed) {
            throw new AssertionError(request.uri().toString(), failed);
        }
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /// A recording in which stops can be found: the invented fleet's first.
    static byte[] recordingOfStops() {
        DayFolder.ByteSource stops = DemoFleet.days(DemoFleet.SEED).stream()
                .flatMap(day -> Stream.ofNullable(day.recordings().get("stops.csv")))
                .findFirst()
                .orElseThrow();
        try (var bytes = stops.open()) {
            return bytes.readAllBytes();
        } catch (IOException failed) {
            throw new AssertionError(failed);
        }
    }

    /// The fields of a day's form that a crew would fill in.
    static Map<String, String> typedDay() {
        var fields = new LinkedHashMap<String, String>();
        fields.put("bike", "new");
        fields.put("maker", "Brindle");
        fields.put("model", "Causeway");
        fields.put("category", "commuter");
        fields.put("drive", "both");
        fields.put("levels", "5");
        fields.put("date", "2031-06-30");
        fields.put("timeZone", "Europe/London");
        fields.put("place", "Old Ferry Road");
        fields.put("crew", "T1 tester, M1 mechanic");
        fields.put("rider", "R1");
        fields.put("mass", "183 lb");
        fields.put("airTemperature", "64 °F");
        fields.put("pressure", "101.3 kPa");
        fields.put("surface", "dry");
        fields.put("who", "T1");
        return fields;
    }

    @Override
    public void close() {
        served.close();
        archive.close();
    }
}
