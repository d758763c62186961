//! A session before a room, as a machine of steps: ask, lock, play, replay, tell, change one thing. Nothing that
//! answers the question belongs to a step before [`Step::Verdict`], but what is seen of the fall itself.

use crate::practice::demos::{Demo, Ends};
use serde::{Deserialize, Serialize};

/// The steps of one demonstration.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Step {
    /// The scene, named.
    Scene,
    /// The question; hands are counted.
    Ask,
    /// The hands stand.
    Locked,
    /// The fall at true speed.
    Play,
    /// The fall slowly, moment by moment.
    Slow,
    /// What happened, and who saw it coming.
    Verdict,
    /// What would the room change?
    Change,
    /// The change beside the first, on one clock.
    Both,
}

impl Step {
    /// All, in their order.
    pub const ALL: [Step; 8] = [
        Step::Scene,
        Step::Ask,
        Step::Locked,
        Step::Play,
        Step::Slow,
        Step::Verdict,
        Step::Change,
        Step::Both,
    ];

    /// Its number, from 0.
    pub fn number(self) -> usize {
        Step::ALL.iter().position(|s| *s == self).unwrap_or(0)
    }

    /// Whether the answer may be read.
    pub fn is_told(self) -> bool {
        self >= Step::Verdict
    }
}

/// What can be asked of the wall, by key, by button or from the second window.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Wish {
    /// On.
    Next,
    /// Back; what was told is hidden again.
    Back,
    /// Nothing but paper, or the picture again.
    Blank,
    /// One hand more for an answer, from 0.
    Up(u8),
    /// One hand less.
    Less(u8),
    /// Takes the last hand back.
    Undo,
    /// The fall once more.
    Again,
    /// First and changed change sides.
    Swap,
    /// Full screen.
    Full,
    /// The second window.
    Second,
    /// The dark wall, or the light one.
    Dark,
}

impl Wish {
    /// What a key asks for; clickers send the first ones.
    pub fn of_key(key: &str, shift: bool) -> Option<Wish> {
        // With shift the digits of a keyboard are other signs; its code names them.
        let digit =
            key.strip_prefix("Digit").unwrap_or(key).parse::<u8>().ok().filter(|n| (1..=4).contains(n));
        if let Some(n) = digit {
            return Some(if shift { Wish::Less(n - 1) } else { Wish::Up(n - 1) });
        }
        Some(match key {
            "PageDown" | "ArrowRight" | " " | "Enter" => Wish::Next,
            "PageUp" | "ArrowLeft" => Wish::Back,
            "b" | "B" | "." => Wish::Blank,
            "Backspace" => Wish::Undo,
            "r" | "R" => Wish::Again,
            "a" | "A" => Wish::Swap,
            "f" | "F" => Wish::Full,
            "t" | "T" => Wish::Second,
            "d" | "D" => Wish::Dark,
            _ => return None,
        })
    }
}

/// One demonstration of a session, with what the room said.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Turn {
    /// What is shown.
    pub demo: Demo,
    /// The partner that differs in one choice.
    pub partner: Option<Demo>,
    /// Hands for each of its four answers.
    pub hands: [u32; 4],
    /// Hands for each part that could be changed: grab, anchor, rope or link, place.
    pub changes: [u32; 4],
    /// How it ended, once it has been played; `Some(None)` where it cannot be shown.
    pub came: Option<Option<Ends>>,
    /// It was told to the room.
    pub told: bool,
}

/// What most hands say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lead {
    /// Nobody was counted.
    Nobody,
    /// The answer of this number, with so many hands.
    One(usize, u32),
    /// Two or more, with so many hands each.
    Split(u32),
}

impl Turn {
    /// One that nobody has been asked about.
    pub fn of(demo: Demo, partner: Option<Demo>) -> Turn {
        Turn { demo, partner, hands: [0; 4], changes: [0; 4], came: None, told: false }
    }

    /// Hands in all.
    pub fn counted(&self) -> u32 {
        self.hands.iter().sum()
    }

    /// What most say.
    pub fn lead(&self) -> Lead {
        let most = self.hands.iter().copied().max().unwrap_or(0);
        if most == 0 {
            return Lead::Nobody;
        }
        let mut first = (0..4).filter(|i| self.hands[*i] == most);
        match (first.next(), first.next()) {
            (Some(i), None) => Lead::One(i, most),
            _ => Lead::Split(most),
        }
    }

