//! Codes to sentences, in English and French; and numbers as a person reads them.
//!
//! Every text is a [`Key`]; both languages match on it, so a missing text does not compile. Texts
//! hold named places like `{value}` that [`fill`] fills; `tests/tidy.rs` checks that both
//! languages name the same ones. No verdict uses the word 'safe'.

pub mod ask;
mod en;
mod fr;
pub mod say;
pub mod words;

use crate::physics::trace::{EventKind, Outcome, Thing};
use crate::practice::lessons::{Ending, Lesson};
use crate::quiz::questions::{AfterCase, ItemKind, Step};
use crate::rules::FindingCode;
use crate::scenario::{AnchorKind, ProblemCode};
use crate::units::{Quantity, Rounding, Units, round_to};

/// The language of the screen. It does not set the place whose rules apply.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Lang {
    /// English.
    #[default]
    En,
    /// French.
    Fr,
}

impl Lang {
    /// Both.
    pub const ALL: [Lang; 2] = [Lang::En, Lang::Fr];

    /// Its BCP 47 tag.
    pub fn tag(self) -> &'static str {
        match self {
            Lang::En => "en",
            Lang::Fr => "fr",
        }
    }

    /// The text of a sentence held in both languages.
    pub fn of(self, b: &crate::rules::Bilingual) -> &str {
        match self {
            Lang::En => &b.en,
            Lang::Fr => &b.fr,
        }
    }
}

macro_rules! keys {
    ($($name:ident)*) => {
        /// Every text of the screen that stands alone.
        #[allow(missing_docs)]
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Key { $($name,)* Anchor(AnchorKind), Problem(ProblemCode), Event(EventKind),
            Thing(Thing), Outcome(Outcome), Title(FindingCode), Says(FindingCode),
            SaysMet(FindingCode), Change(FindingCode), ItemName(ItemKind), Stem(ItemKind), Step(Step),
            AfterStem(AfterCase), AfterChoice(AfterCase, u8), AfterWhy(AfterCase, u8),
            Lesson(Lesson), Principle(Lesson), PrincipleSource(Lesson), Ending(Ending) }
        impl Key {
            /// Every key without a code inside.
            pub const PLAIN: &'static [Key] = &[$(Key::$name,)*];
        }
    };
}

