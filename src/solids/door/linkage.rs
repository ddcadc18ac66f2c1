//! Where do the hinges of a sectional door stand on its tracks, at any point of travel?
//!
//! Panels are rigid: the hinges between them run on the track's middle line, one panel height
//! apart in a straight line. The bottom edge's place along the track follows the door's travel,
//! from the floor to where it is level with the top of the opening; every other hinge follows
//! from the one below it. All hinges only move forward along the track as the door opens: the
//! straight distance between two places grows when the upper one moves on and shrinks when the
//! lower one does (see [`Track::ahead_m`]).

use glam::DVec2;

use super::footing_m;
use super::track::Track;
use crate::bay::{Bay, SectionalDoor, TrackLayout};

/// More panels than any door has; a file that asks for more gets so many, each taller.
const MOST_PANELS: f64 = 200.0;

/// A sectional door's hinges and the tracks they run on.
///
/// - *Standard*: the curve starts at the top of the opening.
/// - *High lift*: it starts `extra` higher.
/// - *Vertical lift*: there is no curve.
/// - *Low headroom*: the level run's middle lies half a panel's thickness over the opening, so the
///   open door just clears it; no such door lies lower. Its curve starts a radius below that, and
///   the top edge runs on a track of its own that stays upright as far as the shut door reaches,
///   then turns level at the same height. Where that second track can't guide the panel (the hinge
///   under the top panel stands on the curve when the door is shut, or the radius is nearly a
///   panel's height) the top edge follows the main track, and the shut door leans in.
///
/// Panels that sum to more than the opening's height reach beyond it; on a standard track the top
/// of the shut door then leans in on the curve. That is nearer to the vehicle than a door with its
/// top panel cut down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Linkage {
    /// The track of the hinges.
    pub(super) track: Track,
    /// The track of the top edge.
    pub(super) top_track: Track,
    /// How many panels.
    pub(super) panels: usize,
    /// Straight distance between hinges.
    pub(super) panel_height_m: f64,
    /// Where the bottom edge stands with the door open, along the track.
    pub(super) open_m: f64,
}

/// One hinge (or edge): its place along its track and in the plane of `(y, z)`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Joint {
    /// Length along its track from the foot.
    pub(super) along_m: f64,
    /// Place, metres.
    pub(super) at: DVec2,
}

impl Linkage {
    pub(super) fn of(bay: &Bay, door: &SectionalDoor) -> Self {
        let opening_m = bay.garage.opening.height.m();
        let height_m = door.panel_height.m().max(opening_m / MOST_PANELS);
        let thickness_m = door.panel_thickness.m();
        // A part in 10^9 is rounding, not another panel.
        let panels = (opening_m / height_m - 1e-9).ceil().clamp(1.0, MOST_PANELS) as usize;
        // The shut door's middle plane is the track's: half the track's section from the wall, or
        // half the panel's thickness where that is more.
        let plane_m = 0.5 * door.track_section.m().max(thickness_m);
        let radius_m = door.track_radius.m();
        let foot = DVec2::new(plane_m, footing_m(bay));
        let plain = |upright_m, radius_m| Track {
            foot,
            upright_m,
            radius_m,
        };
        let linkage = |track, open_m| Self {
            track,
            top_track: track,
            panels,
            panel_height_m: height_m,
            open_m,
        };
        match door.layout {
            TrackLayout::Standard => linkage(plain(opening_m, radius_m), opening_m),
            TrackLayout::HighLift { extra } => {
                linkage(plain(opening_m + extra.m(), radius_m), opening_m)
            }
            TrackLayout::VerticalLift => linkage(plain(f64::INFINITY, 0.0), opening_m),
            TrackLayout::LowHeadroom => {
                let level_m = opening_m + 0.5 * thickness_m;
                let radius_m = radius_m.min(level_m);
                let track = plain(level_m - radius_m, radius_m);
                // The quarter circle passes the top of the opening where its sine is this.
                let sine = ((opening_m - track.upright_m) / radius_m).min(1.0);
                let open_m = if radius_m > 0.0 {
                    track.upright_m + radius_m * sine.asin()
                } else {
                    opening_m
                };
                let mut linkage = linkage(track, open_m);
                let shut_m = height_m * panels as f64;
                let top_radius_m = (level_m - shut_m).max(0.0);
                let hinge_upright = shut_m - height_m <= track.upright_m;
                // With this, the top edge has reached its level run by the time the hinge below
                // it is on the curve, so it always stands ahead of that hinge.
                let room_to_turn = radius_m.hypot(top_radius_m) < height_m;
                if hinge_upright && room_to_turn && top_radius_m < radius_m {
                    linkage.top_track = plain(level_m - top_radius_m, top_radius_m);
                }
                linkage
            }
        }
    }

