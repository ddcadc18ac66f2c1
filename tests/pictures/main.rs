//! Pictures of the shipped scenes, drawn on the processor: do they look as they did, and do they
//! show what is so?
//!
//! The engine is started once; tests ask a thread of its own for pictures. With
//! `BAYRISE_UPDATE_PICTURES=1` in the environment the stored pictures are written anew: look at
//! every one of them before keeping it.

mod facts;
mod likeness;
mod shots;
mod stored;
