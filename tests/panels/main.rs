//! The panels, driven as a person drives them: by pointer and keyboard, without a graphics card.

mod document;
mod edit;
mod helpers;
