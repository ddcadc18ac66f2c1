//! Ways in, against hand-made obstacles.
