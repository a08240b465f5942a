package org.measuredmile.recording.reader;

import java.nio.ByteBuffer;
import java.util.Optional;

/// The base types of FIT fields: how wide they are and which of their values says that there is none.
///
/// Source: the published protocol's table of base types; its order is that of this enum. The flag for types wider than
/// a byte (0x80) is not asked for: some writers leave it out.
enum FitBase {
    ENUM(1),
    SINT8(1),
    UINT8(1),
    SINT16(2),
    UINT16(2),
    SINT32(4),
    UINT32(4),
    STRING(1),
    FLOAT32(4),
    FLOAT64(8),
    UINT8Z(1),
    UINT16Z(2),
    UINT32Z(4),
    BYTE(1),
    SINT64(8),
    UINT64(8),
    UINT64Z(8);

    private static final FitBase[] ALL = values();
    private static final int NUMBER = 0x1F;

    private final int width;

    FitBase(int width) {
        this.width = width;
    }

    static Optional<FitBase> of(int code) {
        int number = code & NUMBER;
        return number < ALL.length ? Optional.of(ALL[number]) : Optional.empty();
    }

    int width() {
        return width;
    }

    /// The number at a place of the window; NaN where the type says that there is none, and for text.
    double number(ByteBuffer bytes, int at) {
        return switch (this) {
            case ENUM, UINT8, BYTE -> unless(bytes.get(at) & 0xFF, 0xFF);
            case SINT8 -> unless(bytes.get(at), Byte.MAX_VALUE);
            case UINT8Z -> unless(bytes.get(at) & 0xFF, 0);
            case SINT16 -> unless(bytes.getShort(at), Short.MAX_VALUE);
            case UINT16 -> unless(bytes.getShort(at) & 0xFFFF, 0xFFFF);
            case UINT16Z -> unless(bytes.getShort(at) & 0xFFFF, 0);
            case SINT32 -> unless(bytes.getInt(at), Integer.MAX_VALUE);
            case UINT32 -> unless(bytes.getInt(at) & 0xFFFF_FFFFL, 0xFFFF_FFFFL);
            case UINT32Z -> unless(bytes.getInt(at) & 0xFFFF_FFFFL, 0);
            case SINT64 -> unless(bytes.getLong(at), Long.MAX_VALUE);
            case UINT64 -> unsigned(bytes.getLong(at), -1);
            case UINT64Z -> unsigned(bytes.getLong(at), 0);
            case FLOAT32 -> finite(bytes.getFloat(at));
            case FLOAT64 -> finite(bytes.getDouble(at));
            case STRING -> Double.NaN;
        };
    }

    private static double unless(long value, long none) {
        return value == none ? Double.NaN : value;
    }

    private static double unsigned(long value, long none) {
        if (value == none) {
            return Double.NaN;
        }
        return value >= 0 ? value : (value >>> 1) * 2.0 + (value & 1);
    }

    private static double finite(double value) {
        return Double.isFinite(value) ? value : Double.NaN;
    }
}
