package org.measuredmile.recording.reader;

import de.siegmar.fastcsv.reader.CsvCallbackHandler;
import de.siegmar.fastcsv.reader.RecordType;

/// Takes the cells from the library's own buffer into a row that is used again: no text is made of a number.
final class CellRows extends CsvCallbackHandler<CellRow> {
    private final CellRow row;
    private RecordType type = RecordType.DATA;
    private int fields;

    CellRows(CellRow row) {
        this.row = row;
    }

    @Override
    protected void beginRecord(long startingLineNumber) {
        row.begin(startingLineNumber);
        type = RecordType.DATA;
        fields = 0;
    }

    @Override
    protected void addField(char[] buffer, int offset, int length, boolean quoted) {
        row.add(buffer, offset, length);
        fields++;
    }

    @Override
    protected void setComment(char[] buffer, int offset, int length) {
        type = RecordType.COMMENT;
    }

    @Override
    protected void setEmpty() {
        type = RecordType.EMPTY;
    }

    @Override
    protected RecordType getRecordType() {
        return type;
    }

    @Override
    protected int getFieldCount() {
        return fields;
    }

    @Override
    protected CellRow buildRecord() {
        return row;
    }
}
