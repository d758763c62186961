//! Texts in both languages side by side: those of the bench's handles and houses, and those of the
//! rooms. Two tables, because the page's two modules each carry only what they show.

use super::{Lang, held};
use serde::{Deserialize, Serialize};

/// Something with a text in both languages.
pub trait Worded: Copy + Send + Sync + 'static {
    /// The text.
    fn words(self, lang: Lang) -> &'static str;
}

macro_rules! words {
    ($(#[$doc:meta])* $table:ident; $($name:ident, $en:literal, $fr:literal;)*) => {
        $(#[$doc])*
        #[allow(missing_docs)]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        pub enum $table { $($name,)* }
        impl $table {
            /// Every text.
            pub const ALL: &'static [$table] = &[$($table::$name,)*];
        }
        impl Worded for $table {
            fn words(self, lang: Lang) -> &'static str {
                held(match (self, lang) {
                    $(($table::$name, Lang::En) => $en, ($table::$name, Lang::Fr) => $fr,)*
                })
            }
        }
    };
}

words! {
    /// Texts of the bench's handles and houses.
    Bench;
    HandHeading, "Take hold of a part", "Prendre une pièce en main";
    HandWorker, "Worker", "Personne";
    HandHelp, "Drag a ringed part in the drawing, or use the buttons.", "Faites glisser une pièce cerclée dans le dessin, ou prenez les boutons.";
    HandAt, "{part}: {value}. Enter picks it up.", "{part} : {value}. Entrée la prend en main.";
    HandHas, "{part}: {value}", "{part} : {value}";
    HandTaken, "{part} in hand: {value}. Arrow keys move it, Enter puts it down, Escape puts it back.", "{part} en main : {value}. Les flèches la déplacent, Entrée la pose, Échap la remet.";
    HandBack, "Put back.", "Remise en place.";
    TurnOver, "Turn it over", "Retourner";
    LatchOpenIt, "Open the latch", "Ouvrir le loquet";
    LatchCloseIt, "Close the latch", "Fermer le loquet";
    BoltLoosenIt, "Loosen the bolt", "Desserrer le boulon";
    BoltTightenIt, "Tighten the bolt", "Serrer le boulon";
    ClipIn, "Clip the lanyard in", "Accrocher le cordon";
    ClipOut, "Unclip the lanyard", "Décrocher le cordon";
    StrapsUp, "Draw the straps up", "Serrer les sangles";
    StrapsSlack, "Slacken the straps", "Desserrer les sangles";
    TieLadder, "Tie the ladder at the top", "Attacher l’échelle en haut";
    UntieLadder, "Untie the ladder", "Détacher l’échelle";
    SwapGround, "Move it off the framing", "La fixer hors de la charpente";
    SwapFraming, "Move it onto the framing", "La fixer dans la charpente";
    ClimbNote, "Climbing leaves the grab where it is on the rope.", "En montant, le coulisseau reste où il est sur la corde.";
    Clipped, "clipped in", "accroché";
    NotClipped, "not clipped", "pas accroché";
    ClipLabel, "Clipped to the D-ring", "Accroché à l’anneau en D";
    ClipYes, "yes", "oui";
    ClipNo, "no", "non";
    LensGrab, "The grab from near: arrow {arrow}, latch {latch}, bolt {bolt}.", "Le coulisseau de près : flèche {arrow}, loquet {latch}, boulon {bolt}.";
    LensBack, "The harness from behind: lanyard {clip}, straps {straps}.", "Le harnais de dos : cordon {clip}, sangles {straps}.";
    LensFoot, "The ladder’s foot: {angle} from the ground, top {tied}.", "Le pied de l’échelle : {angle} depuis le sol, haut {tied}.";
    LensAnchor, "The anchor from near: {kind}.", "Le point d’ancrage de près : {kind}.";
    HouseHeading, "House", "Maison";
    HouseHint, "Each is another world for a fall. Choosing one also moves ladder and worker.", "Chacune change la chute. En choisir une déplace aussi l’échelle et la personne.";
    HouseBungalow, "Bungalow", "Plain-pied";
    HouseTwoStorey, "Two storeys, deck", "Deux étages, terrasse";
    HouseWalkOut, "Falling ground", "Sol en pente";
    HouseCape, "Steep roof, dormers", "Toit raide, lucarnes";
    HouseTallGable, "Tall gable, chimney", "Haut pignon, cheminée";
    BackToSetUp, "Back to the set-up", "Revenir au montage";
    KeysChoosing, "Before the fall, with the drawing in focus: arrow keys go from part to part, Enter picks one up and puts it down, arrow keys move it (Shift finer, Page keys coarser), Escape puts it back.", "Avant la chute, le dessin étant actif : les flèches vont d’une pièce à l’autre, Entrée la prend en main et la pose, les flèches la déplacent (Maj plus fin, Page plus large), Échap la remet.";
}
