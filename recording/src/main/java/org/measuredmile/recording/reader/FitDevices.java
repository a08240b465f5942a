package org.measuredmile.recording.reader;

import java.util.HashMap;
import java.util.Map;
import org.measuredmile.recording.ChannelKind;

/// Which instrument wrote the file, and which sensors it lists.
///
/// Makers and products are numbers in the file; a name is given only where the file itself spells one out.
/// Source: the published profile's device types of the common sensor network, from memory.
final class FitDevices {
    static final int FILE = 0;
    static final int DEVICE = 23;

    private static final int POWER = 11;
    private static final int LIGHT_ELECTRIC_VEHICLE = 20;
    private static final int FOOT_POD = 124;
    private static final int HEART_RATE = 120;
    private static final int SPEED_AND_CADENCE = 121;
    private static final int CADENCE = 122;
    private static final int SPEED = 123;
    private static final int SOURCE_NETWORK = 1;

    private final Map<Integer, String> sensors = new HashMap<>();
    private String writer = "";
    private String writerName = "";

    /// Takes the message that identifies the file.
    void takeFile(FitMessage message) {
        if (writer.isEmpty()) {
            writer = numbered(message, 1, 2);
            writerName = message.text(8);
        }
    }

    /// Takes the message that lists a device.
    void takeDevice(FitMessage message) {
        String name = message.text(27);
        if (message.whole(0, -1) == 0) {
            writerName = writerName.isEmpty() ? name : writerName;
            writer = writer.isEmpty() ? numbered(message, 2, 4) : writer;
            return;
        }
        int source = message.whole(25, SOURCE_NETWORK);
        int type = message.whole(1, -1);
        if (source == SOURCE_NETWORK && type >= 0) {
            String numbered = numbered(message, 2, 4);
            String said = name.isEmpty() ? numbered : name;
            if (!said.isEmpty() || !sensors.containsKey(type)) {
                sensors.put(type, said);
            }
        }
    }

    private static String numbered(FitMessage message, int maker, int product) {
        int by = message.whole(maker, -1);
        int which = message.whole(product, -1);
        if (by < 0) {
            return "";
        }
        return "manufacturer " + by + (which < 0 ? "" : ", product " + which);
    }

    /// The instrument that wrote the file.
    String writer() {
        return writerName.isEmpty() ? writer : writerName;
    }

    boolean hasWheelSensor() {
        return sensors.containsKey(SPEED) || sensors.containsKey(SPEED_AND_CADENCE);
    }

    boolean hasElectricBike() {
        return sensors.containsKey(LIGHT_ELECTRIC_VEHICLE);
    }

    /// The sensor that a kind of channel comes of, where the file lists one that alone can give it; else empty.
    ///
    /// @param positioned whether the file holds positions, of which a speed may come as well
    String source(ChannelKind kind, boolean positioned) {
        return switch (kind) {
            case HEART_RATE -> sensor("heart-rate sensor", HEART_RATE);
            case POWER -> sensor("power meter", POWER);
            case CADENCE -> {
                String one = sensor("cadence sensor", CADENCE);
                yield one.isEmpty() ? sensor("speed and cadence sensor", SPEED_AND_CADENCE) : one;
            }
            case WHEEL_SPEED -> {
                String one = sensor("wheel sensor", SPEED);
                yield one.isEmpty() ? sensor("speed and cadence sensor", SPEED_AND_CADENCE) : one;
            }
            case SPEED -> positioned ? "" : sensor("foot pod", FOOT_POD);
            default -> "";
        };
    }

    private String sensor(String what, int type) {
        String said = sensors.get(type);
        return said == null ? "" : said.isEmpty() ? what : what + ", " + said;
    }
}
