//! Questions about the job: the method, what to do after a stop, the ladder's foot, the wire.

use super::*;

/// What the rules call for in place of going ahead; none where both are called for, which is no
/// question.
pub fn called_for(s: &SetUp, t: &Trace) -> Option<Choice> {
    let findings = judge(s, t, place(&s.place)?);
    let has = |a| findings.iter().any(|f| advice(f) == Some(a));
    match (has(Advice::OtherMethod), has(Advice::StopAndAsk)) {
        (true, false) => Some(Choice::Instead(Advice::OtherMethod)),
        (false, true) => Some(Choice::Instead(Advice::StopAndAsk)),
        (false, false) => Some(Choice::Arrest),
        (true, true) => None,
    }
}

pub(super) fn method(seed: u64, place_id: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place_id)?;
    // Hardware that every place takes, with an engineer behind it, so that the anchor is not the question.
    s.anchor.kind = AnchorKind::RatedEye;
    s.anchor.stated_breaking_n = 27_000.0;
    s.plan.anchor_by = AnchorChosenBy::QualifiedPerson;
    let mut level = Level::Plain;
    match pick.u32(..7) {
        0 => s.plan.other_method = OtherMethod::Guardrail,
        1 => s.plan.other_method = OtherMethod::TravelRestraint,
        2 => {
            // So low that the sum has no room.
            s.stance = Stance::Ladder { standing_height_m: between(pick, 0.8, 1.4, 0.2) };
            level = Level::Middle;
        }
        3 => s.plan.rescue = RescuePlan::NoPlan,
        4 => {
            s.plan.anchor_by = AnchorChosenBy::Worker;
            level = Level::Close;
        }
        _ => level = Level::Middle,
    }
    let height_m = match s.stance {
        Stance::Ladder { standing_height_m } => standing_height_m,
        Stance::Roof { .. } => return None,
    };
    // Heights near the place's own trigger are not asked about.
    let triggers = [LimitKind::TriggerHeight, LimitKind::TriggerHeightLadder];
    for l in triggers.into_iter().filter_map(|w| place(place_id)?.limit(w)) {
        if (height_m / l.value - 1.0).abs() < LEAST_MARGIN_SHARE {
            return None;
        }
    }
    let set_up = s.set_up().ok()?;
    let t = sound(settled_trace(&set_up, LineParams::of(&s)))?;
    let right = called_for(&set_up, &t)?;
    if right == Choice::Arrest && t.outcome != Outcome::Stopped {
        return None;
    }
    let choices =
        vec![Choice::Arrest, Choice::Instead(Advice::OtherMethod), Choice::Instead(Advice::StopAndAsk)];
    let because = match right {
        Choice::Instead(a) => {
            let findings = judge(&set_up, &t, place(place_id)?);
            findings.iter().filter(|f| advice(f) == Some(a)).map(|f| f.code).collect()
        }
        _ => vec![],
    };
    Some(Item { because, ..one(ItemKind::Method, seed, level, vec![s], choices, right)? })
}

pub(super) fn after(seed: u64, pick: &mut Draw) -> Option<Item> {
    let case = AfterCase::ALL[pick.index(AfterCase::ALL.len())];
    let level = match case {
        AfterCase::HangsAwake | AfterCase::NoPlan | AfterCase::GearAfter => Level::Plain,
        AfterCase::HangsStill | AfterCase::WhyItHappened => Level::Middle,
        AfterCase::DownAndFine => Level::Close,
    };
    let choices = shuffled(pick, (0..3).map(|n| Choice::After(case, n)).collect());
    one(ItemKind::After, seed, level, vec![], choices, Choice::After(case, 0))
}

pub(super) fn footing(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place)?;
    s.ladder.tied = false;
    match pick.u32(..5) {
        0 => s.ladder.foot_distance_m = between(pick, 0.2, 0.5, 0.1),
        1 => {
            s.weather = Weather::Wet;
            s.ladder.foot_distance_m =
                (s.house.eave_height_m * between(pick, 0.5, 0.75, 0.05) * 10.0).round() / 10.0;
        }
        2 => s.weather = Weather::Frozen,
        3 => s.ladder.reach_out_m = between(pick, 0.3, 0.6, 0.05),
        _ => {}
    }
    s.ladder.length_m =
        (libm::hypot(s.house.eave_height_m, s.ladder.foot_distance_m) * 10.0).round() / 10.0 + 1.0;
    // Only the ladder is asked about: no rope has to reach anywhere.
    let g = Geometry::of(&s)?;
    let stand = ladder::stand(&s, &g)?;
    let friction = (stand.needed_friction / stand.has_friction - 1.0).abs();
    let reach = (stand.off_middle_m / ladder::HALF_WIDTH_M - 1.0).abs();
    // How far the weight stands in front of the foot, as a share of the foot's own distance.
    let back = match s.stance {
        Stance::Ladder { standing_height_m } => {
            let x_m = g.ladder.foot.x - g.ladder.x_at(standing_height_m);
            (x_m - crate::geometry::BODY_OFF_LADDER_M).abs() / crate::geometry::BODY_OFF_LADDER_M
        }
        Stance::Roof { .. } => return None,
    };
    let level = Level::of(friction.min(reach).min(back))?;
    let choices = [Footing::Holds, Footing::SlidesOut, Footing::TipsBack, Footing::TipsSideways];
    let choices = choices.map(Choice::Footing).to_vec();
    one(ItemKind::Footing, seed, level, vec![s], choices, Choice::Footing(stand.footing))
}

pub(super) fn wire(seed: u64, place_id: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place_id)?;
    let voltage = pick.one([Voltage::Unknown, Voltage::To50Kv, Voltage::To50Kv, Voltage::To150Kv]);
    s.power_line = Some(PowerLine {
        height_m: between(pick, 5.0, 9.0, 0.5),
        distance_m: between(pick, 4.0, 16.0, 0.5),
        voltage,
    });
    let g = Geometry::of(&s)?;
    let near_m = ladder::nearest_to_wire_m(&s, &g)?.min(ladder::hand_to_wire_m(&s, &g)?);
    // With the voltage unknown, or no figure of the place for it, there is one answer; and it is not one of
    // distance.
    let own = place(place_id)?.approach(voltage).filter(|_| voltage != Voltage::Unknown);
    let (right, level) = match own {
        None => (Choice::WireAsk, if near_m < 3.0 { Level::Plain } else { Level::Middle }),
        Some(l) => {
            let level = Level::of((near_m / l.value - 1.0).abs())?;
            (if near_m >= l.value { Choice::WireKept } else { Choice::WireAsk }, level)
        }
    };
    let choices = vec![Choice::WireKept, Choice::WireAsk, Choice::WireDryLadder];
    one(ItemKind::Wire, seed, level, vec![s], choices, right)
}
