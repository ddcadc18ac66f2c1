//! Pages as files: which kind of drawing, under which names, all of them or none?

use std::path::{Path, PathBuf};

use super::Failure;
use super::files::{can_be_written, replace_all};
use crate::drawing::dxf::dxf;
use crate::drawing::pdf::pdf;
use crate::drawing::sheet::{Paper, Sheet};
use crate::drawing::svg::svg;
use crate::report::counted;

/// How drawings are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Drawn {
    /// One file, for programs that draw.
    Dxf,
    /// One file, for a printer.
    Pdf,
    /// A file a page.
    Svg,
}

impl Drawn {
    /// By the ending of the file.
    pub(super) fn of(out: &Path) -> Option<Self> {
        let ending = out.extension()?.to_string_lossy().to_lowercase();
        match ending.as_str() {
            "dxf" => Some(Self::Dxf),
            "pdf" => Some(Self::Pdf),
            "svg" => Some(Self::Svg),
            _ => None,
        }
    }
}

/// The paper with this name on the command line.
pub(super) const fn paper(name: super::arguments::PaperName) -> Paper {
    match name {
        super::arguments::PaperName::Letter => Paper::Letter,
        super::arguments::PaperName::A4 => Paper::A4,
        super::arguments::PaperName::A3 => Paper::A3,
    }
}

/// Writes pages into a file, or into a file each, all of them or none; what is said of them comes
/// back.
pub(super) fn write(
    out: &Path,
    drawn: Drawn,
    title: &str,
    pages: &[Sheet],
) -> Result<String, Failure> {
    let files: Vec<(PathBuf, Vec<u8>)> = match drawn {
        Drawn::Dxf => vec![(out.into(), dxf(pages).into_bytes())],
        Drawn::Pdf => {
            let bytes = pdf(title, pages).ok_or_else(|| {
                Failure::new("the drawing can't be written: its font can't be read", "")
            })?;
            vec![(out.into(), bytes)]
        }
        Drawn::Svg => pages
            .iter()
            .enumerate()
            .map(|(index, page)| (numbered(out, index + 1), svg(page).into_bytes()))
            .collect(),
    };
    for (path, _) in &files {
        can_be_written(path)?;
    }
    replace_all(&files)?;
    let mut said = String::new();
    for (index, (path, _)) in files.iter().enumerate() {
        let what = match (drawn, pages.get(index)) {
            (Drawn::Svg, Some(page)) => page.name.clone(),
            _ => counted(pages.len(), "page"),
        };
        said += &format!("{}: {what}\n", plain(path));
    }
    let next = numbered(out, files.len() + 1);
    if drawn == Drawn::Svg && next.exists() {
        said += &format!(
            "{} and what follows it are of an earlier, longer set: throw them away\n",
            plain(&next)
        );
    }
    Ok(said)
}

/// A path without what a terminal would act on.
fn plain(path: &Path) -> String {
    let name = path.display().to_string();
    name.chars().filter(|c| !c.is_control()).collect()
}

/// The file of a page: the first has the name as given, the others a number before its ending.
fn numbered(out: &Path, page: usize) -> PathBuf {
    if page == 1 {
        return out.into();
    }
    let stem = out.file_stem().unwrap_or_default().to_string_lossy();
    let ending = out.extension().unwrap_or_default().to_string_lossy();
    out.with_file_name(format!("{stem}-{page}.{ending}"))
}
