//! Does the file say what was answered, and only that?

use super::*;