keys! {
    AppName Tagline Caution SkipToScene
    Language Units UnitsMetric UnitsFeet PlaceLabel Theme ThemeAuto ThemeLight ThemeDark Lettering
    LetteringPage LetteringRoom Options
    SetUpHeading SceneHeading SceneRegion StateHeading
    PartAnchor PartLifeline PartGrab PartLanyard PartHarness PartStance PartLadder PartHouse
    AnchorKindLabel AnchorPlace
    RopeLength RopeModulus EndKnot EndKnotYes EndKnotNo
    GrabHeight GrabArrow ArrowUp ArrowDown GrabBolt BoltTight BoltLoose GrabLatch LatchClosed LatchOpen
    LanyardLength AbsorberLabel AbsorberYes AbsorberNo DeployForce MaxExtension
    HarnessFitLabel FitSnug FitLoose Mass Stature
    StanceLabel StanceLadder StanceRoof StandingHeight FromEave
    LadderFoot LadderLength EaveHeight RoofPitch HalfSpan Overhang BelowLabel BelowGround BelowObstacle
    GroundSlope ObstacleHeight ObstacleDistance ObstacleWidth
    More Less MoreChoices Undo Redo StartOver RangeHint
    PredictHeading PredictHint PredictFirst EngineMissing TryAgain LockAndPlay Locked Computing Skip
    ProblemsHeading NotGraded
    PlayAgain Pause Resume SlowPlay TruePlay PrevEvent NextEvent Scrub StepBack StepOn PlayerRegion
    ResultHeading YouPredicted PredictedRight PredictedWrong ScoreLine Passes DoesNotPass
    FindingsHeading WhatToChange SeverityCritical SeverityMajor SeverityMinor SeverityNote SeverityGood
    Assumed FromMemory CheckedOn SourceLine ChangeOne GhostNote
    VerdictStopped VerdictStoppedOver VerdictOnRoof VerdictNoForce VerdictGroundShort VerdictGround
    VerdictObstacleShort VerdictObstacle VerdictLetGo VerdictLetGoGround VerdictAnchor VerdictAnchorGround
    VerdictFreeFall
    PlotTitleUnder PlotTitleOver PlotTitleNone PlotAxisForce PlotAxisTime PlotLimit PlotPeak PlotRegion
    DimFreeFall DimClearance DimStanding DimMissing LabelDeck LabelAnchor LabelGrab ScaleBar
    StateStanding StateRoof StateGrab StateRope StateAnchor StateBelowGround StateBelowObstacle StateAfter
    Above Below Level
    Storyboard StillOf KeyHelp VersionLine ModelNote Faster
    StatedBreaking ChimneyWidth ChimneyHeight SlingHeight ChimneyWeight MortarLabel MortarSound MortarWeak FastenersPerSide FastenersMissed FastenerKindLabel FastenerNail16d FastenerNail10d FastenerNail20d FastenerRing FastenerScrew SpeciesLabel SpeciesSpf SpeciesFir SpeciesPine MoistureLabel MoistureDry MoistureWet StrengthComputed StrengthAllowable StrengthNoAllowable StrengthStated StrengthUnsuitable StrengthJudge StrengthDrawing StrengthHit StrengthMiss PartGear GearHint GearSeen GearShed GearNew GearPass GearReject GearPassed GearRejected GearYouPassed GearNotLooked PartRope PartConnector PartPack PartWebbing PartLabel PartArrow PartBolt PartLatch PartNails LooksRopeSound LooksRopeFrayed LooksRopeKnotted LooksConnectorSound LooksConnectorUnlocked LooksConnectorCorroded LooksPackSound LooksPackDeployed LooksWebbingSound LooksWebbingCut LooksLabelLegible LooksLabelMissing LooksArrowUp LooksArrowDown LooksBoltTight LooksBoltLoose LooksLatchClosed LooksLatchOpen LooksNailsHit LooksNailsMissed PartPlan OtherMethodLabel OtherNone OtherGuardrail OtherRestraint OtherRestrict RescueLabel RescueNone RescueSpoken RescueWritten ChooserLabel ChooserWorker ChooserCompetent ChooserQualified TrainedOn WorkOn SayOtherMethod SayStopAndAsk AdviceHeading AdviceCalled AdviceNotCalled AdviceFall ChangesHeading ChangesHint ChangesWaiting ChangesNone ChangesBest ChangesLine ChangesPass ChangesFail ChangesMake ChArrow ChLatch ChBolt ChGrabUp ChAbsorber ChLanyard ChKnot ChHarness ChFraming ChRated ChGear ChLadder ChRescue ChChooser WhyLabel WhyFreeFall WhyForceAbsorber WhyForceWhole WhyForceSpent WhyForceRope WhyClearance WhyAnchor WhySlip MarginLine MarginMissing
    GearSummary ThumbsHeading ThumbsHint ThumbHolds ThumbPartly ThumbUnknown ThumbHarness ThumbHarnessTold ThumbAnchor ThumbAnchorTold ThumbForce ThumbForceTold ThumbAbsorber ThumbAbsorberTold ThumbBelow ThumbBelowTold ThumbFace ThumbFaceTold ThumbNails ThumbNailsTold ThumbLook ThumbLookTold ThumbArrow ThumbArrowTold ThumbLow ThumbLowTold ThumbChimney ThumbChimneyTold ThumbHoles ThumbHolesTold
    SpreadHeading SpreadHint SpreadRun SpreadStop SpreadSo SpreadStruck SpreadRoom SpreadForce SpreadMatters SpreadMattersNone SpreadUnsound SpreadSeed SpreadPlot SpreadBarStruck UncMass UncAbsorber UncRope UncGrab UncEdge UncAnchor
    SideHeading SideHint SideOffset SideWords SideRoom SideMissing SideReach SideReachNone SideLimit SideModel SideRoof SideDrawing
    WeatherLabel WeatherDry WeatherWet WeatherFrozen AbsorberClassLabel ClassStated ClassE4 ClassE6 LadderTiedLabel LadderTiedYes LadderTiedNo ReachOut WireLabel WireNo WireYes LineHeight LineDistance PartAround LabelWire StateGroundFalls StateNotClipped
    SideHeld SideStays SideThing SideThingHit SideThingMiss
    MapHeading MapHint MapByGrab MapByOffset MapLadderOnly MapCell MapLoad MapGoing MapTrust MapImpossible MapUnknown MapMissing MapShort MapEnough MapOne MapTwo
    SideHeldShort
    NavBench NavQuiz NavCrew AfterSource QSetUp QSame QPart QAllFit QRoomEnough QRoomShort QRoomNone QArrest QOtherMethod QStopAndAsk QFootHolds QFootSlides QFootBack QFootSide QWireKept QWireAsk QWireDry WhyEndsStopped WhyEndsStrikes WhyEndsLetGo WhyHigherSame WhyHigherOther WhyHigherDiffer WhyPutGrab WhyFaultMissed WhyFaultNone WhyFaultOther WhySteps WhyAnchorNone WhyAnchorWeak WhyRoom WhyAlongFar WhyAlongNear WhyMethodArrest WhyMethodOther WhyMethodAsk WhyFooting WhyFootingBack WhyFootingSide WhyWire
    QFrom WhyMethodRank QuizHeading QuizLead QuizHalves QuizHalf QuizResume QuizDrop QuizMode QuizPractice QuizAssessment QuizPracticeHint QuizAssessmentHint QuizWho QuizNameless QuizTrainer QuizCut QuizCutHint QuizSeed QuizSeedHint QuizPlace QuizBegin QuizNotCertificate QuizProgress QuizYourAnswer QuizLock QuizPickFirst QuizOn QuizLeave QuizUp QuizDown QuizRight QuizPartly QuizWrong QuizCritical QuizYours QuizKey QuizSee QuizResult QuizPassed QuizFailed QuizFailedCritical QuizPracticeDone QuizExport QuizExportWhy QuizAnswers QuizAgain WriteRecord Print SheetTitle SheetFinished SheetPoints SheetCritical SheetResult SheetPassed SheetNotPassed SheetVersions SheetLaw SheetSign SheetChain NoteNotKept NoteOtherTab NoteClockBack NoteCleared NoteGone CrewHeading CrewLead CrewEmpty CrewNone CrewPassed CrewNotPassed CrewOpen CrewRemove CrewPaste CrewAdd CrewCsv CrewMid CrewAnalysis CrewAnalysisHint ColKind ColAnswered ColRight ColApart CrewFiles CrewFilesHint WriteArchive WriteCsv WriteXapi CrewImport ImportDone RefusedTooLarge RefusedBroken RefusedForeign RefusedNewer DoubtNone DoubtEdited DoubtVersion DoubtReplay DueNothing DueFirst DueRecheck DueMid DueNow DueLater ClearHeading ClearHint ClearDevice ClearSure ClearNot
    FrontLegend NavLabel RoomsComing RoomsMissing
    WhyMethodOtherAsk
    NavLessons LessonsHeading LessonsLead LessonDone LessonAsk LessonLock LessonRight LessonOther LessonPrinciple LessonNext LessonTry LessonPlay LessonTime LessonGhost CmpEnd CmpForce CmpFree CmpFall CmpRoom CmpGap EndingsHeading EndingsLead EndingsCount EndingUnknown
    VerdictTooLow Quarter QuarterToThird CheckedGuide CheckedSecondary EndStop RopeKindLabel RopePolyBlend RopeKernmantle RopePolyester RopeNylon RopeStated VoltageLabel VoltUnknown VoltService Volt50 Volt75 Volt150 Volt250 VoltMore OtherGround OtherPlatform
    WhyWireUnknown
    ChClip ChTie ChInLine
    StrengthJudgeStack StrengthJudgeAny PlotTitleLetGo
    PlotTitleStrikes
    SideUntold ChSlack ChPad
    UncGrip UncSlip UncRoof RopeSlack RopeEdgeLabel EdgePadded EdgeBare
    OtherRestraintQuebec OtherRestraintOntario PartGrabOntario
    SaveFile OpenFile CopyLink LinkCopied FileBad Kept NotKept
}