    /// Hands for what came; none before it has come, or where it cannot be shown.
    pub fn foresaw(&self) -> Option<u32> {
        let came = self.came??;
        let at = self.demo.answers().iter().position(|e| *e == came)?;
        Some(self.hands[at])
    }
}

/// A session: its demonstrations, and where it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Session {
    /// What it is called; empty when it has no name.
    pub name: String,
    /// Its demonstrations.
    pub turns: Vec<Turn>,
    /// The one that is shown; past the last, the session has ended.
    pub at: usize,
    /// The step.
    pub step: Step,
    /// Nothing is shown.
    pub blank: bool,
    /// The changed one stands first.
    pub swapped: bool,
    /// The wall is dark.
    pub dark: bool,
    /// How often the fall was asked for again: the wall plays when this changes.
    pub again: u32,
    /// When it began, as the device's clock says, s since 1970.
    pub began_s: f64,
    /// When it ended; none before.
    pub ended_s: Option<f64>,
    /// The hands of this step in their order, so that they can be taken back.
    undo: Vec<u8>,
}

/// Most hands that one answer is counted to.
const MOST_HANDS: u32 = 999;

impl Session {
    /// One that begins.
    pub fn of(name: &str, turns: Vec<Turn>, began_s: f64) -> Session {
        Session {
            name: name.to_owned(),
            turns,
            at: 0,
            step: Step::Scene,
            blank: false,
            swapped: false,
            dark: false,
            again: 0,
            began_s,
            ended_s: None,
            undo: vec![],
        }
    }

    /// What is shown; none once it has ended.
    pub fn now(&self) -> Option<&Turn> {
        self.turns.get(self.at)
    }

    /// Whether it has ended.
    pub fn is_over(&self) -> bool {
        self.at >= self.turns.len()
    }

    /// Minutes that its demonstrations are meant to take.
    pub fn minutes(&self) -> u32 {
        self.turns.iter().map(|t| t.demo.minutes).sum()
    }

    /// Hands of the step that is shown, where hands are counted in it.
    fn counting(&mut self) -> Option<&mut [u32; 4]> {
        let step = self.step;
        let t = self.turns.get_mut(self.at)?;
        match step {
            Step::Ask => Some(&mut t.hands),
            Step::Change => Some(&mut t.changes),
            _ => None,
        }
    }

    /// Does what is wished, as far as it belongs to the machine.
    pub fn wish(&mut self, w: Wish, now_s: f64) {
        // Any key wakes a blank wall, and does nothing else.
        if self.blank {
            self.blank = false;
            return;
        }
        match w {
            Wish::Next => self.next(now_s),
            Wish::Back => self.back(),
            Wish::Blank => self.blank = true,
            Wish::Up(n) => {
                if let Some(h) = self.counting().and_then(|h| h.get_mut(usize::from(n)))
                    && *h < MOST_HANDS
                {
                    *h += 1;
                    self.undo.push(n);
                }
            }
            Wish::Less(n) => {
                if let Some(h) = self.counting().and_then(|h| h.get_mut(usize::from(n))) {
                    *h = h.saturating_sub(1);
                }
                if let Some(i) = self.undo.iter().rposition(|x| *x == n) {
                    self.undo.remove(i);
                }
            }
            Wish::Undo => {
                if let Some(n) = self.undo.pop()
                    && let Some(h) = self.counting().and_then(|h| h.get_mut(usize::from(n)))
                {
                    *h = h.saturating_sub(1);
                }
            }
            Wish::Again => self.again += 1,
            Wish::Swap => self.swapped = !self.swapped,
            Wish::Dark => self.dark = !self.dark,
            Wish::Full | Wish::Second => {}
        }
    }

    /// The last step of what is shown: without a partner there is nothing to put beside it.
    fn last(&self) -> Step {
        match self.now() {
            Some(t) if t.partner.is_none() || t.came == Some(None) => Step::Change,
            _ => Step::Both,
        }
    }

    fn go(&mut self, at: usize, step: Step) {
        (self.at, self.step) = (at, step);
        self.undo.clear();
        self.swapped = false;
        if step.is_told()
            && let Some(t) = self.turns.get_mut(at)
        {
            t.told = true;
        }
    }

    fn next(&mut self, now_s: f64) {
        if self.is_over() {
            return;
        }
        if self.step == self.last() {
            self.go(self.at + 1, Step::Scene);
            if self.is_over() {
                self.ended_s = Some(now_s);
            }
            return;
        }
        let step = Step::ALL.get(self.step.number() + 1).copied().unwrap_or(Step::Both);
        self.go(self.at, step);
    }

