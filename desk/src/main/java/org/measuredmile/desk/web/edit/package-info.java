/// What the forms change: typed text to a test day's files, with every fault told beside its field and nothing lost.
///
/// May not know: the framework, requests, and any trial by name.
@NullMarked
package org.measuredmile.desk.web.edit;

import org.jspecify.annotations.NullMarked;
