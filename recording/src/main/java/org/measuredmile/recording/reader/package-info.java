/// Readers: bytes in, a [org.measuredmile.recording.Recording] or a refusal out.
///
/// Read in this order: [RecordingReader], [Decoding], [Readers]. A reader's own file says what it takes of its format.
///
/// May not know: where the bytes come from.
@NullMarked
package org.measuredmile.recording.reader;

import org.jspecify.annotations.NullMarked;
