//! Bayrise: will this two-post lift raise this vehicle in this garage, how high, and what stops it?
//!
//! The pipeline, in reading order; each room knows only the rooms above it:
//!
//! 1. [`units`]: typed quantities; what people type, what a tape shows.
//! 2. [`diagnostics`]: severity, place in the file, message, cure; [`letters`]: which letters are never
//!    shown as they are.
//! 3. [`bayfile`]: a bay file as written, every fault in it with its place → a valid bay.
//! 4. [`bay`]: the valid bay.
//! 5. [`solids`]: the one list of named convex solids, and the vehicle's attitude on the pads.
//! 6. [`clearance`]: the moving solids against the fixed ones on the whole way up → the study, into
//!    which [`ground`] puts what else decides: arms, loads, slab, anchors, doors, power.
//! 7. [`choose`]: many studies at once: which lift, for which vehicles, in which garage.
//! 8. [`report`]: finished findings as text and JSON.
//! 9. [`starter`]: a new bay file, large enough for two presets.
//! 10. [`worksheet`]: what to measure, as one table of questions; answers → a bay file.
//! 11. [`setting_out`]: floor points and the pulls of a tape that put the posts there.
//! 12. [`asbuilt`]: tape readings taken afterwards → where the posts stand, and the study again.
//! 13. [`drawing`]: colours and faces; a sheet of lines and text → SVG, PDF, DXF, PNG; the page to hand
//!     on (HTML) and the model (glTF).
//! 14. `panels`: the open document and the panels over it, without an engine.
//! 15. `viewer`: the window and the pictures, on the engine.
//! 16. [`cli`]: the command line; it and the window are the only places that read files and write.

pub mod asbuilt;
pub mod bay;
pub mod bayfile;
pub mod choose;
pub mod clearance;
pub mod cli;
pub mod diagnostics;
pub mod drawing;
pub mod ground;
pub mod letters;
#[cfg(feature = "panels")]
pub mod panels;
pub mod report;
pub mod setting_out;
pub mod solids;
pub mod starter;
pub mod units;
pub mod viewer;
pub mod worksheet;
