//! The whole of it on bays.
