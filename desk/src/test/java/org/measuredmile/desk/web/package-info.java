/// The web app held to what a crew does with it: over HTTP, and in a real browser.
@NullMarked
package org.measuredmile.desk.web;

import org.jspecify.annotations.NullMarked;
