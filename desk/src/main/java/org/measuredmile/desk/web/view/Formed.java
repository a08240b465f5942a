package org.measuredmile.desk.web.view;

import org.measuredmile.desk.web.edit.Typed;

/// What a page shows, and what was typed into one of its forms.
public record Formed<T>(T shown, Typed typed) {}
