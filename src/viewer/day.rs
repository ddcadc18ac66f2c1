//! Which day is it here?

use crate::ground::Date;

/// Today by this machine's clock and zone: with the command line and the window, the only place
/// that reads a clock for a verdict.
#[must_use]
pub fn today() -> Date {
    jiff::ZonedDateTime::now().date()
}
