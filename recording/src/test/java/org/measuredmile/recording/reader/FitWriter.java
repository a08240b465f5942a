package org.measuredmile.recording.reader;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/// Puts FIT files together byte by byte, right or wrong as a test asks.
///
/// It shares no code with the reader: its checksum goes bit by bit.
final class FitWriter {
    static final int ENUM = 0x00;
    static final int SINT8 = 0x01;
    static final int UINT8 = 0x02;
    static final int STRING = 0x07;
    static final int BYTE = 0x0D;
    static final int SINT16 = 0x83;
    static final int UINT16 = 0x84;
    static final int SINT32 = 0x85;
    static final int UINT32 = 0x86;
    static final int FLOAT32 = 0x88;
    static final int FLOAT64 = 0x89;
    static final int UINT32Z = 0x8C;
    static final int SINT64 = 0x8E;
    static final int UINT64 = 0x8F;

    /// A time of 2031, in seconds of the format's own clock.
    static final long T0 = 1_304_000_000L;

    private final ByteArrayOutputStream data = new ByteArrayOutputStream();
    private final ByteOrder[] orders = new ByteOrder[16];
    private final int[][] layouts = new int[16][];
    private ByteOrder order = ByteOrder.LITTLE_ENDIAN;
    private int headerLength = 14;
    private int headerChecksumError;
    private int checksumError;
    private long sizeError;

    /// An activity whose records hold a time, a distance in cm and a speed in mm/s, as message type 0.
    static FitWriter activity() {
        FitWriter writer = new FitWriter();
        writer.define(1, 0, 0, 1, ENUM).data(1, 4);
        return writer.define(0, 20, 253, 4, UINT32, 5, 4, UINT32, 6, 2, UINT16);
    }

    FitWriter bigEndian() {
        order = ByteOrder.BIG_ENDIAN;
        return this;
    }

    FitWriter littleEndian() {
        order = ByteOrder.LITTLE_ENDIAN;
        return this;
    }

    FitWriter headerLength(int length) {
        headerLength = length;
        return this;
    }

    FitWriter headerChecksumOff(int by) {
        headerChecksumError = by;
        return this;
    }

    FitWriter checksumOff(int by) {
        checksumError = by;
        return this;
    }

    FitWriter sizeOff(long by) {
        sizeError = by;
        return this;
    }

    /// Defines a message: number, size and base type of each field.
    FitWriter define(int local, int message, int... fields) {
        return define(local, message, fields, null);
    }

    /// The same with fields of applications: number, size and index of the application of each.
    FitWriter define(int local, int message, int[] fields, int @org.jspecify.annotations.Nullable [] developer) {
        data.write(0x40 | (developer == null ? 0 : 0x20) | local);
        data.write(0);
        data.write(order == ByteOrder.BIG_ENDIAN ? 1 : 0);
        put(number(message, 2));
        data.write(fields.length / 3);
        for (int each : fields) {
            data.write(each);
        }
        int[] all = fields;
        if (developer != null) {
            data.write(developer.length / 3);
            all = java.util.Arrays.copyOf(fields, fields.length + developer.length);
            for (int i = 0; i < developer.length; i++) {
                data.write(developer[i]);
                // Values of applications' fields are given as whole numbers, so any type of their width will do.
                all[fields.length + i] = i % 3 == 2 ? BYTE : developer[i];
            }
        }
        orders[local] = order;
        layouts[local] = all;
        return this;
    }

    FitWriter data(int local, Object... values) {
        data.write(local);
        return values(local, values);
    }

    /// A message whose header carries five bits of its time.
    FitWriter compressed(int local, int bits, Object... values) {
        data.write(0x80 | local << 5 | bits);
        return values(local, values);
    }

    private FitWriter values(int local, Object... values) {
        ByteOrder now = order;
        order = orders[local];
        for (int i = 0; i < values.length; i++) {
            put(field(values[i], layouts[local][3 * i + 1], layouts[local][3 * i + 2]));
        }
        order = now;
        return this;
    }

    private byte[] field(Object value, int size, int type) {
        return switch (value) {
            case String text -> java.util.Arrays.copyOf(text.getBytes(StandardCharsets.UTF_8), size);
            case byte[] bytes -> bytes;
            case long[] many -> {
                ByteBuffer all = ByteBuffer.allocate(size);
                for (long each : many) {
                    all.put(number(each, size / many.length));
                }
                yield all.array();
            }
            case Double real ->
                size == 4
                        ? ByteBuffer.allocate(4)
                                .order(order)
                                .putFloat(real.floatValue())
                                .array()
                        : ByteBuffer.allocate(8).order(order).putDouble(real).array();
            case Number whole -> number(whole.longValue(), size);
            default -> throw new IllegalArgumentException(value + " of type " + type);
        };
    }

    private byte[] number(long value, int size) {
        byte[] bytes = new byte[size];
        for (int i = 0; i < size; i++) {
            int at = order == ByteOrder.LITTLE_ENDIAN ? i : size - 1 - i;
            bytes[at] = (byte) (value >> (8 * i));
        }
        return bytes;
    }

    FitWriter put(byte[] bytes) {
        data.writeBytes(bytes);
        return this;
    }

    /// How many bytes the file has so far, header included.
    int length() {
        return headerLength + data.size();
    }

    byte[] bytes() {
        ByteBuffer file = ByteBuffer.allocate(headerLength + data.size() + 2).order(ByteOrder.LITTLE_ENDIAN);
        file.put((byte) headerLength).put((byte) 0x20).putShort((short) 2100);
        file.putInt((int) (data.size() + sizeError)).put(new byte[] {'.', 'F', 'I', 'T'});
        if (headerLength >= 14) {
            file.putShort((short) (checksum(file.array(), 12) + headerChecksumError));
        }
        file.position(headerLength);
        file.put(data.toByteArray());
        return file.putShort((short) (checksum(file.array(), headerLength + data.size()) + checksumError))
                .array();
    }

    private static int checksum(byte[] bytes, int length) {
        int sum = 0;
        for (int i = 0; i < length; i++) {
            sum ^= bytes[i] & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                sum = (sum & 1) == 0 ? sum >> 1 : sum >> 1 ^ 0xA001;
            }
        }
        return sum;
    }
}
