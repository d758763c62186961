//! Every text in English.

use super::Key;
use crate::physics::trace::{EventKind, Outcome, Thing};
use crate::practice::lessons::{Ending, Lesson};
use crate::quiz::questions::{AfterCase, ItemKind, Step};
use crate::rules::FindingCode;
use crate::scenario::{AnchorKind, ProblemCode};

pub fn text(key: Key) -> &'static str {
    match key {
        Key::AppName => "Shortfall",
        Key::Tagline => "What would your tie-in do? Find out here, on a screen.",
        Key::Caution => {
            "This is practice. It does not replace approved training and is no certificate. On a real site the makers’ instructions, the local rules and a competent person come first. Every result holds only under the assumptions shown."
        }
        Key::SkipToScene => "Skip to the scene",
        Key::Language => "Language",
        Key::Units => "Units",
        Key::UnitsMetric => "metres, kN",
        Key::UnitsFeet => "feet, pounds",
        Key::PlaceLabel => "Whose rules",
        Key::Theme => "Colours",
        Key::ThemeAuto => "as the device",
        Key::ThemeLight => "light",
        Key::ThemeDark => "dark",
        Key::Lettering => "Text size",
        Key::LetteringPage => "normal",
        Key::LetteringRoom => "for a projector",
        Key::Options => "Rules, units",
        Key::SetUpHeading => "The set-up, from the anchor down",
        Key::SceneHeading => "The scene",
        Key::SceneRegion => "Drawing of the house in section",
        Key::StateHeading => "The scene in words",
        Key::PartAnchor => "Anchor",
        Key::PartLifeline => "Lifeline",
        Key::PartGrab | Key::PartGrabOntario => "Rope grab",
        Key::PartLanyard => "Lanyard",
        Key::PartHarness => "Harness and worker",
        Key::PartStance => "Where the worker stands",
        Key::PartLadder => "Ladder",
        Key::PartHouse => "House and ground",
        Key::AnchorKindLabel => "Tied to",
        Key::AnchorPlace => "Distance from the ridge, down this slope",
        Key::RopeLength => "Length",
        Key::RopeModulus => "Stiffness (force for 100 % stretch)",
        Key::EndKnot => "At its lower end",
        Key::EndKnotYes => "knot",
        Key::EndKnotNo => "nothing",
        Key::GrabHeight => "Height above the D-ring",
        Key::GrabArrow => "Arrow points",
        Key::ArrowUp => "up, to the anchor",
        Key::ArrowDown => "down",
        Key::GrabBolt => "Bolt",
        Key::BoltTight => "tight",
        Key::BoltLoose => "loose",
        Key::GrabLatch => "Latch",
        Key::LatchClosed => "closed",
        Key::LatchOpen => "open",
        Key::LanyardLength => "Length",
        Key::AbsorberLabel => "Energy absorber",
        Key::AbsorberYes => "in the lanyard",
        Key::AbsorberNo => "none",
        Key::DeployForce => "Tears at",
        Key::MaxExtension => "Tears out at most",
        Key::HarnessFitLabel => "Straps",
        Key::FitSnug => "snug",
        Key::FitLoose => "loose",
        Key::Mass => "Mass with clothes and tools",
        Key::Stature => "Stature",
        Key::StanceLabel => "Stands",
        Key::StanceLadder => "on the ladder",
        Key::StanceRoof => "on the roof",
        Key::StandingHeight => "Feet above the ground",
        Key::FromEave => "Feet from the eave, up the slope",
        Key::LadderFoot => "Foot out from under the support",
        Key::LadderLength => "Length",
        Key::EaveHeight => "Eave above the ground",
        Key::RoofPitch => "Roof slope",
        Key::HalfSpan => "Wall to ridge",
        Key::Overhang => "Overhang",
        Key::BelowLabel => "Below",
        Key::BelowGround => "bare ground",
        Key::BelowObstacle => "a deck",
        Key::ObstacleHeight => "Deck’s height",
        Key::ObstacleDistance => "Deck’s distance from the wall",
        Key::ObstacleWidth => "Deck’s width",
        Key::More => "More: {name}",
        Key::Less => "Less: {name}",
        Key::MoreChoices => "Finer choices",
        Key::Undo => "Undo",
        Key::Redo => "Redo",
        Key::StartOver => "Start over",
        Key::RangeHint => "{min} to {max}",
        Key::PredictHeading => "The worker slips now. What happens?",
        Key::PredictHint => "Say first, then see. A wrong guess teaches as much as a right one.",
        Key::PredictFirst => "Choose an answer first.",
        Key::EngineMissing => {
            "The engine that computes the fall did not answer, twice. Nothing is lost: play again, with a network if you have one."
        }
        Key::TryAgain => "Try again",
        Key::LockAndPlay => "Lock it in and play",
        Key::Locked => "Your answer is locked: {answer}",
        Key::Computing => "Working the fall out…",
        Key::Skip => "Skip to the result",
        Key::ProblemsHeading => "This set-up cannot be built:",
        Key::NotGraded => {
            "Not graded: this run failed its own energy check (off by {value}). Its numbers are not shown. Change something and play again."
        }
        Key::PlayAgain => "Watch again",
        Key::Pause => "Pause",
        Key::Resume => "Go on",
        Key::SlowPlay => "at 1/8 speed",
        Key::TruePlay => "at true speed",
        Key::PrevEvent => "Earlier event",
        Key::NextEvent => "Later event",
        Key::Scrub => "Time in the fall",
        Key::StepBack => "One step back",
        Key::StepOn => "One step on",
        Key::PlayerRegion => "Watch the fall",
        Key::ResultHeading => "What happened",
        Key::YouPredicted => "You said: {said}. It turned out: {real}.",
        Key::PredictedRight => "You saw it coming.",
        Key::PredictedWrong => "Not what you said; look at why.",
        Key::ScoreLine => "{score} of 100",
        Key::Passes => "No critical finding.",
        Key::DoesNotPass => "This set-up does not pass.",
        Key::FindingsHeading => "What to know about this set-up",
        Key::WhatToChange => "What to change:",
        Key::SeverityCritical => "critical",
        Key::SeverityMajor => "change it",
        Key::SeverityMinor => "better changed",
        Key::SeverityNote => "to know",
        Key::SeverityGood => "as it should be",
        Key::Assumed => "assumed figure",
        Key::FromMemory => "from memory, not read in the source",
        Key::CheckedOn => "read in the text, {date}",
        Key::SourceLine => "{document}, {clause}",
        Key::ChangeOne => "Change one thing and play again: this fall stays as a dashed outline.",
        Key::GhostNote => "Dashed: the fall before",
        Key::VerdictStopped => {
            "Stopped in the air: {value} on the body, meets the {limit} limit under these assumptions."
        }
        Key::VerdictStoppedOver => {
            "Stopped in the air, but {value} on the body does not meet the {limit} limit."
        }
        Key::VerdictOnRoof => {
            "Stopped on the roof: {value} on the body, meets the {limit} limit under these assumptions."
        }
        Key::VerdictNoForce => {
            "Stopped in the air with {value} on the body; this place sets no force limit here."
        }
        Key::VerdictGroundShort => "Comes down to the ground at {value}: {missing} more room was needed.",
        Key::VerdictGround => "Comes down to the ground at {value}: nothing on the rope stopped the fall.",
        Key::VerdictObstacleShort => "Comes down on the deck at {value}: {missing} more room was needed.",
        Key::VerdictObstacle => "Comes down on the deck at {value}: nothing on the rope stopped the fall.",
        Key::VerdictLetGo => "Comes off the rope: nothing holds the worker any more.",
        Key::VerdictLetGoGround => "Comes off the rope and strikes what is below at {value}.",
        Key::VerdictAnchor => "The anchor gives way at {value} (assumed): nothing holds the rope any more.",
        Key::VerdictAnchorGround => "The anchor gives way. The worker strikes what is below at {value}.",
        Key::VerdictFreeFall => {
            "Stopped in the air, but {value} of free fall does not meet the {limit} limit."
        }
        Key::PlotTitleUnder => "{value} at most, under the {limit} limit",
        Key::PlotTitleOver => "{value} at most, over the {limit} limit",
        Key::PlotTitleNone => "{value} at most on the body",
        Key::PlotAxisForce => "Force on the body ({unit})",
        Key::PlotAxisTime => "Time after the slip (s)",
        Key::PlotLimit => "limit {limit}, {place}",
        Key::PlotPeak => "peak {value}",
        Key::PlotRegion => "Force on the body against time",
        Key::DimFreeFall => "free fall {value}",
        Key::DimClearance => "room left {value}",
        Key::DimStanding => "feet at {value}",
        Key::DimMissing => "room missing {value}",
        Key::LabelDeck => "deck",
        Key::LabelAnchor => "anchor",
        Key::LabelGrab => "grab",
        Key::ScaleBar => "{value}",
        Key::StateStanding => "The worker stands on the ladder, feet {height} above the ground.",
        Key::StateRoof => {
            "The worker stands on the roof, {distance} up the slope from the eave; the eave is {height} above the ground."
        }
        Key::StateGrab => "The rope grab is {offset} the D-ring, arrow {arrow}, bolt {bolt}, latch {latch}.",
        Key::StateRope => {
            "The lifeline is {length} of {kind}; at its end: {end}. The lanyard is {lanyard} long, energy absorber: {absorber}."
        }
        Key::StateAnchor => "Anchor: {kind}.",
        Key::StateBelowGround => "Below is bare ground.",
        Key::StateBelowObstacle => "Below is a deck {height} high, {distance} from the wall.",
        Key::StateAfter => "In the last fall: {events}.",
        Key::Above => "{value} above",
        Key::Below => "{value} below",
        Key::Level => "level with",
        Key::Storyboard => "Five moments of the fall",
        Key::StillOf => "{event}, {time}",
        Key::KeyHelp => {
            "With the drawing in focus: space plays and pauses, arrow keys step, Page Up and Page Down go from event to event."
        }
        Key::VersionLine => {
            "Version {app}, physics {physics}, rules {rules}. Energy off by {residual} in this run."
        }
        Key::ModelNote => {
            "A worker of nine linked bodies falls in the plane of the drawing, on a line of rope, grab, lanyard, absorber and harness. Left out: sideways swing, rope weight, wind, hands that ward off a blow; the speed of a blow against house or ladder is that of trunk and thighs, because a head and shins without muscles whip. A ladder that is not tied moves when it does not hold or is struck."
        }
        Key::Faster => "Speed",
        Key::SaveFile => "Save the set-up as a file",
        Key::OpenFile => "Open a set-up",
        Key::CopyLink => "Copy a link to this set-up",
        Key::LinkCopied => "Link copied.",
        Key::FileBad => "Not opened; nothing has changed. {reason}",
        Key::Kept => "This set-up is kept on this device.",
        Key::NotKept => {
            "This device keeps nothing (storage is off or full): save the set-up as a file before you close the page."
        }
        Key::Anchor(AnchorKind::RidgePlateInFraming) => "ridge plate in the framing",
        Key::Anchor(AnchorKind::RidgePlateInSheathing) => "ridge plate in the sheathing only",
        Key::Anchor(AnchorKind::ChimneySling) => "sling round the chimney",
        Key::Anchor(AnchorKind::VentPipe) => "vent pipe",
        Key::Anchor(AnchorKind::Gutter) => "gutter",
        Key::Anchor(AnchorKind::RatedEye) => "rated anchor eye",
        Key::Problem(ProblemCode::NotFinite) => "{field}: not a number.",
        Key::Problem(ProblemCode::OutOfRange) => "{field}: outside {min} to {max}.",
        Key::Problem(ProblemCode::SchemaNewer) => "This set-up comes from a newer version.",
        Key::Problem(ProblemCode::PlaceUnknown) => "There are no rules here for this place.",
        Key::Problem(ProblemCode::LadderTooShort) => {
            "The ladder’s foot is out further than the ladder is long."
        }
        Key::Problem(ProblemCode::StandsAboveLadder) => {
            "The feet would be above the ladder’s usable part or above the eave."
        }
        Key::Problem(ProblemCode::LadderInObstacle) => {
            "The ladder would pass through the deck: move its foot out, or the deck."
        }
        Key::Problem(ProblemCode::WorkerInHouse) => {
            "The worker would be inside the wall or the roof: move the ladder’s foot out."
        }
        Key::Problem(ProblemCode::StandsOffRoof) => "The feet would be past the ridge.",
        Key::Problem(ProblemCode::AnchorOffRoof) => "The anchor would be off the roof.",
        Key::Problem(ProblemCode::AnchorBelowWorker) => {
            "The anchor would be beside or below the worker: put it further up."
        }
        Key::Problem(ProblemCode::GrabOutOfReach) => {
            "The lanyard does not reach from the D-ring to the grab: move the grab closer or take a longer lanyard."
        }
        Key::Problem(ProblemCode::LifelineTooShort) => {
            "The lifeline ends before the grab: take a longer one."
        }
        Key::Problem(ProblemCode::GrabPastAnchor) => "The grab would be at or past the anchor: lower it.",
        Key::Event(EventKind::Slip) => "slip",
        Key::Event(EventKind::OverEave) => "over the eave",
        Key::Event(EventKind::Taut) => "line taut",
        Key::Event(EventKind::GrabLocks) => "grab holds",
        Key::Event(EventKind::GrabRuns) => "grab slides on",
        Key::Event(EventKind::AbsorberOpens) => "absorber tears",
        Key::Event(EventKind::AbsorberSpent) => "absorber spent",
        Key::Event(EventKind::RopeEnd) => "knot at the end",
        Key::Event(EventKind::PeakForce) => "largest force",
        Key::Event(EventKind::Lowest) => "lowest point",
        Key::Event(EventKind::StrikesWall) => "strikes the wall",
        Key::Event(EventKind::StrikesLadder) => "strikes the ladder",
        Key::Event(EventKind::StrikesRoof) => "strikes the roof",
        Key::Event(EventKind::StrikesObstacle) => "strikes the deck",
        Key::Event(EventKind::StrikesGround) => "strikes the ground",
        Key::Event(EventKind::AnchorFails) => "anchor gives way",
        Key::Event(EventKind::OffRope) => "off the rope",
        Key::Event(EventKind::End) => "the end",
        Key::Thing(Thing::Ground) => "the ground",
        Key::Thing(Thing::Obstacle) => "the deck",
        Key::Thing(Thing::Wall) => "the wall",
        Key::Thing(Thing::Roof) => "the roof",
        Key::Thing(Thing::Ladder) => "the ladder",
        Key::Outcome(Outcome::Stopped) => "stops in time",
        Key::Outcome(Outcome::Strikes) => "hits something below",
        Key::Outcome(Outcome::LetGo) => "comes off the rope or the anchor",
        Key::Title(FindingCode::StrikesGround) => "Comes down to the ground",
        Key::Title(FindingCode::StrikesObstacle) => "Comes down on the deck",
        Key::Title(FindingCode::OffRope) => "Comes off the rope",
        Key::Title(FindingCode::AnchorGaveWay) => "The anchor gives way",
        Key::Title(FindingCode::PeakForce) => "Force on the body",
        Key::Title(FindingCode::FreeFall) => "Free fall",
        Key::Title(FindingCode::ForceOrFreeFall) => "One of two limits is enough here",
        Key::Title(FindingCode::StoppingDistance) => "Stopping distance",
        Key::Title(FindingCode::AbsorberSpent) => "Absorber spent",
        Key::Title(FindingCode::NoAbsorber) => "No energy absorber",
        Key::Title(FindingCode::GrabReversed) => "Grab upside down",
        Key::Title(FindingCode::LatchOpen) => "Latch open",
        Key::Title(FindingCode::BoltLoose) => "Bolt loose",
        Key::Title(FindingCode::GrabLow) => "Grab below the D-ring",
        Key::Title(FindingCode::HarnessLoose) => "Harness loose",
        Key::Title(FindingCode::AnchorCapacity) => "What the anchor bears",
        Key::Title(FindingCode::AnchorBasis) => "Anchor: two kinds of load",
        Key::Title(FindingCode::LadderAngle) => "Ladder’s foot",
        Key::Title(FindingCode::ClearanceMargin) => "Room left below",
        Key::Title(FindingCode::HardSwing) => "A blow on the way",
        Key::Title(FindingCode::TriggerHeight) => "Is protection required here?",
        Key::Says(FindingCode::StrikesGround) => "The worker reaches the ground at {value}.",
        Key::Says(FindingCode::StrikesObstacle) => "The worker lands on the deck at {value}.",
        Key::Says(FindingCode::OffRope) => "The rope left the grab. Nothing holds the worker.",
        Key::Says(FindingCode::AnchorGaveWay) => {
            "The pull was more than such an anchor can be counted on to hold: {value}."
        }
        Key::Says(FindingCode::PeakForce) => "{value} does not meet the {limit} limit.",
        Key::Says(FindingCode::FreeFall) => "{value} does not meet the {limit} limit.",
        Key::Says(FindingCode::ForceOrFreeFall) => {
            "This place asks for the force limit or the free-fall limit; the one shown decided."
        }
        Key::Says(FindingCode::StoppingDistance) => {
            "{value} to stop, without the rope’s stretch, does not meet the {limit} limit."
        }
        Key::Says(FindingCode::AbsorberSpent) => {
            "It tore to its end, {value}. After that nothing limits the force."
        }
        Key::Says(FindingCode::NoAbsorber) => "Only the stretch of the rope softened the stop.",
        Key::Says(FindingCode::GrabReversed) => {
            "With its arrow down the grab cannot lock; it runs along the rope. Since 2004, a grab in Canada must be made so that it cannot go on upside down, unless it works either way (CSA Z259.2.1, by a provincial bulletin)."
        }
        Key::Says(FindingCode::LatchOpen) => "With the latch open the rope can leave the grab.",
        Key::Says(FindingCode::BoltLoose) => "With the bolt loose the grab slides before it holds.",
        Key::Says(FindingCode::GrabLow) => {
            "The grab is {value} below the D-ring: add that to the lanyard’s whole length. That is the free fall to count with."
        }
        Key::Says(FindingCode::HarnessLoose) => {
            "The D-ring rides up before the harness holds. A slack leg or chest strap can hurt badly, or let a person fall out."
        }
        Key::Says(FindingCode::AnchorCapacity) => {
            "Breaking load {value} (one in twenty breaks at that or less): does not meet the {limit} asked for."
        }
        Key::Says(FindingCode::AnchorBasis) => {
            "This place asks what the anchor carries day in, day out ({limit}); {value} is where it breaks. They are different things: ask."
        }
        Key::Says(FindingCode::LadderAngle) => {
            "At {value} from the ground the foot is not where it should be: out by {range} of the length."
        }
        Key::Says(FindingCode::ClearanceMargin) => "{value} left is less than the {limit} kept in reserve.",
        Key::Says(FindingCode::HardSwing) => {
            "On the way the body swings in and strikes the house or the ladder at {value}: that can injure."
        }
        Key::Says(FindingCode::TriggerHeight) => {
            "The rules here start at {limit}. A fall from {value} can still kill."
        }
        Key::SaysMet(FindingCode::PeakForce) => "{value} meets the {limit} limit.",
        Key::SaysMet(FindingCode::FreeFall) => "{value} meets the {limit} limit.",
        Key::SaysMet(FindingCode::StoppingDistance) => {
            "{value} to stop, without the rope’s stretch, meets the {limit} limit."
        }
        Key::SaysMet(FindingCode::AnchorCapacity) => {
            "Breaking load {value} (one in twenty breaks at that or less): meets the {limit} asked for."
        }
        Key::SaysMet(FindingCode::LadderAngle) => {
            "At {value} from the ground the foot is out by {range} of the length, measured to two parts in a hundred."
        }
        Key::SaysMet(FindingCode::ClearanceMargin) => "{value} left, more than the {limit} kept in reserve.",
        Key::SaysMet(FindingCode::TriggerHeight) => {
            "At {value} this place requires protection against falls (from {limit}). Ask first whether a guardrail or travel restraint would do."
        }
        Key::Change(FindingCode::StrikesGround) => {
            "Raise the grab; use a shorter link that its maker allows. Where there is still too little room, fall arrest is the wrong method: stop and ask."
        }
        Key::Change(FindingCode::StrikesObstacle) => {
            "Raise the grab, or work where nothing stands below. Otherwise stop and ask."
        }
        Key::Change(FindingCode::OffRope) => {
            "Close the latch, point the arrow to the anchor, use a line with the maker’s stop at its end."
        }
        Key::Change(FindingCode::AnchorGaveWay) => {
            "Tie to the framing or to a rated anchor that a competent person has looked at."
        }
        Key::Change(FindingCode::PeakForce) => {
            "Raise the grab to shorten the free fall, or use an absorber that tears at a lower force."
        }
        Key::Change(FindingCode::FreeFall) => "Raise the grab; use a shorter link that its maker allows.",
        Key::Change(FindingCode::ForceOrFreeFall) => "Nothing: this explains the rule.",
        Key::Change(FindingCode::StoppingDistance) => "Shorten the free fall: raise the grab.",
        Key::Change(FindingCode::AbsorberSpent) => {
            "Shorten the free fall, or use a whole absorber meant for this mass."
        }
        Key::Change(FindingCode::NoAbsorber) => "Use a lanyard with an energy absorber.",
        Key::Change(FindingCode::GrabReversed) => {
            "Take it off and put it back with the arrow towards the anchor."
        }
        Key::Change(FindingCode::LatchOpen) => "Close it, then pull down on the grab to test.",
        Key::Change(FindingCode::BoltLoose) => {
            "Tighten it, and look again every 15 to 20 minutes (common practice)."
        }
        Key::Change(FindingCode::GrabLow) => {
            "Move it up to the D-ring’s height or higher, each time you climb."
        }
        Key::Change(FindingCode::HarnessLoose) => {
            "Tighten the straps until a flat hand just fits (common practice)."
        }
        Key::Change(FindingCode::AnchorCapacity) => {
            "Ask a competent person for an anchor that meets the rule."
        }
        Key::Change(FindingCode::AnchorBasis) => "Have a competent person judge the anchor.",
        Key::Change(FindingCode::LadderAngle) => "Set the foot out by {range} of the length to the support.",
        Key::Change(FindingCode::ClearanceMargin) => {
            "Raise the grab; use a shorter link that its maker allows."
        }
        Key::Change(FindingCode::HardSwing) => {
            "Less slack, closer in, and the anchor straight above make the blow smaller."
        }
        Key::Change(FindingCode::TriggerHeight) => "Think of the other methods first.",
        Key::Event(EventKind::RopeBreaks) => "rope breaks",
        Key::Event(EventKind::LinkBreaks) => "connection lets go",
        Key::Anchor(AnchorKind::RoofVent) => "roof vent or duct",
        Key::Anchor(AnchorKind::AntennaMast) => "aerial mast",
        Key::Problem(ProblemCode::NotADate) => "{field}: write the day as 2026-05-01.",
        Key::Problem(ProblemCode::SlingAboveChimney) => "The sling would be above the chimney’s top.",
        Key::Title(FindingCode::RopeBroke) => "The rope broke",
        Key::Title(FindingCode::LinkBroke) => "The connection let go",
        Key::Title(FindingCode::AnchorUnsuitable) => "Not an anchor",
        Key::Title(FindingCode::AnchorAllowable) => "What the anchor may bear",
        Key::Title(FindingCode::AnchorFactor) => "Anchor by safety factor",
        Key::Title(FindingCode::AnchorChooser) => "Who chose the anchor",
        Key::Title(FindingCode::FastenersMissed) => "Fasteners that missed the framing",
        Key::Title(FindingCode::MortarWeak) => "Weak mortar",
        Key::Title(FindingCode::HigherMethod) => "Another method comes first",
        Key::Title(FindingCode::ArrestTooLow) => "Too low for fall arrest",
        Key::Title(FindingCode::ClearanceSum) => "Clearance by the usual sum",
        Key::Title(FindingCode::RescueMissing) => "The rescue",
        Key::Title(FindingCode::TrainingExpired) => "Training has run out",
        Key::Title(FindingCode::GearFrayed) => "Lifeline worn through",
        Key::Title(FindingCode::GearKnot) => "Knot along the lifeline",
        Key::Title(FindingCode::GearGate) => "Gate does not lock",
        Key::Title(FindingCode::GearRust) => "Connector pitted by rust",
        Key::Title(FindingCode::GearPack) => "Absorber already torn",
        Key::Title(FindingCode::GearWebbing) => "Harness webbing cut",
        Key::Title(FindingCode::GearLabel) => "No label to read",
        Key::Title(FindingCode::AbsorberExtension) => "Tear-out of the absorber",
        Key::Title(FindingCode::ArrestDistance) => "From lock to stop",
        Key::Says(FindingCode::RopeBroke) => "A rope in this state bears {value}; the fall pulled harder.",
        Key::Says(FindingCode::LinkBroke) => {
            "Lanyard, connector and harness in this state bear {value}; the fall pulled harder."
        }
        Key::Says(FindingCode::AnchorUnsuitable) => {
            "Vents, ducts, pipes, gutters and masts are no anchors. About {value} is all that is assumed here."
        }
        Key::Says(FindingCode::AnchorAllowable) => {
            "It may carry {value} day in, day out (within allowable stress). That does not meet the {limit} working load asked for."
        }
        Key::Says(FindingCode::AnchorFactor) => {
            "It breaks at {value} times the most this system can pull ({other}: the absorber’s label, or this fall if it pulled more). That is enough only where a qualified person designed it."
        }
        Key::Says(FindingCode::AnchorChooser) => "The worker chose and set the anchor alone.",
        Key::Says(FindingCode::FastenersMissed) => {
            "{value} fasteners hold in the sheathing alone, which lets go at a fraction of the load."
        }
        Key::Says(FindingCode::MortarWeak) => "With soft joints only the bricks above the sling resist.",
        Key::Says(FindingCode::HigherMethod) => {
            "On this job a method that ranks before fall arrest can be used. A fall that cannot happen needs no arrest."
        }
        Key::Says(FindingCode::ArrestTooLow) => {
            "Even with the grab as high as it goes, the usual sum (all at its worst) needs {value} under the feet; there is {other}. This gear cannot be counted on here."
        }
        Key::Says(FindingCode::ClearanceSum) => {
            "The usual sum needs {value} under the feet; there is {other}."
        }
        Key::Says(FindingCode::RescueMissing) => {
            "A worker who hangs must be brought down in minutes. The rescue is not planned the way this place asks."
        }
        Key::Says(FindingCode::TrainingExpired) => "The card is valid for {limit} years and has run out.",
        Key::Says(FindingCode::GearFrayed) => "The sheath is worn through and the core shows.",
        Key::Says(FindingCode::GearKnot) => {
            "A knot can cost half the rope’s strength, and the grab cannot pass it."
        }
        Key::Says(FindingCode::GearGate) => {
            "The gate closes but does not lock; pressed the wrong way it opens."
        }
        Key::Says(FindingCode::GearRust) => "Rust has eaten pits into the metal.",
        Key::Says(FindingCode::GearPack) => {
            "The pack tore in an earlier fall and was pushed back into its cover: nothing is left to tear."
        }
        Key::Says(FindingCode::GearWebbing) => "A strap is cut in from its edge.",
        Key::Says(FindingCode::GearLabel) => {
            "Without its label nobody can tell how old it is or what it was made for."
        }
        Key::Says(FindingCode::AbsorberExtension) => {
            "{value} torn out does not meet the {limit} of the type test."
        }
        Key::Says(FindingCode::ArrestDistance) => {
            "{value} from lock to stop does not meet the {limit} of the type test."
        }
        Key::SaysMet(FindingCode::AnchorAllowable) => {
            "It may carry {value} day in, day out (within allowable stress). That meets the {limit} working load asked for."
        }
        Key::SaysMet(FindingCode::AnchorFactor) => {
            "It breaks at {value} times the most this system can pull ({other}): meets the factor of {limit}."
        }
        Key::SaysMet(FindingCode::ClearanceSum) => {
            "The usual sum needs {value} under the feet; there is {other}."
        }
        Key::SaysMet(FindingCode::AbsorberExtension) => {
            "{value} torn out meets the {limit} of the type test."
        }
        Key::SaysMet(FindingCode::ArrestDistance) => {
            "{value} from lock to stop meets the {limit} of the type test."
        }
        Key::Change(FindingCode::RopeBroke) => "Take the rope out of service before the climb.",
        Key::Change(FindingCode::LinkBroke) => {
            "Look over connector and webbing before the climb, and take what is faulty out of service."
        }
        Key::Change(FindingCode::AnchorUnsuitable) => {
            "Stop and ask for an anchor in the framing, or a rated one."
        }
        Key::Change(FindingCode::AnchorAllowable) => {
            "Stop and ask. The anchor’s maker says which fasteners, how many, and into what."
        }
        Key::Change(FindingCode::AnchorFactor) => {
            "Have a qualified person design it, or take an anchor of the full breaking load."
        }
        Key::Change(FindingCode::AnchorChooser) => "Have a competent person choose it and look at it.",
        Key::Change(FindingCode::FastenersMissed) => {
            "Pull each miss, seal the hole, and drive a new fastener into the rafter."
        }
        Key::Change(FindingCode::MortarWeak) => "Leave this chimney alone and ask for another anchor.",
        Key::Change(FindingCode::HigherMethod) => {
            "Use it: from the ground or a platform, then guardrail, then travel restraint; fall arrest comes after."
        }
        Key::Change(FindingCode::ArrestTooLow) => "Use another method here, and ask.",
        Key::Change(FindingCode::ClearanceSum) => {
            "Raise the grab, or use a shorter link that its maker allows; where it is still short, ask."
        }
        Key::Change(FindingCode::RescueMissing) => {
            "Write down who comes, with what, from where; read it to the crew before anybody climbs."
        }
        Key::Change(FindingCode::TrainingExpired) => "Take the refresher before working at height.",
        Key::Change(FindingCode::GearFrayed) => "Take it out of service.",
        Key::Change(FindingCode::GearKnot) => "Take the rope out of service and ask.",
        Key::Change(FindingCode::GearGate) => "Take it out of service.",
        Key::Change(FindingCode::GearRust) => "Take it out of service.",
        Key::Change(FindingCode::GearPack) => "Take the lanyard out of service: an absorber works once.",
        Key::Change(FindingCode::GearWebbing) => "Take the harness out of service.",
        Key::Change(FindingCode::GearLabel) => {
            "Take it out of service until somebody competent has said what it is."
        }
        Key::Change(FindingCode::AbsorberExtension) => "Shorten the free fall.",
        Key::Change(FindingCode::ArrestDistance) => "Shorten the free fall.",
        Key::StatedBreaking => "Breaking load stated by its maker",
        Key::ChimneyWidth => "Chimney’s width along the pull",
        Key::ChimneyHeight => "Chimney’s height above the roof",
        Key::SlingHeight => "Sling’s height above the roof",
        Key::ChimneyWeight => "Weight of a metre of chimney",
        Key::MortarLabel => "Mortar",
        Key::MortarSound => "hard and full",
        Key::MortarWeak => "soft, cracked or missing",
        Key::FastenersPerSide => "Fasteners on each side of the ridge",
        Key::FastenersMissed => "Of these, missed the framing",
        Key::FastenerKindLabel => "Fastener",
        Key::FastenerNail16d => "16d nail, 3½ in",
        Key::FastenerNail10d => "10d nail, 3 in",
        Key::FastenerNail20d => "20d nail, 4 in",
        Key::FastenerRing => "16d ring-shank nail",
        Key::FastenerScrew => "no. 10 wood screw, 3 in",
        Key::SpeciesLabel => "Rafters",
        Key::SpeciesSpf => "spruce-pine-fir",
        Key::SpeciesFir => "Douglas fir-larch",
        Key::SpeciesPine => "southern pine",
        Key::MoistureLabel => "Wood",
        Key::MoistureDry => "dry",
        Key::MoistureWet => "wet",
        Key::StrengthComputed => {
            "On average it breaks at {mean}; one in twenty breaks at {low} or less. The fall uses {low}."
        }
        Key::StrengthAllowable => "Allowable load by the wood code (NDS): {value}.",
        Key::StrengthNoAllowable => "No code gives an allowable load for it.",
        Key::StrengthStated => "Taken as stated: {low}.",
        Key::StrengthUnsuitable => "This is no anchor. About {low} is assumed.",
        Key::StrengthJudge => {
            "Counted from the fasteners alone. Truss or rafter, splits, rot, plate, spacing and edges are left out, so this is not settled: ask. Only a qualified person can judge a real anchor."
        }
        Key::StrengthDrawing => {
            "Section through the roof at the anchor: {hit} fasteners in the rafters, {miss} in the sheathing alone."
        }
        Key::StrengthHit => "holds",
        Key::StrengthMiss => "lets go",
        Key::PartGear => "Look over the gear",
        Key::GearHint => {
            "Look at each part as you would before a climb. Some of what lies in the shed is faulty."
        }
        Key::GearSeen => "{seen} of {all} looked over",
        Key::GearShed => "Take what lies in the shed",
        Key::GearNew => "Take new gear",
        Key::GearPass => "Fit for use",
        Key::GearReject => "Take it out of service",
        Key::GearPassed => "passed as fit",
        Key::GearRejected => "taken out of service and replaced",
        Key::GearYouPassed => "You passed this as fit for use.",
        Key::GearNotLooked => "You did not look at this part.",
        Key::PartRope => "Lifeline",
        Key::PartConnector => "Connector",
        Key::PartPack => "Absorber’s pack",
        Key::PartWebbing => "Harness webbing",
        Key::PartLabel => "Harness label",
        Key::PartArrow => "Grab: its arrow",
        Key::PartBolt => "Grab: its bolt",
        Key::PartLatch => "Grab: its latch",
        Key::PartNails => "Anchor: its fasteners",
        Key::LooksRopeSound => "Even and round all along; the sheath is clean and whole.",
        Key::LooksRopeFrayed => "Over a hand’s width the sheath is gone and white strands show.",
        Key::LooksRopeKnotted => "Two arm’s lengths down there is an overhand knot, pulled tight.",
        Key::LooksConnectorSound => "The gate snaps shut and its sleeve turns over it.",
        Key::LooksConnectorUnlocked => {
            "The gate snaps shut; the sleeve stays where it is. A thumb pushes the gate open."
        }
        Key::LooksConnectorCorroded => "Brown flakes of rust, and pits under them that catch a fingernail.",
        Key::LooksPackSound => "A flat packet, its cover closed and its stitches in rows.",
        Key::LooksPackDeployed => {
            "The cover is done up, but a torn tail of webbing with loose threads is folded into it."
        }
        Key::LooksWebbingSound => "Straps flat and supple, edges straight.",
        Key::LooksWebbingCut => "At the thigh there is a notch in the edge, as deep as a finger is wide.",
        Key::LooksLabelLegible => "Maker’s label sewn in; date and standard can be read.",
        Key::LooksLabelMissing => "Only a few threads where the label was.",
        Key::LooksArrowUp => "The arrow on its side points to the anchor.",
        Key::LooksArrowDown => "The arrow on its side points to the ground.",
        Key::LooksBoltTight => "The bolt does not turn by hand.",
        Key::LooksBoltLoose => "The bolt turns between two fingers.",
        Key::LooksLatchClosed => "The latch is down over the rope; nothing shows between.",
        Key::LooksLatchOpen => "Light shows between the latch and the body.",
        Key::LooksNailsHit => "Seen from below, every point is in a rafter.",
        Key::LooksNailsMissed => {
            "Seen from below, {value} points stick out of the sheathing beside the rafter."
        }
        Key::PartPlan => "Before anybody climbs",
        Key::OtherMethodLabel => "Is there another method for this job?",
        Key::OtherNone => "none was found",
        Key::OtherGuardrail => "guardrail",
        Key::OtherRestraint => "travel restraint",
        Key::OtherRestraintQuebec | Key::OtherRestraintOntario => "travel restraint",
        Key::OtherRestrict => "fall-restricting system (stops within 0.6 m); Ontario only",
        Key::RescueLabel => "Rescue plan",
        Key::RescueNone => "none",
        Key::RescueSpoken => "talked over",
        Key::RescueWritten => "in writing, read to the crew",
        Key::ChooserLabel => "Anchor chosen by",
        Key::ChooserWorker => "the worker alone",
        Key::ChooserCompetent => "a competent person",
        Key::ChooserQualified => "a qualified person (engineer)",
        Key::TrainedOn => "Training card dated",
        Key::WorkOn => "Day of the work",
        Key::SayOtherMethod => "I would use another method",
        Key::SayStopAndAsk => "I would stop and ask",
        Key::AdviceHeading => "You answered: {said}.",
        Key::AdviceCalled => "This set-up calls for it:",
        Key::AdviceNotCalled => "Nothing here made it necessary. Asking is still a good answer.",
        Key::AdviceFall => "Had the worker gone ahead, the slip would have ended like this:",
        Key::ChangesHeading => "What one change would do",
        Key::ChangesHint => "Each line is the same fall computed again with one thing changed.",
        Key::ChangesWaiting => "Computing…",
        Key::ChangesNone => "No single change from the list scores higher.",
        Key::ChangesBest => "The one change that helps most",
        Key::ChangesLine => "{change}: {before} to {after} points",
        Key::ChangesPass => "no critical finding",
        Key::ChangesFail => "still a critical finding",
        Key::ChangesMake => "Make this change",
        Key::ChArrow => "Turn the grab’s arrow to the anchor",
        Key::ChLatch => "Close the latch",
        Key::ChBolt => "Tighten the bolt",
        Key::ChGrabUp => "Put the grab as high as the lanyard reaches",
        Key::ChAbsorber => "Use a lanyard with an absorber",
        Key::ChLanyard => "Use a shorter link that the grab’s maker allows: 0.6 m (2 ft)",
        Key::SideUntold => {
            "The fall from here fails its own energy check and is not shown. The places beside it are."
        }
        Key::ChSlack => "Take the slack out of the lifeline",
        Key::ChPad => "Put a pad on the roof’s edge",
        Key::ChKnot => "Use a line with the maker’s stop at its end",
        Key::ChHarness => "Tighten the harness until it is snug",
        Key::ChFraming => "Fasten the anchor into the framing",
        Key::ChRated => "Use a rated anchor",
        Key::ChGear => "Change the faulty gear",
        Key::ChLadder => "Set the ladder’s foot at a quarter of its length",
        Key::ChRescue => "Write the rescue plan",
        Key::ChChooser => "Have a competent person choose the anchor",
        Key::WhyLabel => "Why",
        Key::WhyFreeFall => {
            "The worker fell until the line was tight. Lanyard {lanyard}, grab {offset} the D-ring: by length that makes {slack}. The rest comes from the grab dragging and the body swinging."
        }
        Key::WhyForceAbsorber => {
            "The absorber tore {length} at {force} and took that part of the blow; {left} of it is left."
        }
        Key::WhyForceWhole => {
            "The absorber tears at {force}. This fall stopped before that; the rope stretched {length}."
        }
        Key::WhyForceSpent => {
            "Once the absorber was torn to its end at {length}, the stop was as hard as the rope."
        }
        Key::WhyForceRope => {
            "With no absorber the energy went into the rope’s stretch, {length}: the shorter the rope, the harder the stop."
        }
        Key::WhyClearance => {
            "The D-ring dropped {fall} in all: free fall {free}, absorber {absorber}, grab {slip}, rope {rope}, harness {harness}; the rest, {rest}, is the body’s turning and swing."
        }
        Key::WhyAnchor => {
            "At the anchor {anchor}; the roof’s edge held back the rest of the {force} at the D-ring. The anchor is judged without that help."
        }
        Key::WhySlip => "The grab slid {slip} along the rope.",
        Key::MarginLine => "Margin: {value}",
        Key::MarginMissing => "Missing: {value}",
        Key::GearSummary => "rope, connector, pack, straps, label, grab",
        Key::ThumbsHeading => "Rules of thumb, beside the numbers",
        Key::ThumbsHint => {
            "Things crews say, in our own round figures. We found no source for them: common practice. Beside each: what the numbers or a published rule say."
        }
        Key::ThumbHolds => "agrees",
        Key::ThumbPartly => "agrees in part",
        Key::ThumbUnknown => "no figure to compare it with",
        Key::ThumbHarness => "A harness from 3 m (10 ft) up.",
        Key::ThumbHarnessTold => {
            "10 ft is {ten}. Ontario and Quebec require protection above {canada}, so there it is near. Construction in the United States requires it from {us}: there it is wrong."
        }
        Key::ThumbAnchor => "An anchor point is good for 9 kN (2,000 lb).",
        Key::ThumbAnchorTold => {
            "2,000 lbf is {load}. Ontario asks for a working load of {on} with an absorber. Quebec asks for a breaking load of {qc}, the United States for one of {us}. Working and breaking loads cannot be compared, so the figure means nothing until it says which it is. As a breaking load it is too little for Quebec and for the United States."
        }
        Key::ThumbForce => "55 kg falling 2.7 m hits with about 4 kN (120 lb, 9 ft, 900 lb).",
        Key::ThumbForceTold => {
            "Only for a stop of {stop}. Over 3.5 ft the steady force is {soft}; on a rope that stretches that far the peak is {peak}. The force is set by the length of the stop."
        }
        Key::ThumbAbsorber => "An absorber adds over a metre (4 ft).",
        Key::ThumbAbsorberTold => {
            "That is the longest it tears. Plan with it. 100 kg falling 1.8 m on one that tears at {low} takes {long}; 100 kg falling 0.6 m on one that tears at {high} takes {short}."
        }
        Key::ThumbBelow => "A grab a lanyard’s length below the D-ring: twice the lanyard.",
        Key::ThumbBelowTold => {
            "By geometry {free} of free fall on a 0.9 m lanyard. The grab’s slip and the harness add up to {more} before anything else stretches."
        }
        Key::ThumbFace => "A grab at face height or above: hardly any fall.",
        Key::ThumbFaceTold => {
            "At 0.3 m above the D-ring a 0.9 m lanyard still has {free} of slack; only a full lanyard’s length above is there none. Slip and harness add up to {more}. The saying leaves both out."
        }
        Key::ThumbNails => "Four nails or screws on each side of the ridge, into framing.",
        Key::ThumbNailsTold => {
            "In dry spruce on a 6 in 12 roof the nails break at {nails} (one in twenty at that or less) and the wood code allows {nails_allow}. The screws break at {screws} and are allowed {screws_allow}. Ontario asks for {on} within allowable stress. All missed, the nails hold {missed}. These figures leave out the truss, the plate and the splits, so this is not settled: ask."
        }
        Key::ThumbLook => "Look at bolt and latch every 15 to 20 minutes.",
        Key::ThumbLookTold => {
            "No figure says how fast they work loose. What it costs: a loose grab is taken to hold {loose}, a tight one {tight} (both assumed)."
        }
        Key::ThumbArrow => "The arrow points to the anchor.",
        Key::ThumbArrowTold => {
            "The other way round the grab only drags, with about {drag} (assumed); an 85 kg worker weighs {weight}."
        }
        Key::ThumbLow => "A point only a foot or two up on the roof, a vent or a duct is no anchor.",
        Key::ThumbLowTold => {
            "A vent pipe is taken to hold {vent} (assumed), less than the weight of a worker of 100 kg, {weight}; a stop pulls several times that."
        }
        Key::ThumbChimney => "A chimney must be sound before a rope goes round it.",
        Key::ThumbChimneyTold => {
            "An 18 in brick stack of 4 ft 4 in tips at {sound} with the sling a foot up. Raise the sling to 2 ft and it tips at {high}. Sound is not enough."
        }
        Key::ThumbHoles => "Seal the nail holes when the anchor comes off.",
        Key::ThumbHolesTold => {
            "A matter of the roof, not of the fall. A nail pulled and driven again in the same hole holds less; use a new spot in the rafter."
        }
        Key::SpreadHeading => "How sure is it?",
        Key::SpreadHint => {
            "Nobody knows the exact mass, rope, absorber, grab, edge or anchor. So the fall is run {all} times with values from the likely range."
        }
        Key::SpreadRun => "Run {all} such falls",
        Key::SpreadStop => "Stop here",
        Key::SpreadSo => "{done} of {all} falls",
        Key::SpreadStruck => {
            "Of {counted} such falls, {struck} come down on something below and {letgo} come off the rope or the anchor."
        }
        Key::SpreadRoom => {
            "Of the falls that stop, 19 in 20 have {low} of room left or more; half have more than {middle}."
        }
        Key::SpreadForce => {
            "In 19 of 20 falls the body feels {high} or less; in half of them, less than {middle}."
        }
        Key::SpreadMatters => "What matters most: {what}.",
        Key::SpreadMattersNone => "No single unknown decides it.",
        Key::SpreadUnsound => "{value} falls failed their own energy check and are left out.",
        Key::SpreadSeed => "Number of this draw (seed): {seed}. The same number gives the same falls.",
        Key::SpreadPlot => "Room left below, fall by fall: each bar is a share of the falls.",
        Key::SpreadBarStruck => "struck or let go",
        Key::UncMass => "the worker’s mass",
        Key::UncAbsorber => "the force at which the absorber tears",
        Key::UncRope => "the rope’s stretch",
        Key::UncGrab => "how soon the grab grips",
        Key::UncEdge => "friction over the roof’s edge",
        Key::UncGrip => "the force at which the grab slips",
        Key::UncSlip => "how fast the slip begins",
        Key::UncRoof => "friction of the body on the roof",
        Key::RopeSlack => "Slack above the grab",
        Key::RopeEdgeLabel => "At the roof’s edge it runs over",
        Key::EdgePadded => "an edge pad",
        Key::EdgeBare => "the bare edge",
        Key::UncAnchor => "the anchor’s strength",
        Key::SideHeading => "Along the wall",
        Key::SideHint => {
            "Move along the wall from the anchor and the rope runs at a slant. A slip then ends lower, and swings the worker back under the anchor."
        }
        Key::SideOffset => "Distance along the wall",
        Key::SideWords => {
            "At {offset} the rope slants by {lean}. The fall is {drop}, {extra} more than straight below the anchor. At its fastest, about under the anchor, the swing makes {speed}, as fast as after a drop of {height}."
        }
        Key::SideRoom => "Room left under the feet: {value}.",
        Key::SideMissing => "Under the feet {value} is missing.",
        Key::SideReach => {
            "Up to {reach} along the wall, at least {reserve} of room is left and the swing stays under {fast}."
        }
        Key::SideReachNone => {
            "Even straight below the anchor there is not {reserve} of room left with a swing under {fast}."
        }
        Key::SideLimit => {
            "This place allows {most} along the wall, or a slant of {lean}. Here the smaller of the two is {here}."
        }
        Key::SideModel => {
            "How it is computed: one weight at the D-ring, roof and wall laid out as one flat sheet, the rope free to slide along the edge. That gives the longest swing. Nothing breaks or gives way in this sum."
        }
        Key::SideRoof => {
            "Nothing to compute here: the D-ring is above the eave, or a run failed its own energy check."
        }
        Key::SideDrawing => {
            "Front view of the wall: the worker stands {offset} along from the anchor’s plumb line and ends under it, {drop} lower."
        }
        Key::WeatherLabel => "Weather",
        Key::WeatherDry => "dry",
        Key::WeatherWet => "wet",
        Key::WeatherFrozen => "wet, then frozen",
        Key::AbsorberClassLabel => "Class of the absorber",
        Key::ClassStated => "states its force",
        Key::ClassE4 => "E4 (4 kN)",
        Key::ClassE6 => "E6 (6 kN)",
        Key::LadderTiedLabel => "Top of the ladder",
        Key::LadderTiedYes => "tied",
        Key::LadderTiedNo => "not tied",
        Key::ReachOut => "Leaning out to the side",
        Key::WireLabel => "Power line nearby",
        Key::WireNo => "none",
        Key::WireYes => "overhead",
        Key::LineHeight => "Height of the lowest wire",
        Key::LineDistance => "Wire’s distance from the wall",
        Key::PartAround => "Weather and wires",
        Key::LabelWire => "power line",
        Key::Event(EventKind::LadderSlides) => "the ladder’s foot slides out",
        Key::Event(EventKind::LadderTips) => "the ladder goes over",
        Key::Title(FindingCode::LadderBarely) => "The ladder holds, barely",
        Key::Says(FindingCode::LadderBarely) => {
            "The foot needs a friction of {value}; this ground gives about {other}. Feet and ground differ by more than that from place to place."
        }
        Key::Change(FindingCode::LadderBarely) => {
            "Tie the top, or have the foot held; then set the foot at a quarter of the length."
        }
        Key::Title(FindingCode::LadderSlides) => "The ladder slides out",
        Key::Says(FindingCode::LadderSlides) => {
            "The foot needs a friction of {value}; this ground gives about {other}. The ladder’s slide is what begins the fall."
        }
        Key::Change(FindingCode::LadderSlides) => {
            "Set the foot at a quarter to a third of the length, on dry and firm ground, and tie the top."
        }
        Key::Title(FindingCode::LadderTips) => "The ladder tips back",
        Key::Says(FindingCode::LadderTips) => {
            "It stands so steep that the weight of worker and ladder is behind its foot."
        }
        Key::Change(FindingCode::LadderTips) => {
            "Bring the foot out to a quarter of the length, and tie the top."
        }
        Key::Title(FindingCode::LadderReach) => "Reaching too far",
        Key::Says(FindingCode::LadderReach) => {
            "Leaning out moves the weight of worker and ladder {value} from the ladder’s middle. That is outside the rail, which is at {other}."
        }
        Key::Change(FindingCode::LadderReach) => {
            "Climb down and move the ladder: keep the belt buckle between the rails (common practice)."
        }
        Key::Title(FindingCode::LadderUntied) => "Ladder not tied",
        Key::Says(FindingCode::LadderUntied) => "Nothing but friction keeps the ladder in place.",
        Key::Change(FindingCode::LadderUntied) => {
            "Tie the top; until then somebody holds the foot (common practice)."
        }
        Key::Title(FindingCode::PowerLine) => "DANGER: power line",
        Key::Says(FindingCode::PowerLine) => {
            "Standing here, ladder or hand can come within {value} of the wire; the approach distance is {limit}."
        }
        Key::SaysMet(FindingCode::PowerLine) => {
            "Standing here and turning about its foot, the ladder stays {value} from the wire, and so does a hand; the approach distance is {limit}. A pole adds its own length. Carry the ladder lying down."
        }
        Key::Change(FindingCode::PowerLine) => {
            "Stop and ask: have the line’s owner cut it off or move it, or use a shorter ladder elsewhere."
        }
        Key::Title(FindingCode::AbsorberMass) => "Absorber and body mass",
        Key::Says(FindingCode::AbsorberMass) => {
            "{value} is outside the masses this class of absorber is made for."
        }
        Key::Change(FindingCode::AbsorberMass) => "Use an absorber of the class made for this mass.",
        Key::SideHeld => {
            "With friction at the edge (0.3, assumed): {drop} down; the fastest swing, {speed}, is {at} from the anchor’s plumb line. The rope saws {dragged} along the edge."
        }
        Key::SideStays => "The worker stays on the roof.",
        Key::SideThing => "Something in the way (corner, downspout, dormer, chimney), from the anchor’s line",
        Key::SideThingHit => "The swing meets it at {speed}, like a drop from {height}.",
        Key::SideThingMiss => "The swing does not get there.",
        Key::MapHeading => "Where there is room",
        Key::MapHint => "The same gear at other heights. Pick a place on the map and load it.",
        Key::MapByGrab => "Grab height and standing height",
        Key::MapByOffset => "Distance along the wall and standing height",
        Key::MapLadderOnly => "Drawn for a worker on a ladder.",
        Key::MapCell => "{name} {across}, standing at {up}: {says}",
        Key::MapLoad => "Load this set-up",
        Key::MapGoing => "{runs} whole falls so far; the map gets finer.",
        Key::MapTrust => {
            "Drawn from {runs} whole falls. Between them a quick sum fills in; where it was checked, it was off by {off} at most."
        }
        Key::MapImpossible => "cannot be built",
        Key::MapUnknown => "not shown: the quick sum is off here",
        Key::MapMissing => "comes down on what is below",
        Key::MapShort => "room, but under the {reserve} reserve",
        Key::MapEnough => "the reserve or more",
        Key::MapOne => "1 m (3.3 ft) or more",
        Key::MapTwo => "2 m (6.6 ft) or more",
        Key::SideHeldShort => {
            "With friction at the edge (0.3, assumed): {drop} down, without a swing. The rope saws {dragged} along the edge."
        }
        Key::NavBench => "Set-up",
        Key::NavQuiz => "Quiz",
        Key::NavCrew => "Crew",
        Key::ItemName(ItemKind::Ends) => "How the fall ends",
        Key::ItemName(ItemKind::Higher) => "Which stops higher",
        Key::ItemName(ItemKind::PutGrab) => "Placing the grab",
        Key::ItemName(ItemKind::Fault) => "Looking over the gear",
        Key::ItemName(ItemKind::Steps) => "Order of the steps",
        Key::ItemName(ItemKind::PickAnchor) => "Choosing the anchor",
        Key::ItemName(ItemKind::Room) => "Room to stop",
        Key::ItemName(ItemKind::Along) => "Along the wall",
        Key::ItemName(ItemKind::Method) => "The right method",
        Key::ItemName(ItemKind::After) => "After the stop",
        Key::ItemName(ItemKind::Footing) => "The ladder’s footing",
        Key::ItemName(ItemKind::Wire) => "Power lines",
        Key::Stem(ItemKind::Ends) => "The worker slips here. How does it end?",
        Key::Stem(ItemKind::Higher) => {
            "Two set-ups, alike but for one thing. In which one does the worker end up higher off the ground?"
        }
        Key::Stem(ItemKind::PutGrab) => {
            "Put the grab at a height where the free fall stays at or under {limit}."
        }
        Key::Stem(ItemKind::Fault) => "You look over the gear. Which part must not be used as it is?",
        Key::Stem(ItemKind::Steps) => "Put these steps in order, the first on top.",
        Key::Stem(ItemKind::PickAnchor) => "Three places to tie to. Which one is an anchor for this job?",
        Key::Stem(ItemKind::Room) => "The worker slips here. Is there room to stop?",
        Key::Stem(ItemKind::Along) => {
            "How far along the wall from the anchor’s line may one work? Take the furthest at which {reserve} is left below and the swing stays under {fast}."
        }
        Key::Stem(ItemKind::Method) => "Before anybody climbs: what now?",
        Key::Stem(ItemKind::After) => "What now?",
        Key::Stem(ItemKind::Footing) => {
            "Nobody has tied this ladder. How does it stand with the worker on it?"
        }
        Key::Stem(ItemKind::Wire) => "There is a power line beside this ladder. May it be used here?",
        Key::Step(Step::AskMethod) => "Ask whether another method would do",
        Key::Step(Step::WalkSite) => "Walk the site: wires, ground, what stands below",
        Key::Step(Step::PlanRescue) => "Settle the rescue, in writing",
        Key::Step(Step::LookOverGear) => "Look over every part of the gear",
        Key::Step(Step::PlaceLadder) => "Set the ladder’s foot and tie its top",
        Key::Step(Step::SetAnchor) => "Set the anchor as its maker says, into the framing",
        Key::Step(Step::HangLifeline) => "Hang the lifeline and check the stop at its end",
        Key::Step(Step::PutOnHarness) => "Put the harness on and tighten it, on the ground",
        Key::Step(Step::ClampGrab) => "Clamp the grab on the rope, arrow to the anchor",
        Key::Step(Step::ClipLanyard) => "Clip the lanyard to the D-ring",
        Key::Step(Step::TugTest) => "Pull down on the grab to test it",
        Key::Step(Step::BeginWork) => "Begin to work, moving the grab up as you climb",
        Key::AfterStem(AfterCase::HangsAwake) => {
            "The fall is stopped. The worker hangs in the harness and talks to you."
        }
        Key::AfterStem(AfterCase::HangsStill) => {
            "The fall is stopped. The worker hangs in the harness and does not move."
        }
        Key::AfterStem(AfterCase::NoPlan) => {
            "The gear is ready. Nobody has settled how a worker who hangs would be brought down."
        }
        Key::AfterStem(AfterCase::DownAndFine) => {
            "After ten minutes in the harness the worker is on the ground and says that nothing hurts."
        }
        Key::AfterStem(AfterCase::GearAfter) => {
            "The harness, lanyard, grab, rope and anchor that caught the fall look fine."
        }
        Key::AfterStem(AfterCase::WhyItHappened) => "Everybody is well again. The wall is not finished.",
        Key::AfterChoice(AfterCase::HangsAwake, 0) => {
            "Start the planned rescue at once, call the emergency number, have the worker keep the legs moving."
        }
        Key::AfterChoice(AfterCase::HangsAwake, 1) => {
            "Call the emergency number and wait: hanging in a harness does no harm."
        }
        Key::AfterChoice(AfterCase::HangsAwake, 2) => "Two of you pull the worker up by the rope.",
        Key::AfterChoice(AfterCase::HangsStill, 0) => {
            "Call for help, bring the worker down by the plan at once, then first aid, airway first."
        }
        Key::AfterChoice(AfterCase::HangsStill, 1) => "Climb out to the worker as you are: seconds count.",
        Key::AfterChoice(AfterCase::HangsStill, 2) => "Touch nothing until the emergency services are there.",
        Key::AfterChoice(AfterCase::NoPlan, 0) => {
            "Nobody climbs until the rescue is settled and the crew knows it."
        }
        Key::AfterChoice(AfterCase::NoPlan, 1) => "Go ahead: the emergency number is the plan.",
        Key::AfterChoice(AfterCase::NoPlan, 2) => "Go ahead with the most experienced worker.",
        Key::AfterChoice(AfterCase::DownAndFine, 0) => {
            "Medical help all the same, and somebody stays until it comes."
        }
        Key::AfterChoice(AfterCase::DownAndFine, 1) => "A rest in the shade, then back to work.",
        Key::AfterChoice(AfterCase::DownAndFine, 2) => "Send the worker home for the day.",
        Key::AfterChoice(AfterCase::GearAfter, 0) => {
            "Take all of it out of service and tag it, the anchor with its fasteners too; a competent person or the maker judges."
        }
        Key::AfterChoice(AfterCase::GearAfter, 1) => "Use it again: it has just proved itself.",
        Key::AfterChoice(AfterCase::GearAfter, 2) => "Change the absorber and go on with the rest.",
        Key::AfterChoice(AfterCase::WhyItHappened, 0) => {
            "Stop, report, find out why, and teach again before work goes on."
        }
        Key::AfterChoice(AfterCase::WhyItHappened, 1) => {
            "Finish the wall, then talk about it in the evening."
        }
        Key::AfterChoice(AfterCase::WhyItHappened, 2) => "Tell the worker to be more careful.",
        Key::AfterWhy(AfterCase::HangsAwake, 1) => {
            "When somebody hangs still, blood pools in the legs within minutes. The crew’s own rescue starts at once; the emergency services come on top."
        }
        Key::AfterWhy(AfterCase::HangsAwake, 2) => {
            "Hauling by hand fails and puts two more people at the edge. The plan says who does what, with which gear."
        }
        Key::AfterWhy(AfterCase::HangsStill, 1) => {
            "A second fall makes two to rescue. Rescuers are tied in too."
        }
        Key::AfterWhy(AfterCase::HangsStill, 2) => {
            "For someone who hangs without moving, every minute counts."
        }
        Key::AfterWhy(AfterCase::NoPlan, 1) => {
            "Help from outside may be half an hour away. Someone who hangs does not have that long."
        }
        Key::AfterWhy(AfterCase::NoPlan, 2) => "Experience does not bring anybody down from a rope.",
        Key::AfterWhy(AfterCase::DownAndFine, 1) => "What hanging and a sudden stop do can show hours later.",
        Key::AfterWhy(AfterCase::DownAndFine, 2) => {
            "If the worker is alone at home, nobody sees what shows later."
        }
        Key::AfterWhy(AfterCase::GearAfter, 1) => "What a fall does to fibres and metal cannot be seen.",
        Key::AfterWhy(AfterCase::GearAfter, 2) => {
            "Rope, grab, connectors, harness and anchor took the same force as the absorber."
        }
        Key::AfterWhy(AfterCase::WhyItHappened, 1) => {
            "What led to this fall can lead to the next one before the evening."
        }
        Key::AfterWhy(AfterCase::WhyItHappened, 2) => {
            "Being told to be careful changes neither ladder, anchor nor grab."
        }
        Key::AfterSource => {
            "OSHA bulletin SHIB 03-24-2004 on hanging in a harness (from memory); common practice"
        }
        Key::QSetUp => "Set-up {letter}",
        Key::QSame => "About the same",
        Key::QPart => "{part}: {look}",
        Key::QAllFit => "All three are fit to be used",
        Key::QRoomEnough => "Yes, with {reserve} or more to spare",
        Key::QRoomShort => "Just: less than {reserve} to spare",
        Key::QRoomNone => "No: the worker comes down on what is below",
        Key::QArrest => "Go ahead with fall arrest as it is set",
        Key::QOtherMethod => "Use another method",
        Key::QStopAndAsk => "Stop and ask",
        Key::QFootHolds => "It holds",
        Key::QFootSlides => "Its foot slides out",
        Key::QFootBack => "It tips back, away from the wall",
        Key::QFootSide => "It goes over to the side",
        Key::QWireKept => {
            "Yes: from here it keeps the distance, now that the owner has said what the wire carries"
        }
        Key::QWireAsk => "No: stop and ask the owner",
        Key::QWireDry => "Yes, if it is of dry wood or plastic",
        Key::WhyEndsStopped => {
            "A rope stops a fall only if every part of the line holds and there is room below. Watch this fall."
        }
        Key::WhyEndsStrikes => {
            "Add up free fall, stretch and tear: here the sum says otherwise. Watch this fall."
        }
        Key::WhyEndsLetGo => "Nothing on this line lets go in this fall. Holding once does not prove much.",
        Key::WhyHigherSame => "The one thing that differs makes one worker end up lower. See both fall.",
        Key::WhyHigherOther => {
            "It is the other way round: the worker who falls further before the line holds ends up lower."
        }
        Key::WhyHigherDiffer => {
            "What differs here matters for other reasons, not for how far this fall goes."
        }
        Key::WhyPutGrab => "At {height} the free fall is {value}. Every step up shortens it.",
        Key::WhyFaultMissed => "One of them is not fit: {part}.",
        Key::WhyFaultNone => "What you picked is as it should be; so are the others.",
        Key::WhyFaultOther => "What you picked is as it should be. The fault is elsewhere: {part}.",
        Key::WhySteps => "{share} of the pairs were in the right order. The right order: {steps}.",
        Key::WhyAnchorNone => "That was never made to bear a load.",
        Key::WhyAnchorWeak => "It holds something, but less than this place asks for.",
        Key::WhyRoom => "Count free fall, tear, stretch and swing, then what stands below. Watch this fall.",
        Key::WhyAlongFar => "From there the worker ends too low or swings too fast.",
        Key::WhyAlongNear => "That is within reach, but not the furthest of these.",
        Key::WhyMethodArrest => {
            "Fall arrest comes last among the methods, and something here speaks against going ahead: {because}."
        }
        Key::WhyMethodOther => "Nothing here offers another method that would come first.",
        Key::WhyMethodAsk => {
            "Nothing here is left to ask: the plan is written, the anchor was chosen by a competent person, there is room."
        }
        Key::WhyFooting => {
            "Its foot needs a friction of {needed}, and this ground gives about {has} (assumed)."
        }
        Key::WhyFootingBack => "It stands so steep that the weight of worker and ladder is behind its foot.",
        Key::WhyFootingSide => {
            "Leaning out moves the weight of worker and ladder {off} from the middle. That is past the rail, which is at {rail}."
        }
        Key::WhyWire => {
            "Turning about its foot, the ladder comes within {value} of the wire. The approach distance here is {limit}. Wood and plastic are no protection: damp and paint conduct."
        }
        Key::AfterChoice(..) | Key::AfterWhy(..) => "",
        Key::QFrom => "{value} or higher",
        Key::WhyMethodRank => {
            "A method that comes before fall arrest could be used here. That is the answer, rather than asking: {because}."
        }
        Key::QuizHeading => "Quiz",
        Key::QuizLead => {
            "Twelve questions, no time limit. What you missed last time is asked once more. The right answers come from the same engine as the falls."
        }
        Key::QuizHalves => "Begun and not finished",
        Key::QuizHalf => "{who}: {done} of {all} answered, begun on {day}",
        Key::QuizResume => "Go on",
        Key::QuizDrop => "Drop it",
        Key::QuizMode => "What for?",
        Key::QuizPractice => "Practice",
        Key::QuizAssessment => "Assessment",
        Key::QuizPracticeHint => {
            "You hear after each answer whether it is right, and why. Nothing is recorded."
        }
        Key::QuizAssessmentHint => "You hear at the end. It becomes a record that can be printed and filed.",
        Key::QuizWho => "Name or code",
        Key::QuizNameless => "A record needs a name or a code.",
        Key::QuizTrainer => "Trainer’s name",
        Key::QuizCut => "Pass mark",
        Key::QuizCutHint => {
            "Four in five unless you set another. Of twelve questions you may miss two, but none that could kill."
        }
        Key::QuizSeed => "Form number",
        Key::QuizSeedHint => "The same number gives the same questions to everyone.",
        Key::QuizPlace => "Rules of: {place}.",
        Key::QuizBegin => "Begin",
        Key::QuizNotCertificate => {
            "This is preparation beside approved training. It is no certificate of approved training."
        }
        Key::QuizProgress => "Question {n} of {all}",
        Key::QuizYourAnswer => "Your answer",
        Key::QuizLock => "Lock this answer",
        Key::QuizPickFirst => "Choose an answer first",
        Key::QuizOn => "Go on",
        Key::QuizLeave => "Leave: it waits here for you",
        Key::QuizUp => "Move up: {what}",
        Key::QuizDown => "Move down: {what}",
        Key::QuizRight => "Right",
        Key::QuizPartly => "Partly right",
        Key::QuizWrong => "Not right",
        Key::QuizCritical => "a miss that could kill",
        Key::QuizYours => "Your answer: {answer}",
        Key::QuizKey => "Right: {answer}",
        Key::QuizSee => "Watch this fall",
        Key::QuizResult => "How you did",
        Key::QuizPassed => "{points} of the points: passed (pass mark {cut}).",
        Key::QuizFailed => {
            "{points} of the points: not passed (pass mark {cut}). What you missed comes back as a new question."
        }
        Key::QuizFailedCritical => {
            "{points} of the points, and misses that could kill: {critical}. Not passed, whatever the points. What you missed comes back as a new question."
        }
        Key::QuizPracticeDone => "Practice is over. Nothing was recorded.",
        Key::QuizExport => "Keep the record",
        Key::QuizExportWhy => "Browsers can throw away what they keep. Save the file or print the page now.",
        Key::QuizAnswers => "The answers",
        Key::QuizAgain => "Another form",
        Key::WriteRecord => "Save this record",
        Key::Print => "Print",
        Key::SheetTitle => "Record of a quiz on fall arrest",
        Key::SheetFinished => "Finished",
        Key::SheetPoints => "Points",
        Key::SheetCritical => "Misses that could kill",
        Key::SheetResult => "Result",
        Key::SheetPassed => "passed",
        Key::SheetNotPassed => "not passed",
        Key::SheetVersions => "Versions",
        Key::SheetSign => "Trainer’s signature and date",
        Key::SheetChain => {
            "This number changes when the record is edited, but anybody who wants to can make a new one. It is no proof of who answered."
        }
        Key::NoteNotKept => {
            "This device does not keep what you make (private browsing, or its storage is full). Save a file before you leave."
        }
        Key::NoteOtherTab => "This form was answered further in another tab. It goes on from there.",
        Key::NoteClockBack => {
            "The device’s clock stood earlier than when this device ended the form before. The record says so."
        }
        Key::NoteCleared => "This device is cleared.",
        Key::NoteGone => "I have read it",
        Key::CrewHeading => "Crew and records",
        Key::CrewLead => "Kept on this device alone. Save files to move or keep them.",
        Key::CrewEmpty => "The list is empty. Paste names, or begin an assessment under a name.",
        Key::CrewNone => "no form yet",
        Key::CrewPassed => "passed on {day} with {points}",
        Key::CrewNotPassed => "not passed on {day}, {points}",
        Key::CrewOpen => "Open and check",
        Key::CrewRemove => "Take off the list",
        Key::CrewPaste => "Names, one on each line",
        Key::CrewAdd => "Add to the crew",
        Key::CrewCsv => "From a CSV file",
        Key::CrewMid => "Middle of the season (a re-check is due then)",
        Key::CrewAnalysis => "What the crew has not understood",
        Key::CrewAnalysisHint => {
            "Lowest first. ‘Tells apart’ near 0 or below: people who know the rest do no better on this one. Look at the question, or teach it again."
        }
        Key::ColKind => "Kind",
        Key::ColAnswered => "Answered",
        Key::ColRight => "Right",
        Key::ColApart => "Tells apart",
        Key::CrewFiles => "Files",
        Key::CrewFilesHint => "Opening a file adds what is new and changes nothing that is here.",
        Key::WriteArchive => "Save all records",
        Key::WriteCsv => "For a spreadsheet (CSV)",
        Key::WriteXapi => "xAPI statements",
        Key::CrewImport => "Open a file of records",
        Key::ImportDone => {
            "{fresh} kept, {held} were here already, {edited} left out because they were edited."
        }
        Key::RefusedTooLarge => "Not opened: the file is over 64 MB. Nothing has changed.",
        Key::RefusedBroken => "Not opened: the file is broken or cut off. Nothing has changed.",
        Key::RefusedForeign => "Not opened: this is not a file of records. Nothing has changed.",
        Key::RefusedNewer => "Not opened: the file comes from a newer version. Nothing has changed.",
        Key::DoubtNone => {
            "It fits its own seal. Its form was made again from its number, and the answers fit that form. The seal has no secret: anybody who wants to can make a new one."
        }
        Key::DoubtEdited => "It does not fit its own seal: it was edited after it was sealed.",
        Key::DoubtVersion => {
            "It fits its own seal, but another version made it: its form cannot be made again here."
        }
        Key::DoubtReplay => {
            "It fits its own seal. But when its form is made again, its answers or marks do not fit."
        }
        Key::DueNothing => "nothing more due",
        Key::DueFirst => "a first form that passes",
        Key::DueRecheck => "re-check of day {days}",
        Key::DueMid => "mid-season re-check",
        Key::DueNow => "Due: {what} {day}",
        Key::DueLater => "Next: {what}, from {day}",
        Key::ClearHeading => "Clear this device",
        Key::ClearHint => "Deletes records, crew, forms begun, settings and set-up. Save the files first.",
        Key::ClearDevice => "Clear this device",
        Key::ClearSure => "Yes, delete everything",
        Key::ClearNot => "No, keep it",
        Key::RoomsComing => "One moment, this part is being loaded…",
        Key::RoomsMissing => {
            "This part could not be loaded. It is tried again as soon as there is a network; after that it works without one."
        }
        Key::GroundSlope => "Ground falls away from the wall at",
        Key::StateGroundFalls => "The ground falls away from the wall at {slope}.",
        Key::StateNotClipped => "The lanyard is not clipped to the D-ring.",
        Key::Event(EventKind::NotClipped) => "not clipped in",
        Key::Title(FindingCode::NotClipped) => "Not clipped in",
        Key::Says(FindingCode::NotClipped) => {
            "The lanyard was not clipped to the D-ring. Nothing holds the worker, whatever else is right."
        }
        Key::Change(FindingCode::NotClipped) => {
            "Clip the lanyard to the dorsal D-ring, and see the gate close, before leaving the ground."
        }
        Key::Lesson(Lesson::AlongTheWall) => "Moving along the wall",
        Key::Principle(Lesson::AlongTheWall) => {
            "A rope at a slant acts as a pendulum: the fall ends under the anchor, lower and moving sideways. Move the anchor, or come down, before the work is too far from it."
        }
        Key::PrincipleSource(Lesson::AlongTheWall) => {
            "Closed form of a pendulum: drop L (1 − cos a), speed √(2 g × drop)."
        }
        Key::Lesson(Lesson::GrabBolt) => "Bolt tight or loose",
        Key::Principle(Lesson::GrabBolt) => {
            "A loose bolt makes the grab a brake that slips. The stop is softer but longer, and there may be no room for it. Tighten the bolt as its maker says each time the grab goes on a rope, and look again through the day."
        }
        Key::PrincipleSource(Lesson::GrabBolt) => "Common practice; what a loose bolt holds is assumed.",
        Key::Lesson(Lesson::AnchorChimney) => "Round a chimney",
        Key::Principle(Lesson::AnchorChimney) => {
            "Weight holds bricks and old mortar down. It does not hold them against a pull from the side. A sling round a chimney is only as good as a qualified person says it is."
        }
        Key::PrincipleSource(Lesson::AnchorChimney) => {
            "Statics of a block on its joint; O. Reg. 213/91 s. 26.7 asks what a fixed support can bear (checked as for the limits)."
        }
        Key::FrontLegend => {
            "Seen from the front. Dotted: the path of the D-ring. Dashed: passing under the anchor. Thick: where the rope saws along the eave."
        }
        Key::NavLabel => "Views",
        Key::WhyMethodOtherAsk => {
            "No other method comes first here. Something is still open that you cannot decide: {because}."
        }
        Key::NavLessons => "Lessons",
        Key::LessonsHeading => "Lessons",
        Key::LessonsLead => {
            "Short lessons, one idea each. Two set-ups, one thing different: say in which one the worker is better off, then see both fall."
        }
        Key::LessonDone => "done",
        Key::LessonAsk => "One thing is different. In which one is the worker better off?",
        Key::LessonLock => "Lock it and see both fall",
        Key::LessonRight => "You said {said}. That is what happened.",
        Key::LessonOther => "You said {said}. What happened: {came}.",
        Key::LessonPrinciple => "What it shows",
        Key::LessonNext => "Next lesson",
        Key::LessonTry => "Try {letter} yourself",
        Key::LessonPlay => "Play both, four times slower",
        Key::LessonTime => "Time",
        Key::LessonGhost => "solid: A; dashed: B",
        Key::CmpEnd => "How it ends",
        Key::CmpForce => "Largest force on the body",
        Key::CmpFree => "Free fall",
        Key::CmpFall => "Whole drop",
        Key::CmpRoom => "Room left below",
        Key::CmpGap => "Difference",
        Key::Lesson(Lesson::GrabHeight) => "The grab, high or low",
        Key::Lesson(Lesson::GrabArrow) => "The arrow on the grab",
        Key::Lesson(Lesson::BoltAndLatch) => "The latch of the grab",
        Key::Lesson(Lesson::AbsorberOrNot) => "With and without an absorber",
        Key::Lesson(Lesson::AnchorGround) => "What the anchor is fixed to",
        Key::Lesson(Lesson::RoomToStop) => "Room to stop",
        Key::Lesson(Lesson::SlackOnTheRoof) => "Slack on the roof",
        Key::Principle(Lesson::GrabHeight) => {
            "Count free fall as the lanyard’s length, plus how far the grab hangs below the D-ring. Keep the grab at the D-ring or higher."
        }
        Key::Principle(Lesson::GrabArrow) => {
            "A grab locks in one direction only. With its arrow away from the anchor it runs along the rope like a bead on a string."
        }
        Key::Principle(Lesson::BoltAndLatch) => {
            "The latch is what keeps the rope in the grab when it is pulled hard. Close it, pull down to test, and look again every 15 to 20 minutes."
        }
        Key::Principle(Lesson::AbsorberOrNot) => {
            "A stop needs distance: the shorter it is, the harder it pulls. The absorber tears to give that distance; without it only the rope’s stretch does, and a short rope has little."
        }
        Key::Principle(Lesson::AnchorGround) => {
            "A nail holds by the length that is in solid wood. In the sheathing alone that is a finger’s breadth."
        }
        Key::Principle(Lesson::RoomToStop) => {
            "Free fall, tear-out, stretch and the body’s own length have to fit below. Near the ground no gear can make that room. Use another method there."
        }
        Key::Principle(Lesson::SlackOnTheRoof) => {
            "Slack rope turns into free fall. Pull it in and move the grab up before you start the work."
        }
        Key::PrincipleSource(Lesson::GrabHeight) => {
            "Free fall = lanyard less the grab’s height over the D-ring (geometry): the most there can be. Standing beside the rope uses some of it up; before it bites, a grab runs on a little (0.15 m here, assumed), and that counts too (29 CFR 1926.500(b))."
        }
        Key::PrincipleSource(Lesson::GrabArrow) => "Common practice; makers mark the direction on the grab.",
        Key::PrincipleSource(Lesson::BoltAndLatch) => "Common practice.",
        Key::PrincipleSource(Lesson::AbsorberOrNot) => {
            "Distance = weight × fall ÷ (force − weight); F = mg + √((mg)² + 2 mg M f) on a rope (Wexler 1950)."
        }
        Key::PrincipleSource(Lesson::AnchorGround) => {
            "NDS and USDA Wood Handbook: withdrawal grows with the length in wood."
        }
        Key::PrincipleSource(Lesson::RoomToStop) => {
            "OSHA Technical Manual, section V chapter 4; Ontario alert C8/0895 (1995) on arrest at 3 m."
        }
        Key::PrincipleSource(Lesson::SlackOnTheRoof) => "Common practice.",
        Key::EndingsHeading => "Get it wrong on purpose",
        Key::EndingsLead => {
            "Try set-ups until you have seen every way a fall can end. All of them are real results of the engine."
        }
        Key::EndingsCount => "{found} of {all} found",
        Key::EndingUnknown => "not seen yet",
        Key::Ending(Ending::Stopped) => "stopped in the air",
        Key::Ending(Ending::OnRoof) => "stopped on the roof",
        Key::Ending(Ending::Spent) => "the absorber torn to its end",
        Key::Ending(Ending::Swing) => "a hard blow against wall or ladder",
        Key::Ending(Ending::Ground) => "down to the ground",
        Key::Ending(Ending::Deck) => "down on a deck",
        Key::Ending(Ending::OffRope) => "the rope left the grab",
        Key::Ending(Ending::Anchor) => "the anchor gave way",
        Key::Ending(Ending::Rope) => "the rope broke",
        Key::Ending(Ending::Link) => "a connection let go",
        Key::Ending(Ending::Ladder) => "the ladder went first",
        Key::Title(FindingCode::RopeSlack) => "Slack above the grab",
        Key::Says(FindingCode::RopeSlack) => {
            "There are {value} of slack rope between the anchor and the grab: all of it is free fall before the line even begins to hold."
        }
        Key::Change(FindingCode::RopeSlack) => {
            "Pull the rope through the grab until it is straight to the anchor, and again after each move up."
        }
        Key::Title(FindingCode::EdgeBare) => "A bare edge under the rope",
        Key::Says(FindingCode::EdgeBare) => {
            "The lifeline is loaded over the bare edge of the roof: drip edge, fascia metal and grit can cut it. The sum counts the edge as friction only."
        }
        Key::Change(FindingCode::EdgeBare) => {
            "Put an edge pad or a roller where the rope passes the eave, and look at that length of rope each time."
        }
        Key::Title(FindingCode::RopeEndOpen) => "Nothing at the rope’s end",
        Key::Says(FindingCode::RopeEndOpen) => "A grab that slides would run off the rope’s end.",
        Key::Change(FindingCode::RopeEndOpen) => {
            "Use a line with the maker’s stop at its end, long enough to reach the ground. Some places forbid knots."
        }
        Key::Title(FindingCode::RopeEndKnot) => "A knot instead of a stop",
        Key::Says(FindingCode::RopeEndKnot) => "The rope’s end has a knot where its maker’s stop belongs.",
        Key::Change(FindingCode::RopeEndKnot) => {
            "Use a line with the maker’s stop at its end, and look up whether knots are allowed where you work."
        }
        Key::Title(FindingCode::RopeShort) => "The rope does not reach the ground",
        Key::Says(FindingCode::RopeShort) => "The lifeline ends {value} above what lies below.",
        Key::Change(FindingCode::RopeShort) => {
            "Use a line long enough to reach the ground, or a level nobody can fall from."
        }
        Key::Title(FindingCode::GrabLink) => "Lanyard too long for a grab",
        Key::Says(FindingCode::GrabLink) => {
            "{value} between grab and D-ring is more than the {limit} a rope grab is made to carry."
        }
        Key::Change(FindingCode::GrabLink) => {
            "Use a shorter link that the grab’s maker allows. Never knot or wrap a long one."
        }
        Key::Title(FindingCode::LadderNotRequired) => "Is protection required here?",
        Key::Says(FindingCode::LadderNotRequired) => {
            "Not required on a portable ladder here; wise all the same."
        }
        Key::Change(FindingCode::LadderNotRequired) => "Ask your employer: many ask for more than the rule.",
        Key::Title(FindingCode::LadderConditions) => "On a portable ladder",
        Key::Says(FindingCode::LadderConditions) => {
            "This place has conditions of its own for work from a portable ladder: three points of contact, light work, short time, or a free hand. Ask which count here."
        }
        Key::Change(FindingCode::LadderConditions) => "Ask a competent person which of the conditions apply.",
        Key::Title(FindingCode::AnchorOpen) => "Anchor: not settled, ask",
        Key::Says(FindingCode::AnchorOpen) => {
            "By what is counted here it comes to {value}; this place asks for {limit}. Left out: truss or rafter, splits, rot, plate, spacing, edges of the wood; in a chimney cracks, flue and flashing. Ask."
        }
        Key::Change(FindingCode::AnchorOpen) => {
            "Stop and ask. The anchor’s maker says which fasteners, how many, and into what."
        }
        Key::Title(FindingCode::AnchorEngineered) => "Anchor: rated and designed",
        Key::Says(FindingCode::AnchorEngineered) => {
            "A rated anchor, set to a qualified person’s drawing for this load."
        }
        Key::Change(FindingCode::AnchorEngineered) => "Look at its tag and drawing before each use.",
        Key::Title(FindingCode::WireUnknown) => "DANGER: a wire, and nobody has asked",
        Key::Says(FindingCode::WireUnknown) => {
            "Nobody knows what distance is enough: the owner has not said what the wire carries. From here ladder or hand come within {value} of it."
        }
        Key::Change(FindingCode::WireUnknown) => {
            "Stop. Ask the line’s owner what it carries and what distance to keep. Until then nothing goes up."
        }
        Key::Title(FindingCode::WireCarried) => "WARNING: carry it lying down",
        Key::Says(FindingCode::WireCarried) => {
            "Carried upright under the wire, this ladder comes within {value} of it."
        }
        Key::Change(FindingCode::WireCarried) => "Carry it lying down, two people, away from the wire.",
        Key::Title(FindingCode::ServiceDrop) => "WARNING: the service drop",
        Key::Says(FindingCode::ServiceDrop) => {
            "The wire to the eave is live, under 750 V. Its cover is for the weather, not for touching. From here ladder or hand come within {value} of it."
        }
        Key::Change(FindingCode::ServiceDrop) => {
            "Touch nothing near it. Ask the utility to cover it or cut it off before you work there."
        }
        Key::VerdictTooLow => {
            "Too low for fall arrest: the usual sum needs {value} under the feet, there is {other}. This one run stopped; the next may not."
        }
        Key::Quarter => "a quarter",
        Key::QuarterToThird => "a quarter to a third",
        Key::CheckedGuide => "read in an official guide, {date}",
        Key::CheckedSecondary => "read in somebody else’s account, {date}",
        Key::EndStop => "maker’s stop",
        Key::RopeKindLabel => "Rope",
        Key::RopePolyBlend => "16 mm polyester blend",
        Key::RopeKernmantle => "11 mm kernmantle (EN 1891 A)",
        Key::RopePolyester => "12 mm polyester",
        Key::RopeNylon => "12 mm nylon",
        Key::RopeStated => "another, by its stiffness",
        Key::VoltageLabel => "What does its owner say it carries?",
        Key::VoltUnknown => "nobody has asked",
        Key::VoltService => "service drop, under 750 V",
        Key::Volt50 => "750 V to 50 kV",
        Key::Volt75 => "to 75 kV",
        Key::Volt150 => "to 150 kV",
        Key::Volt250 => "to 250 kV",
        Key::VoltMore => "more",
        Key::OtherGround => "from the ground, with a pole",
        Key::OtherPlatform => "lift, or scaffold with guardrails",
        Key::Step(Step::FirstUp) => {
            "Protect the first one up another way while the anchor is set: a lift, a scaffold, or a line over the ridge tied on the far side"
        }
        Key::WhyWireUnknown => {
            "Nobody has asked what the wire carries, so nobody knows what distance is enough. The first answer is always: stop and ask."
        }
        Key::Title(FindingCode::GrabLinkAsk) => "Is the lanyard short enough?",
        Key::Says(FindingCode::GrabLinkAsk) => {
            "By one account the Canadian standard allows at most 0.76 m (30 in) between a rope grab and the D-ring. What yours allows is in its maker’s instructions."
        }
        Key::Change(FindingCode::GrabLinkAsk) => {
            "Look it up in the maker’s instructions for the grab, or ask."
        }
        Key::SheetLaw => "A record of training is asked for by",
        Key::ChClip => "Clip the lanyard in",
        Key::ChTie => "Tie the ladder at the top",
        Key::ChInLine => "Stand between the rails",
        Key::StrengthJudgeStack => {
            "Counted from the stack’s weight and mortar alone; cracks inside, flue and flashing are left out: open, ask. Only a qualified person can judge a real chimney."
        }
        Key::StrengthJudgeAny => "Only a qualified person can judge a real anchor.",
        Key::PlotTitleLetGo => {
            "The line pulled {value} at most before it let go; what comes after is not in this graph"
        }
        Key::PlotTitleStrikes => "Up to the blow below, the line pulled {value} at most",
        // A code that needs no second sentence says the first.
        Key::SaysMet(code) => text(Key::Says(code)),
    }
}
