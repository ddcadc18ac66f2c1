//! What is known of the anchors, and what is taken where the file is silent?
//!
//! In inches, pounds-force and psi.

use super::group::Setting;
use super::limits::{critical_edge, depth_is_limited, most_embedment_in};
use super::tension::Placing;
use crate::bay::{Anchor, AnchorKind, Bay, UnitSystem};
use crate::units::{M_PER_INCH, N_PER_POUND_FORCE, PA_PER_PSI};

/// Square metres in a square inch.
pub(super) const M2_PER_SQ_IN: f64 = M_PER_INCH * M_PER_INCH;

/// Concrete that test reports of anchors start at, psi (ACI 318-19, 17.3.1 and 19.2.1).
pub(super) const REPORTED_FC_PSI: f64 = 2500.0;

/// The anchors, as known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Given {
    /// What the file says of them; nothing where it says nothing.
    pub anchor: Anchor,
    /// True when the file says anything of them beside size and place.
    pub told: bool,
    /// Diameter, inches.
    pub diameter_in: Option<f64>,
    /// True in a metric bay, where the European code's cone is shown beside the American one's.
    pub metric: bool,
    /// Embedment as written, inches: never less than the effective one.
    pub embedment_in: Option<f64>,
    /// True where the slab is shown to stay uncracked under this post. What the file says of the
    /// concrete counts only there (ACI 318-19, 17.6.2.5.1: where analysis shows no cracking).
    pub stays_uncracked: bool,
}

/// Concrete that is left under the tip of an anchor that is drilled in, whatever product data say,
/// inches: less of it breaks out while the hole is drilled (common practice, no source).
pub(super) const UNDER_TIP_IN: f64 = 1.25;

impl Given {
    /// What a bay says.
    #[must_use]
    pub fn of(bay: &Bay) -> Self {
        let plate = &bay.lift.base_plate;
        Self {
            metric: bay.units == UnitSystem::Metric,
            anchor: plate.anchor.unwrap_or_default(),
            told: plate.anchor.is_some(),
            diameter_in: plate.anchor_diameter.map(|d| d.in_inches()),
            embedment_in: plate.anchor_embedment.map(|d| d.in_inches()),
            stays_uncracked: false,
        }
    }

    /// How they are placed; post-installed where the kind is not known, which holds less.
    #[must_use]
    pub const fn placing(&self) -> Placing {
        match self.anchor.kind {
            Some(AnchorKind::CastIn) => Placing::CastIn,
            _ => Placing::PostInstalled,
        }
    }

    /// Whether the concrete may be cracked: yes where nobody says, and where it is not shown.
    #[must_use]
    pub fn cracked(&self) -> bool {
        self.anchor.cracked.unwrap_or(true) || !self.stays_uncracked
    }

    /// True where the file takes the concrete as uncracked and that is not shown.
    #[must_use]
    pub fn claims_too_much(&self) -> bool {
        self.anchor.cracked == Some(false) && !self.stays_uncracked
    }

    /// k<sub>c</sub> of the test report. One for uncracked concrete that is not shown to stay so counts
    /// no more than the code's own.
    #[must_use]
    pub fn tested_kc(&self) -> Option<f64> {
        let tested = self.anchor.kc?;
        let own = self.placing().kc();
        Some(if self.claims_too_much() && tested > own {
            own
        } else {
            tested
        })
    }

    /// How deep the anchors go, inches: what is written, or the effective embedment.
    #[must_use]
    pub fn tip_in(&self) -> Option<f64> {
        self.embedment_in
            .into_iter()
            .chain(self.anchor.effective_embedment.map(|d| d.in_inches()))
            .reduce(|one, other| if other > one { other } else { one })
    }

    /// Concrete asked under their tips, inches; none for those that are cast in.
    #[must_use]
    pub fn under_tip_in(&self) -> Option<f64> {
        let two = 2.0 * self.diameter_in.unwrap_or(0.0);
        let least = if two > UNDER_TIP_IN {
            two
        } else {
            UNDER_TIP_IN
        };
        (self.placing() == Placing::PostInstalled).then_some(least)
    }

