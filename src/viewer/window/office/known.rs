//! What does the open file hold as far as is known, and may it be written over?

use crate::panels::Desk;

/// What lies at a path: a text, or why it can't be read; none when nothing does.
pub(in super::super) type Lies = Option<Result<String, String>>;

/// What is known of the open file.
#[derive(Debug, Default)]
pub(super) struct Known {
    /// What it held when it was last read to the desk or written from it: what another program wrote
    /// since then is not for writing over unasked.
    agreed: Option<String>,
    /// What it held when it was last looked at.
    seen: Option<String>,
}

/// What comes before writing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Before {
    /// Nothing: it may be written.
    Nothing,
    /// The person has to say whether what another program wrote is to be written over.
    Question,
    /// Nothing is to be written: the desk had nothing to save and shows the file as it is now.
    ReadAgain,
}

impl Known {
    /// The file and the desk say this.
    pub(super) fn is(&mut self, text: String) {
        self.seen = Some(text.clone());
        self.agreed = Some(text);
    }

    /// What has to be done before `text` is written where `lies` lies.
    pub(super) fn before_writing(&mut self, text: &str, lies: &Lies, desk: &mut Desk) -> Before {
        match lies {
            None => Before::Nothing,
            Some(Ok(now)) if now == text || self.agreed.as_ref() == Some(now) => Before::Nothing,
            Some(Ok(now)) => {
                self.looked(now.clone(), desk);
                if self.agreed.as_ref() == Some(now) {
                    Before::ReadAgain
                } else {
                    Before::Question
                }
            }
            Some(Err(_)) => Before::Question,
        }
    }

    /// The file was looked at and holds this.
    pub(super) fn looked(&mut self, text: String, desk: &mut Desk) {
        if self.seen.as_ref() == Some(&text) {
            return;
        }
        let name = desk.document.name();
        desk.notices.retain(|notice| notice.text != gone(&name));
        self.seen = Some(text.clone());
        let is_the_same = desk.document.text() == text;
        if desk.document.changed_on_disk(text.clone()) {
            self.agreed = Some(text);
            if !is_the_same {
                let text = format!("{name} changed on disk and was read again.");
                super::tell(desk, false, text);
            }
        } else {
            let text = format!(
                "{name} changed on disk. What you changed here is kept: saving asks before it writes \
                 over the file, reloading drops your changes."
            );
            super::tell(desk, true, text);
        }
    }

    /// The file was looked at and can't be read any more.
    pub(super) fn is_gone(&mut self, is_there: bool, why: &str, desk: &mut Desk) {
        if self.seen.take().is_none() {
            return;
        }
        self.agreed = None;
        desk.document.gone_from_disk();
        let name = desk.document.name();
        let text = if is_there {
            format!("{name} can't be read any more: {why}. Shown is what it said before.")
        } else {
            gone(&name)
        };
        super::tell(desk, true, text);
    }
}

fn gone(name: &str) -> String {
    format!("{name} is gone from the disk. Saving writes it again.")
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::bayfile::presets::EmbeddedOnly;
    use crate::panels::Document;

    fn desk(known: &mut Known) -> Desk {
        known.is("one".into());
        let (path, text) = (Some("bay.ron".into()), "one".to_owned());
        Desk::new(Document::new(
            path,
            text.clone(),
            Some(text),
            Arc::new(EmbeddedOnly),
        ))
    }

    fn lies(text: &str) -> Lies {
        Some(Ok(text.into()))
    }

    #[test]
    fn what_another_program_wrote_is_not_written_over_unasked() {
        let mut known = Known::default();
        let mut desk = desk(&mut known);
        desk.document.change("mine".into());
        let before = |known: &mut Known, desk: &mut Desk, lies: &Lies| {
            known.before_writing("mine", lies, desk)
        };
        assert_eq!(before(&mut known, &mut desk, &lies("one")), Before::Nothing);
        assert_eq!(before(&mut known, &mut desk, &None), Before::Nothing);
        assert_eq!(
            before(&mut known, &mut desk, &lies("mine")),
            Before::Nothing
        );
        // Seen before the person saves or only then, and however often: it is asked.
        known.looked("other".into(), &mut desk);
        assert_eq!(desk.notices.len(), 1);
        for _ in 0..2 {
            let question = before(&mut known, &mut desk, &lies("other"));
            assert_eq!(question, Before::Question);
        }
        assert_eq!(
            before(&mut known, &mut desk, &lies("third")),
            Before::Question
        );
        let unreadable = Some(Err("no text".into()));
        assert_eq!(before(&mut known, &mut desk, &unreadable), Before::Question);
        assert_eq!(desk.document.text(), "mine");
        assert!(desk.document.is_unsaved());
    }

    #[test]
    fn with_nothing_to_save_the_file_is_read_again_instead() {
        let mut known = Known::default();
        let mut desk = desk(&mut known);
        let before = known.before_writing("one", &lies("other"), &mut desk);
        assert_eq!(before, Before::ReadAgain);
        assert_eq!(desk.document.text(), "other");
        assert!(!desk.document.is_unsaved());
    }

    #[test]
    fn looking_twice_tells_once() {
        let mut known = Known::default();
        let mut desk = desk(&mut known);
        known.looked("one".into(), &mut desk);
        assert!(desk.notices.is_empty());
        desk.document.change("mine".into());
        known.looked("other".into(), &mut desk);
        desk.notices.clear();
        known.looked("other".into(), &mut desk);
        assert!(desk.notices.is_empty());
        known.looked("mine".into(), &mut desk);
        assert!(!desk.document.is_unsaved() && desk.notices.is_empty());
        assert_eq!(
            known.before_writing("mine", &lies("mine"), &mut desk),
            Before::Nothing
        );
    }

    #[test]
    fn a_file_that_is_gone_is_told_of_until_it_is_back() {
        let mut known = Known::default();
        let mut desk = desk(&mut known);
        for _ in 0..2 {
            known.is_gone(false, "there is no file", &mut desk);
        }
        assert_eq!(desk.notices.len(), 1);
        assert!(desk.document.is_unsaved());
        known.looked("one".into(), &mut desk);
        assert!(desk.notices.is_empty() && !desk.document.is_unsaved());
        known.is_gone(true, "it is a folder", &mut desk);
        assert!(desk.notices[0].text.contains("it is a folder"));
    }

    #[test]
    fn a_file_that_comes_back_as_another_is_read_where_nothing_was_changed() {
        let mut known = Known::default();
        let mut desk = desk(&mut known);
        known.is_gone(false, "there is no file", &mut desk);
        known.looked("other".into(), &mut desk);
        assert_eq!(desk.document.text(), "other");
        assert!(!desk.document.is_unsaved());
        assert_eq!(desk.notices.len(), 1);
        assert!(desk.notices[0].text.contains("was read again"));
        let before = known.before_writing("other", &lies("other"), &mut desk);
        assert_eq!(before, Before::Nothing);
    }
}
