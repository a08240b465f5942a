package org.measuredmile.recording.reader;

/// The checksum of the FIT protocol, over bytes in the order in which they come.
///
/// Source: the published protocol's CRC-16 (polynomial x^16 + x^15 + x^2 + 1, lowest bit first, starting at 0). Eight
/// bytes are taken at once by tables that carry one byte's effect past those behind it.
final class FitChecksum {
    private static final int POLYNOMIAL = 0xA001;
    private static final int[][] TABLES = tables();

    private int value;

    private static int[][] tables() {
        int[][] tables = new int[8][256];
        for (int i = 0; i < 256; i++) {
            int rest = i;
            for (int bit = 0; bit < 8; bit++) {
                rest = (rest & 1) == 0 ? rest >>> 1 : (rest >>> 1) ^ POLYNOMIAL;
            }
            tables[0][i] = rest;
        }
        for (int behind = 1; behind < 8; behind++) {
            for (int i = 0; i < 256; i++) {
                int before = tables[behind - 1][i];
                tables[behind][i] = (before >>> 8) ^ tables[0][before & 0xFF];
            }
        }
        return tables;
    }

    void restart() {
        value = 0;
    }

    int value() {
        return value;
    }

    void add(byte[] bytes, int from, int to) {
        int sum = value;
        int at = from;
        for (; at + 8 <= to; at += 8) {
            int first = sum ^ ((bytes[at] & 0xFF) | ((bytes[at + 1] & 0xFF) << 8));
            sum = TABLES[7][first & 0xFF]
                    ^ TABLES[6][first >>> 8]
                    ^ TABLES[5][bytes[at + 2] & 0xFF]
                    ^ TABLES[4][bytes[at + 3] & 0xFF]
                    ^ TABLES[3][bytes[at + 4] & 0xFF]
                    ^ TABLES[2][bytes[at + 5] & 0xFF]
                    ^ TABLES[1][bytes[at + 6] & 0xFF]
                    ^ TABLES[0][bytes[at + 7] & 0xFF];
        }
        for (; at < to; at++) {
            sum = (sum >>> 8) ^ TABLES[0][(sum ^ bytes[at]) & 0xFF];
        }
        value = sum;
    }
}