    /// Category; the lowest where nobody says.
    #[must_use]
    pub fn category(&self) -> u8 {
        self.anchor.category.unwrap_or(3)
    }

    /// True where the effective embedment is a diameter taken off the one written: what lies below
    /// an anchor's bearing part holds nothing (common practice, no source).
    #[must_use]
    pub const fn is_shortened(&self) -> bool {
        self.anchor.effective_embedment.is_none() && depth_is_limited(self.anchor.kind)
    }

    /// Effective embedment, inches.
    #[must_use]
    pub fn hef_in(&self) -> Option<f64> {
        if let Some(given) = self.anchor.effective_embedment {
            return Some(given.in_inches());
        }
        let written = self.embedment_in?;
        let hef = if self.is_shortened() {
            written - self.diameter_in?
        } else {
            written
        };
        (hef > 0.0).then_some(hef)
    }

    /// The embedment that a slab's thickness limits, inches: the effective one where the file gives
    /// it, else all of what is written.
    #[must_use]
    pub fn limited_in(&self) -> Option<f64> {
        let effective = self.anchor.effective_embedment.map(|d| d.in_inches());
        effective.or(self.embedment_in)
    }

    /// The greatest effective embedment that counts in a slab so thick, inches; none where the
    /// code does not limit it or product data stand for it.
    #[must_use]
    pub fn most_in(&self, thickness_in: f64) -> Option<f64> {
        let allowed = self.anchor.min_thickness;
        let covered = self.tip_in().zip(self.under_tip_in());
        // Product data stand for the rule in a slab that has what they ask, under the tip too.
        let by_data = allowed.is_some_and(|least| thickness_in >= least.in_inches())
            && covered.is_none_or(|(tip, under)| thickness_in - tip >= under);
        let limited = depth_is_limited(self.anchor.kind) && !by_data;
        limited.then(|| most_embedment_in(thickness_in))
    }

    /// What the cone is worked out with, in a slab so thick and strong.
    #[must_use]
    pub fn setting(&self, thickness_in: f64, fc_psi: f64) -> Option<Setting> {
        let hef = self.hef_in()?;
        let most = self.most_in(thickness_in).unwrap_or(f64::INFINITY);
        let hef_in = if hef > most { most } else { hef };
        let critical = self.anchor.critical_edge.map(|d| d.in_inches());
        Some(Setting {
            hef_in,
            placing: self.placing(),
            tested_kc: self.tested_kc(),
            cracked: self.cracked(),
            fc_psi,
            lambda_a: 1.0,
            critical_edge_in: critical.unwrap_or_else(|| critical_edge(self.anchor.kind, hef_in)),
        })
    }

    /// Area, tensile and yield strength of the steel, sq in and psi; none while one is missing.
    #[must_use]
    pub fn steel(&self) -> Option<(f64, f64, f64)> {
        let psi = |p: crate::units::Pressure| p.si() / PA_PER_PSI;
        Some((
            self.anchor.stress_area?.si() / M2_PER_SQ_IN,
            psi(self.anchor.tensile_strength?),
            psi(self.anchor.yield_strength?),
        ))
    }

    /// What is missing of the steel, in words.
    #[must_use]
    pub fn steel_missing(&self) -> Vec<&'static str> {
        let anchor = &self.anchor;
        [
            (anchor.stress_area.is_none(), "stress area"),
            (anchor.tensile_strength.is_none(), "tensile strength"),
            (anchor.yield_strength.is_none(), "yield strength"),
        ]
        .into_iter()
        .filter_map(|(missing, what)| missing.then_some(what))
        .collect()
    }

    /// The pull-out strength of the test report, lbf.
    #[must_use]
    pub fn reported_pull_out_lbf(&self) -> Option<f64> {
        self.anchor.pull_out.map(|n| n.si() / N_PER_POUND_FORCE)
    }
}
