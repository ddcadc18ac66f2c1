//! What does the person see, and what can they do about it?
//!
//! Plain data and plain functions, without an engine and without a graphics card: [`Desk`] is all
//! that is open and chosen; panels are functions over it and an [`egui::Ui`], which change nothing
//! and only push [`Action`]s; [`Desk::apply`] is the one place where actions change it. What a
//! desk can't do itself (read a file, open a dialog, move to full screen) it asks for as a
//! [`Wish`], which the window carries out.

pub mod action;
pub mod as_built;
pub mod camera;
mod compare_detail;
pub mod compare_table;
pub mod compared;
mod desk;
pub mod document;
pub mod door_bar;
pub mod edit;
pub mod hand_over;
pub mod help;
pub mod job;
pub mod keys;
pub mod ladder;
pub mod limits;
pub mod menu;
pub mod notices;
pub mod overlay;
pub mod rise;
pub mod rise_bar;
pub mod sections;
pub mod settings;
pub mod shell;
pub mod show_mode;
pub mod shown;
pub mod signs;
pub mod status;
pub mod style;
pub mod verdict;
pub mod view_bar;

pub use action::{Action, Change, Wish};
pub use compared::Compared;
pub use desk::{Beside, Desk};
pub use document::Document;