/// The text of a key.
pub fn text(lang: Lang, key: Key) -> &'static str {
    match lang {
        Lang::En => en::text(key),
        Lang::Fr => fr::text(key),
    }
}

impl words::Worded for Key {
    fn words(self, lang: Lang) -> &'static str {
        text(lang, self)
    }
    fn in_place(self, place: &str) -> Key {
        match (self, place) {
            (Key::OtherRestraint, "qc") => Key::OtherRestraintQuebec,
            (Key::OtherRestraint, "on") => Key::OtherRestraintOntario,
            (Key::PartGrab, "on") => Key::PartGrabOntario,
            _ => self,
        }
    }
}

/// Fills named places: `fill("{a} of {b}", &[("a", "1"), ("b", "2")])`.
pub fn fill(template: &str, values: &[(&str, &str)]) -> String {
    let mut out = template.to_owned();
    for (name, value) in values {
        out = out.replace(&format!("{{{name}}}"), value);
    }
    out
}

/// Names of the places in a template, sorted.
pub fn places_in(template: &str) -> Vec<&str> {
    let mut names: Vec<&str> =
        template.split('{').skip(1).filter_map(|p| p.split_once('}').map(|(n, _)| n)).collect();
    names.sort_unstable();
    names.dedup();
    names
}

/// Space between a number and its unit: no break.
const UNIT_SPACE: char = '\u{a0}';

