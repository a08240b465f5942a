package org.measuredmile.recording.reader;

import org.jspecify.annotations.Nullable;

/// What a definition message says of the data messages that follow it: which message it is, in which byte order, and
/// where each field stands.
///
/// Shape: places count from the byte after a data message's header; `types` are base types as written.
final class FitDefinition {
    static final int TIMESTAMP = 253;

    private final int message;
    private final boolean bigEndian;
    private final Fields fields;
    private final Fields developerFields;
    private final int length;
    private final int stampAt;
    private @Nullable FitPlan plan;

    /// Fields in the order of the message. For an application's fields `types` holds the index of the application.
    record Fields(int[] numbers, int[] sizes, int[] types, int[] places) {
        int size() {
            return numbers.length;
        }

        int end() {
            int last = size() - 1;
            return last < 0 ? 0 : places[last] + sizes[last];
        }
    }

    FitDefinition(int message, boolean bigEndian, Fields fields, Fields developerFields) {
        this.message = message;
        this.bigEndian = bigEndian;
        this.fields = fields;
        this.developerFields = developerFields;
        length = Math.max(fields.end(), developerFields.end());
        int stamp = index(TIMESTAMP);
        stampAt = stamp >= 0 && fields.sizes[stamp] == 4 ? fields.places[stamp] : -1;
    }

    /// Reads so many fields of three bytes each; `from` is where the first of them stands in a message.
    static Fields fields(FitBytes bytes, int ahead, int count, int from) {
        int[] numbers = new int[count];
        int[] sizes = new int[count];
        int[] types = new int[count];
        int[] places = new int[count];
        int place = from;
        for (int i = 0; i < count; i++) {
            numbers[i] = bytes.peek(ahead + 3 * i);
            sizes[i] = bytes.peek(ahead + 3 * i + 1);
            types[i] = bytes.peek(ahead + 3 * i + 2);
            places[i] = place;
            place += sizes[i];
        }
        return new Fields(numbers, sizes, types, places);
    }

    int message() {
        return message;
    }

    boolean bigEndian() {
        return bigEndian;
    }

    Fields fields() {
        return fields;
    }

    Fields developerFields() {
        return developerFields;
    }

    /// How many bytes a data message has after its header.
    int length() {
        return length;
    }

    /// Where its time stands; −1 where it has none.
    int stampAt() {
        return stampAt;
    }

    /// The index of the first field with a number; −1 where there is none.
    int index(int number) {
        for (int i = 0; i < fields.size(); i++) {
            if (fields.numbers[i] == number) {
                return i;
            }
        }
        return -1;
    }

    @Nullable
    FitPlan plan() {
        return plan;
    }

    void plan(@Nullable FitPlan made) {
        plan = made;
    }
}
