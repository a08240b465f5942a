/// What the pages show: plain records for the templates, and how they follow from figures, days and declarations.
///
/// May not know: the framework, requests, and any trial by name.
@NullMarked
package org.measuredmile.desk.web.view;

import org.jspecify.annotations.NullMarked;