/// A plain number with `decimals` places in a language's notation.
pub fn number(lang: Lang, value: f64, decimals: usize) -> String {
    let plain = format!("{value:.decimals$}");
    let (int, frac) = plain.split_once('.').unwrap_or((&plain, ""));
    let (sign, digits) = int.strip_prefix('-').map_or(("", int), |d| ("\u{2212}", d));
    let mut grouped = String::new();
    for (i, c) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) && digits.len() > 3 {
            grouped.push(if lang == Lang::En { ',' } else { '\u{202f}' });
        }
        grouped.push(c);
    }
    if frac.is_empty() {
        format!("{sign}{grouped}")
    } else {
        format!("{sign}{grouped}{}{frac}", if lang == Lang::En { '.' } else { ',' })
    }
}

/// A unit's symbol as a language writes it: feet are 'pi' in French (pieds).
pub fn symbol(lang: Lang, q: Quantity, units: Units) -> &'static str {
    match (lang, q.symbol(units)) {
        (Lang::Fr, "ft") => "pi",
        (Lang::Fr, "ft/s") => "pi/s",
        (Lang::Fr, "lbf/ft") => "lbf/pi",
        (_, s) => s,
    }
}

fn with_unit(lang: Lang, number: &str, q: Quantity, units: Units) -> String {
    match symbol(lang, q, units) {
        "" => number.to_owned(),
        "°" => format!("{number}°"),
        unit => format!("{number}{UNIT_SPACE}{unit}"),
    }
}

/// A number with its unit.
pub fn quantity(lang: Lang, units: Units, q: Quantity, si: f64, rounding: Rounding) -> String {
    let d = q.decimals(units);
    let shown = round_to(si * q.shown_per_si(units), d, rounding);
    with_unit(lang, &number(lang, shown, d), q, units)
}

/// A limit: as many decimals as it needs, three at most.
pub fn limit_quantity(lang: Lang, units: Units, q: Quantity, si: f64) -> String {
    let x = si * q.shown_per_si(units);
    // A metric limit may be no round number in feet; then the usual decimals do.
    let d = (0..=2)
        .find(|d| (x - round_to(x, *d, Rounding::Nearest)).abs() < 2e-3 * x.abs().max(0.05))
        .unwrap_or(2);
    with_unit(lang, &number(lang, round_to(x, d, Rounding::Nearest), d), q, units)
}

/// A number held against a limit: more decimals when rounding would hide on which side it is.
pub fn quantity_against(
    lang: Lang,
    units: Units,
    q: Quantity,
    si: f64,
    limit_si: f64,
    rounding: Rounding,
) -> String {
    let k = q.shown_per_si(units);
    let mut d = q.decimals(units);
    while d < 5 {
        let shown = round_to(si * k, d, rounding);
        let same_side = (shown > limit_si * k) == (si > limit_si);
        if same_side && ((shown - limit_si * k).abs() > 1e-9 || (si - limit_si).abs() < 1e-9) {
            break;
        }
        d += 1;
    }
    with_unit(lang, &number(lang, round_to(si * k, d, rounding), d), q, units)
}
