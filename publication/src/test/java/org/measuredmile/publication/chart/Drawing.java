package org.measuredmile.publication.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/// A chart read back as XML: where its marks are.
final class Drawing {
    private static final Pattern STEP = Pattern.compile("([MLHVZ])([-\\d. ]*)");

    private final Element root;

    /// A corner of a mark.
    record Point(double x, double y) {}

    private Drawing(Element root) {
        this.root = root;
    }

    static Drawing of(String svg) {
        try {
            var builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
            return new Drawing(
                    builder.parse(new InputSource(new StringReader(svg))).getDocumentElement());
        } catch (Exception notXml) {
            throw new AssertionError("not well-formed: " + svg, notXml);
        }
    }

    String label() {
        return plain(root.getAttribute("aria-label"));
    }

    int count(String cssClass) {
        int found = 0;
        for (Element element : all()) {
            if (List.of(element.getAttribute("class").split(" ")).contains(cssClass)) {
                found++;
            }
        }
        return found;
    }

    List<String> texts() {
        return all().stream()
                .filter(element -> element.getTagName().equals("text"))
                .map(element -> plain(element.getTextContent()))
                .toList();
    }

    /// With ordinary spaces where the printer put no-break ones.
    static String plain(String words) {
        return words.replace('\u00a0', ' ');
    }

    /// Every mark lies inside the view box, half a line's width aside; texts by their estimated width.
    void holdsAllMarks() {
        String[] box = root.getAttribute("viewBox").split(" ");
        double width = Double.parseDouble(box[2]);
        double height = Double.parseDouble(box[3]);
        for (Point point : points()) {
            assertThat(point.x())
                    .as("x of %s in %s", point, root.getAttribute("viewBox"))
                    .isBetween(-1.0, width + 1);
            assertThat(point.y())
                    .as("y of %s in %s", point, root.getAttribute("viewBox"))
                    .isBetween(-1.0, height + 1);
        }
    }

    List<Point> points() {
        var points = new ArrayList<Point>();
        for (Element element : all()) {
            switch (element.getTagName()) {
                case "path" -> path(element.getAttribute("d"), points);
                case "circle" -> points.add(new Point(number(element, "cx"), number(element, "cy")));
                case "rect" -> {
                    points.add(new Point(number(element, "x"), number(element, "y")));
                    points.add(new Point(
                            number(element, "x") + number(element, "width"),
                            number(element, "y") + number(element, "height")));
                }
                case "text" -> text(element, points);
                default -> {}
            }
        }
        return points;
    }

    private static void text(Element element, List<Point> points) {
        double width = Svg.widthOf(element.getTextContent()) * 0.85;
        String css = element.getAttribute("class");
        double x = number(element, "x");
        double from = css.contains("mid") ? x - width / 2 : css.contains("right") ? x - width : x;
        points.add(new Point(from, number(element, "y")));
        points.add(new Point(from + width, number(element, "y") - 9));
    }

    private static void path(String d, List<Point> points) {
        Matcher step = STEP.matcher(d);
        double x = 0;
        double y = 0;
        while (step.find()) {
            String[] numbers = step.group(2).strip().split(" ");
            switch (step.group(1)) {
                case "M", "L" -> {
                    x = Double.parseDouble(numbers[0]);
                    y = Double.parseDouble(numbers[1]);
                }
                case "H" -> x = Double.parseDouble(numbers[0]);
                case "V" -> y = Double.parseDouble(numbers[0]);
                default -> {}
            }
            points.add(new Point(x, y));
        }
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    private List<Element> all() {
        NodeList nodes = root.getElementsByTagName("*");
        var elements = new ArrayList<Element>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }
}