    /// The hinge `above` the one at `along_m` on the main track, on that same track.
    pub(super) fn next_m(&self, along_m: f64) -> f64 {
        let at = self.track.point(along_m);
        self.track.ahead_m(at, along_m, self.panel_height_m)
    }

    /// The top edge, for a top panel whose lower hinge stands at `along_m` on the main track.
    pub(super) fn top_m(&self, along_m: f64) -> f64 {
        if self.top_track == self.track {
            return self.next_m(along_m);
        }
        let at = self.track.point(along_m);
        let inward_m = at.x - self.track.foot.x;
        // From where the top track is level with the hinge, or straight over it.
        let from_m = if along_m <= self.track.upright_m {
            along_m.min(self.top_track.upright_m)
        } else {
            self.top_track.level_from_m() + (inward_m - self.top_track.radius_m).max(0.0)
        };
        self.top_track.ahead_m(at, from_m, self.panel_height_m)
    }

    /// All hinges from the bottom edge to the top edge at a door travel from 0 (shut) to 1.
    pub(super) fn joints(&self, fraction: f64) -> Vec<Joint> {
        let mut along_m = self.open_m * fraction;
        let mut joints = Vec::with_capacity(self.panels + 1);
        for _ in 0..self.panels {
            joints.push(Joint {
                along_m,
                at: self.track.point(along_m),
            });
            along_m = if joints.len() == self.panels {
                self.top_m(along_m)
            } else {
                self.next_m(along_m)
            };
        }
        joints.push(Joint {
            along_m,
            at: self.top_track.point(along_m),
        });
        joints
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::Door;
    use crate::solids::door::test_doors::sectional_layouts;

    /// How far a place lies off the drawn track, worked out from the place alone: the least of
    /// its distances from the upright run, the level run and, in its quarter, the circle.
    fn off_track(track: &Track, at: DVec2) -> f64 {
        let from_middle = at - track.foot - DVec2::new(track.radius_m, track.upright_m);
        let upright = (at.x - track.foot.x).hypot(from_middle.y.max(0.0));
        let level = (from_middle.y - track.radius_m).hypot(from_middle.x.min(0.0));
        let mut off = upright.min(level);
        if from_middle.x < 0.0 && from_middle.y > 0.0 {
            off = off.min((from_middle.length() - track.radius_m).abs());
        }
        off
    }

    #[test]
    fn hinges_lie_on_the_track_one_panel_apart() {
        for (name, bay) in sectional_layouts() {
            let Door::Sectional(door) = &bay.garage.door else {
                unreachable!("all are sectional")
            };
            let linkage = Linkage::of(&bay, door);
            let mut last: Vec<Joint> = Vec::new();
            for i in 0..=200 {
                let joints = linkage.joints(f64::from(i) / 200.0);
                assert_eq!(joints.len(), linkage.panels + 1);
                for pair in joints.windows(2) {
                    let length = pair[0].at.distance(pair[1].at);
                    assert!((length - door.panel_height.m()).abs() < 1e-9, "{name} {i}");
                }
                let (top, others) = joints.split_last().unwrap();
                assert!(off_track(&linkage.top_track, top.at) < 1e-9, "{name} {i}");
                for joint in others {
                    assert!(off_track(&linkage.track, joint.at) < 1e-9, "{name} {i}");
                }
                // Every hinge moves on, inward and up, as the door opens.
                for (before, now) in last.iter().zip(&joints) {
                    assert!(now.along_m > before.along_m, "{name} {i}");
                    assert!(now.at.cmpge(before.at - 1e-12).all(), "{name} {i}");
                }
                last = joints;
            }
        }
    }
}
