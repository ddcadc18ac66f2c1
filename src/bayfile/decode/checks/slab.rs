//! Do the slab's days go together?

use jiff::civil::Date;

use crate::bay::Slab;
use crate::bayfile::decode::fields::Fields;

/// True when the slab's age is given once and its days follow one another; else that is noted.
pub(in crate::bayfile::decode) fn slab_days(f: &Fields<'_>, slab: &Slab) -> bool {
    let mut good = true;
    if slab.poured.is_some() && slab.age_days.is_some() {
        f.error(
            "age_days",
            "the slab's age is given twice: by its days and by the day it was poured",
            "the day it was poured is given too, and the two part with every day that passes",
            "keep `poured` and remove `age_days`",
        );
        good = false;
    }
    let days = [
        ("poured", "the slab is poured", slab.poured),
        ("drill_on", "it is drilled", slab.drill_on),
        ("load_on", "it is loaded", slab.load_on),
    ];
    for (index, early) in days.iter().enumerate() {
        for late in &days[index + 1..] {
            if let (Some(first), Some(second)) = (early.2, late.2)
                && first > second
            {
                out_of_order(f, (early.0, early.1, first), (late.0, late.1, second));
                good = false;
            }
        }
    }
    good
}

fn out_of_order(f: &Fields<'_>, early: (&str, &str, Date), late: (&str, &str, Date)) {
    f.error(
        late.0,
        &format!(
            "{} on {}, but {} on {} already",
            early.1, early.2, late.1, late.2
        ),
        &format!("this is before `{}`", early.0),
        &format!("check `{}` and `{}`", early.0, late.0),
    );
}
