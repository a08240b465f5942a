package org.measuredmile.archive.json;

import java.util.List;
import org.measuredmile.recording.ColumnMeaning;
import tools.jackson.databind.JsonNode;

/// What the columns of a table were taken for, as `mile inspect --columns --json` gives it.
public final class ColumnJson {
    private ColumnJson() {}

    public static JsonNode write(List<ColumnMeaning> columns) {
        return Json.array(columns, ColumnJson::column);
    }

    private static JsonNode column(ColumnMeaning column) {
        var object = Json.object()
                .put("name", column.name())
                .put("meaning", column.meaning())
                .put("unit", column.unitText())
                .put("because", column.because());
        object.set("first", Json.texts(column.first()));
        return object;
    }
}