    fn back(&mut self) {
        match self.step.number() {
            0 if self.at == 0 => {}
            0 => {
                self.at -= 1;
                let last = self.last();
                self.go(self.at, last);
                self.ended_s = None;
            }
            n => self.go(self.at, Step::ALL[n - 1]),
        }
    }

    /// Notes how what is shown ended, once the engine has said so.
    pub fn came(&mut self, id: u32, came: Option<Ends>) {
        for t in self.turns.iter_mut().filter(|t| t.demo.id == id) {
            t.came = Some(came);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::demos::demo;

    fn session() -> Session {
        let turn = |id| {
            let d = demo(id).expect("is there").clone();
            let p = demo(d.partner).cloned();
            Turn::of(d, p)
        };
        Session::of("Tuesday", vec![turn(1), turn(22)], 0.0)
    }

    /// A whole session by what a clicker sends: eight steps each, then the end, and back again.
    #[test]
    fn a_clicker_alone_goes_through_a_session_and_back() {
        let mut s = session();
        let mut seen = vec![];
        for _ in 0..16 {
            seen.push((s.at, s.step));
            s.wish(Wish::of_key("PageDown", false).expect("a key"), 9.0);
        }
        let all: Vec<(usize, Step)> = (0..2).flat_map(|i| Step::ALL.map(|q| (i, q))).collect();
        assert_eq!(seen, all);
        assert!(s.is_over() && s.ended_s == Some(9.0) && s.now().is_none());
        for want in all.into_iter().rev() {
            s.wish(Wish::of_key("PageUp", false).expect("a key"), 9.0);
            assert_eq!((s.at, s.step), want);
        }
        s.wish(Wish::Back, 9.0);
        assert_eq!((s.at, s.step, s.ended_s), (0, Step::Scene, None));
    }

    #[test]
    fn hands_go_up_and_down_and_only_while_they_are_asked_for() {
        let mut s = session();
        s.wish(Wish::Up(0), 0.0);
        assert_eq!(s.turns[0].counted(), 0);
        s.wish(Wish::Next, 0.0);
        for key in ["1", "2", "2", "2", "4"] {
            s.wish(Wish::of_key(key, false).expect("a key"), 0.0);
        }
        s.wish(Wish::of_key("Digit2", true).expect("a key"), 0.0);
        assert_eq!(s.turns[0].hands, [1, 2, 0, 1]);
        s.wish(Wish::Undo, 0.0);
        assert_eq!(s.turns[0].hands, [1, 2, 0, 0]);
        assert_eq!(s.turns[0].lead(), Lead::One(1, 2));
        s.wish(Wish::Less(1), 0.0);
        assert_eq!(s.turns[0].lead(), Lead::Split(1));
        s.wish(Wish::Less(3), 0.0);
        assert_eq!(s.turns[0].hands, [1, 1, 0, 0]);
        s.wish(Wish::Next, 0.0);
        s.wish(Wish::Up(0), 0.0);
        assert_eq!(s.turns[0].counted(), 2);
        // It holds: one of the two saw it coming.
        s.came(1, Some(Ends::Holds));
        assert_eq!(s.turns[0].foresaw(), Some(1));
        s.came(1, None);
        assert_eq!(s.turns[0].foresaw(), None);
    }

    #[test]
    fn any_key_wakes_a_blank_wall_and_does_nothing_else() {
        let mut s = session();
        s.wish(Wish::of_key(".", false).expect("a key"), 0.0);
        assert!(s.blank);
        s.wish(Wish::Next, 0.0);
        assert!(!s.blank && s.step == Step::Scene);
    }

    #[test]
    fn without_a_partner_or_a_fall_there_is_nothing_to_put_beside() {
        let mut s = session();
        s.turns[0].partner = None;
        s.turns[1].came = Some(None);
        for _ in 0..14 {
            assert_ne!(s.step, Step::Both);
            s.wish(Wish::Next, 0.0);
        }
        assert!(s.is_over());
    }

    #[test]
    fn a_session_reads_back_as_it_was_written() {
        let s = session();
        let text = serde_json::to_string(&s).expect("writes");
        assert_eq!(serde_json::from_str::<Session>(&text).expect("reads"), s);
    }
}
