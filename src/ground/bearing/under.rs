//! How does a post stand on its slab, and is that slab one that the formulas are for?

use glam::DVec2;

use super::press::Press;
use crate::bay::Bay;
use crate::ground::Figure;
use crate::ground::anchors::post::{Post, plan_in};
use crate::ground::anchors::show::{LINES, greatest, screened};
use crate::ground::post_base::PostBase;
use crate::ground::slab::{PlateSlab, SlabMap};
use crate::units::M_PER_INCH;

/// What settles a screening that does not show enough.
pub(super) const ENGINEER: &str = "this screening does not show it; the lift's manual may still accept this slab: follow it, or \
     ask a licensed engineer, who may ask for a pad under the posts";

/// One post on its slab, in the codes' units.
pub(super) struct Under {
    /// While it turns to the front, and to the rear.
    pub(super) presses: [Press; 2],
    /// Where its anchors stand in plan, inches.
    pub(super) anchors_in: Vec<[f64; 2]>,
    /// The plate's middle in plan, inches, and the sign of inward.
    pub(super) middle_in: [f64; 2],
    pub(super) inward: f64,
    pub(super) thickness_in: f64,
    pub(super) fc_psi: f64,
    /// Distances of edges, joints, cracks and drains from the plate, inches, least first.
    pub(super) edges_in: Vec<f64>,
    /// Why the slab is not as the formulas take it, if it is not.
    pub(super) open: Option<&'static str>,
    /// The columns' own weight is not in the load.
    pub(super) is_light: bool,
}

/// What lacks, so that a post on its slab can't be screened.
pub(super) struct Missing {
    /// What it presses, lbf, where that is known.
    pub(super) press: Option<f64>,
    /// How to get what lacks.
    pub(super) how: &'static str,
}

impl Under {
    /// A post on its slab.
    pub(super) fn of(
        bay: &Bay,
        map: &SlabMap,
        slab: &PlateSlab,
        base: &PostBase,
    ) -> Result<Self, Missing> {
        let missing = |press, how| Missing { press, how };
        let post = Post::of(bay, map, slab.side, slab, Some(base));
        let forces = post
            .forces
            .as_ref()
            .filter(|_| !bay.lift.base_plate.anchors.is_empty());
        let Some(forces) = forces else {
            // What the anchors pull presses on the slab too: without their places nothing is known.
            return Err(missing(
                None,
                "give the anchor holes as `base_plate.anchors`, from the lift's manual: their pull \
                 presses the plate on the slab",
            ));
        };
        let presses = Press::of(base, forces, bay);
        let (Some(thickness_in), Some(fc_psi)) = (post.thickness_in, post.fc_psi) else {
            let how = match (post.thickness_in, post.fc_psi) {
                (Some(_), None) => {
                    "give strength and age of the concrete: from the delivery note, or from a test \
                     of the slab"
                }
                (None, Some(_)) => "read the slab's thickness in two holes near each plate",
                _ => {
                    "read the slab's thickness in two holes near each plate, and give strength and \
                     age of the concrete"
                }
            };
            return Err(missing(Some(most_lbf(&presses)), how));
        };
        let rect = &map.plate(slab.side).rect;
        let at = |[x, y]: [f64; 2]| DVec2::new(x, y) * M_PER_INCH;
        let lines = post.lines.iter();
        let mut edges_in: Vec<f64> = lines
            .map(|line| rect.line_distance_m([at(line.from_in), at(line.to_in)]) / M_PER_INCH)
            .collect();
        edges_in.sort_by(f64::total_cmp);
        Ok(Self {
            presses,
            anchors_in: post.at_in,
            middle_in: plan_in(rect.middle()),
            inward: crate::solids::posts::inward(slab.side),
            thickness_in,
            fc_psi,
            edges_in,
            open: open(bay, slab),
            is_light: bay.lift.shipping_mass.is_none(),
        })
    }

    /// The most that it presses, lbf, without a load factor.
    pub(super) fn load_lbf(&self) -> f64 {
        most_lbf(&self.presses)
    }
}

fn most_lbf(presses: &[Press; 2]) -> f64 {
    greatest(presses.iter().map(|press| press.load_lbf))
}

/// Why the slab is not as the formulas take it.
fn open(bay: &Bay, slab: &PlateSlab) -> Option<&'static str> {
    let known = bay.slab.as_ref();
    let hazards = known.map_or([None; 2], |slab| [slab.suspended, slab.void_below]);
    if hazards.contains(&Some(true)) {
        return Some(
            "this floor does not lie on ground, which these methods are for: ask a licensed \
             engineer",
        );
    }
    if hazards.contains(&None) {
        return Some(
            "find out whether the floor lies on ground everywhere, which these methods are for, \
             and say `suspended: false` and `void_below: false`",
        );
    }
    if bay.lift.shipping_mass.is_none() {
        return Some("give the lift's `shipping_mass`: the columns' own weight is not in the load");
    }
    if slab.broken {
        return Some(
            "a joint, a crack, a drain or an edge runs under the plate, which these methods are \
             not for: move the lift, or ask a licensed engineer",
        );
    }
    (!slab.lines_listed).then_some(LINES)
}

/// A screening of this slab: what fails, and what the formulas are not for, is not known.
pub(super) fn settled(figure: Figure, open: Option<&'static str>) -> Figure {
    let figure = screened(figure, ENGINEER);
    match open {
        Some(how) => figure.undecided(how),
        None => figure,
    }
}
