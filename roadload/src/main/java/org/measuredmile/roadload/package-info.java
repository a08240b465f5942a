/// What holds a bike back and what drives it: the force model, how its parameters are found, and what follows from
/// them.
///
/// Pure: numbers in, numbers out.
@NullMarked
package org.measuredmile.roadload;

import org.jspecify.annotations.NullMarked;
