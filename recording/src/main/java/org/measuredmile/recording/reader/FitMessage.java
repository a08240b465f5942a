package org.measuredmile.recording.reader;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/// One data message as it stands in the window, for the messages that are read field by field.
///
/// The same object is laid over each message in turn, so that none is made for each.
final class FitMessage {
    private final FitBytes bytes;
    private @Nullable FitDefinition definition;
    private ByteBuffer view;
    private int at;
    private long timeNs;
    private long offset;

    FitMessage(FitBytes bytes) {
        this.bytes = bytes;
        view = bytes.view(false);
    }

    /// Lays it over a message whose fields begin at a place of the window; `offset` is the message's place in
    /// the file.
    void lay(FitDefinition over, int place, long time, long from) {
        definition = over;
        view = bytes.view(over.bigEndian());
        at = place;
        timeNs = time;
        offset = from;
    }

    /// The message's time in nanoseconds, [SampleTable#UNTIMED] where it has none.
    long timeNs() {
        return timeNs;
    }

    long offset() {
        return offset;
    }

    /// The first number of a field; NaN where it is not there or has no value.
    double number(int field) {
        return number(field, 0);
    }

    /// A number of a field that holds several.
    double number(int field, int which) {
        FitDefinition over = definition;
        int index = over == null ? -1 : over.index(field);
        if (over == null || index < 0) {
            return Double.NaN;
        }
        FitDefinition.Fields fields = over.fields();
        Optional<FitBase> base = FitBase.of(fields.types()[index]);
        if (base.isEmpty() || (which + 1) * base.get().width() > fields.sizes()[index]) {
            return Double.NaN;
        }
        return base.get()
                .number(view, at + fields.places()[index] + which * base.get().width());
    }

    /// A number as a field of 32 bits without a sign can hold; NaN for any other.
    double counted(int field, int which) {
        double value = number(field, which);
        return value >= 0 && value <= 0xFFFF_FFFFL ? value : Double.NaN;
    }

    /// A number that is whole, or another one where there is none.
    int whole(int field, int otherwise) {
        double value = number(field);
        return Double.isNaN(value) ? otherwise : (int) value;
    }

    /// How many numbers a field has room for.
    int room(int field) {
        FitDefinition over = definition;
        int index = over == null ? -1 : over.index(field);
        if (over == null || index < 0) {
            return 0;
        }
        int size = over.fields().sizes()[index];
        return FitBase.of(over.fields().types()[index])
                .map(base -> size / base.width())
                .orElse(0);
    }

    /// A field's text up to its first zero, or all of it where nothing ends it; empty where it is not there.
    String text(int field) {
        FitDefinition over = definition;
        int index = over == null ? -1 : over.index(field);
        if (over == null
                || index < 0
                || FitBase.of(over.fields().types()[index]).orElse(null) != FitBase.STRING) {
            return "";
        }
        int from = at + over.fields().places()[index];
        int to = from;
        while (to < from + over.fields().sizes()[index] && bytes.array()[to] != 0) {
            to++;
        }
        return Remarks.quoted(new String(bytes.array(), from, to - from, StandardCharsets.UTF_8).strip());
    }

    /// The bytes of a field as hexadecimal digits, for what only identifies something; empty where all are alike.
    String digits(int field) {
        FitDefinition over = definition;
        int index = over == null ? -1 : over.index(field);
        if (over == null || index < 0) {
            return "";
        }
        int from = at + over.fields().places()[index];
        StringBuilder digits = new StringBuilder();
        boolean alike = true;
        for (int i = from; i < from + over.fields().sizes()[index]; i++) {
            int value = bytes.array()[i] & 0xFF;
            alike &= value == (bytes.array()[from] & 0xFF);
            digits.append(Character.forDigit(value >> 4, 16)).append(Character.forDigit(value & 0xF, 16));
        }
        return alike ? "" : digits.toString();
    }
}
