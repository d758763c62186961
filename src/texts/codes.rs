//! What codes are called and say, both languages side by side. A text belongs to its code: one that is
//! missing does not compile.

use super::table::{Text, texts};
use crate::grade::changes::Change;
use crate::grade::pieces::Piece;
use crate::physics::trace::{EventKind, Outcome, Thing};
use crate::practice::lessons::{Ending, Lesson};
use crate::quiz::questions::{AfterCase, ItemKind, Step};
use crate::scenario::{AnchorKind, ProblemCode};

texts! {
    /// What an anchor is called.
    AnchorKind::label;
    RidgePlateInFraming, "ridge plate in the framing", "plaque de faîte dans la charpente";
    RidgePlateInSheathing, "ridge plate in the sheathing only", "plaque de faîte dans le seul revêtement";
    ChimneySling, "sling round the chimney", "élingue autour de la cheminée";
    VentPipe, "vent pipe", "tuyau d’évent";
    Gutter, "gutter", "gouttière";
    RatedEye, "rated anchor eye", "œillet d’ancrage à charge nominale";
    RoofVent, "roof vent or duct", "évent ou conduit de toit";
    AntennaMast, "aerial mast", "mât d’antenne";
}

texts! {
    /// What is wrong with a set-up.
    ProblemCode::says;
    NotFinite, "{field}: not a number.", "{field} : pas un nombre.";
    OutOfRange, "{field}: outside {min} to {max}.", "{field} : en dehors de {min} à {max}.";
    SchemaNewer, "This set-up comes from a newer version.", "Ce montage vient d’une version plus récente.";
    PlaceUnknown, "There are no rules here for this place.", "Aucune règle n’est connue pour cet endroit.";
    LadderTooShort, "The ladder’s foot is out further than the ladder is long.", "Le pied de l’échelle est plus écarté que l’échelle n’est longue.";
    StandsAboveLadder, "The feet would be above the ladder’s usable part or above the eave.", "Les pieds seraient au-dessus de la partie utile de l’échelle ou de l’avant-toit.";
    LadderInObstacle, "The ladder, or who stands on it, would be in the deck: move its foot out, or the deck.", "L’échelle, ou la personne qui s’y tient, serait dans la terrasse : écartez son pied, ou déplacez la terrasse.";
    WorkerInHouse, "The worker would be inside the wall or the roof: move the ladder’s foot out.", "La personne serait dans le mur ou le toit : écartez le pied de l’échelle.";
    StandsOffRoof, "The feet would be past the ridge.", "Les pieds seraient au-delà du faîte.";
    AnchorOffRoof, "The anchor would be off the roof.", "L’ancrage serait hors du toit.";
    AnchorBelowWorker, "The anchor would be beside or below the worker: put it further up.", "L’ancrage serait à côté ou au-dessous de la personne : placez-le plus haut.";
    GrabOutOfReach, "The lanyard does not reach from the D-ring to the grab: move the grab closer or take a longer lanyard.", "Le cordon n’atteint pas le coulisseau depuis l’anneau en D : rapprochez le coulisseau ou prenez un cordon plus long.";
    LifelineTooShort, "The lifeline ends before the grab: take a longer one.", "La corde d’assurance finit avant le coulisseau : prenez-en une plus longue.";
    GrabPastAnchor, "The grab would be at or past the anchor: lower it.", "Le coulisseau serait à l’ancrage ou au-delà : descendez-le.";
    NotADate, "{field}: write the day as 2026-05-01.", "{field} : écrivez le jour comme 2026-05-01.";
    SlingAboveChimney, "The sling would be above the chimney’s top.", "L’élingue serait au-dessus du sommet de la cheminée.";
}

texts! {
    /// A moment of a fall.
    EventKind::label;
    Slip, "slip", "glissade";
    OverEave, "over the eave", "passage de l’avant-toit";
    Taut, "line taut", "liaison tendue";
    GrabLocks, "grab holds", "coulisseau bloqué";
    GrabRuns, "grab slides on", "coulisseau glisse";
    AbsorberOpens, "absorber tears", "absorbeur se déchire";
    AbsorberSpent, "absorber spent", "absorbeur épuisé";
    RopeEnd, "knot at the end", "nœud du bout";
    PeakForce, "largest force", "force maximale";
    Lowest, "lowest point", "point le plus bas";
    StrikesWall, "strikes the wall", "heurte le mur";
    StrikesLadder, "strikes the ladder", "heurte l’échelle";
    StrikesRoof, "strikes the roof", "heurte le toit";
    StrikesObstacle, "strikes the deck", "heurte la terrasse";
    StrikesGround, "strikes the ground", "heurte le sol";
    AnchorFails, "anchor gives way", "ancrage cède";
    OffRope, "off the rope", "sort de la corde";
    End, "the end", "la fin";
    RopeBreaks, "rope breaks", "corde rompt";
    LinkBreaks, "connection lets go", "connecteur, cordon ou harnais rompt";
    LadderSlides, "the ladder’s foot slides out", "le pied de l’échelle glisse";
    LadderTips, "the ladder goes over", "l’échelle bascule";
    NotClipped, "not clipped in", "pas accroché";
}

texts! {
    /// What was struck.
    Thing::label;
    Ground, "the ground", "le sol";
    Obstacle, "the deck", "la terrasse";
    Wall, "the wall", "le mur";
    Roof, "the roof", "le toit";
    Ladder, "the ladder", "l’échelle";
}

texts! {
    /// How a fall ends.
    Outcome::label;
    Stopped, "stops in time", "s’arrête à temps";
    Strikes, "hits something below", "heurte quelque chose en bas";
    LetGo, "comes off the rope or the anchor", "se détache de la corde ou de l’ancrage";
}

texts! {
    /// A kind of question.
    ItemKind::label;
    Ends, "How the fall ends", "L’issue de la chute";
    Higher, "Which stops higher", "Lequel arrête plus haut";
    PutGrab, "Placing the grab", "Placer le coulisseau";
    Fault, "Looking over the gear", "Examiner l’équipement";
    Steps, "Order of the steps", "L’ordre des étapes";
    PickAnchor, "Choosing the anchor", "Choisir l’ancrage";
    Room, "Room to stop", "Le dégagement";
    Along, "Along the wall", "Le long du mur";
    Method, "The right method", "La bonne méthode";
    After, "After the stop", "Après l’arrêt";
    Footing, "The ladder’s footing", "L’appui de l’échelle";
    Wire, "Power lines", "Lignes électriques";
    Worn, "How the harness is worn", "Le port du harnais";
    Clipped, "At the eave", "Au bord du toit";
    Pair, "One of two", "L’un des deux";
    Stand, "Where the ladder stands", "La place de l’échelle";
}

texts! {
    /// What it asks.
    ItemKind::stem;
    Ends, "The worker slips here. How does it end?", "La personne glisse ici. Comment cela finit-il?";
    Higher, "Two set-ups, alike but for one thing. In which one does the worker end up higher off the ground?", "Deux montages, pareils sauf un point. Dans lequel la personne finit-elle le plus haut au-dessus du sol?";
    PutGrab, "Put the grab at a height where the free fall stays at or under {limit}.", "Placez le coulisseau à une hauteur où la chute libre reste à {limit} ou moins.";
    Fault, "You look over the gear. Which part must not be used as it is?", "Vous examinez l’équipement. Quelle pièce ne doit pas servir telle quelle?";
    Steps, "Put these steps in order, the first on top.", "Mettez ces étapes en ordre, la première en haut.";
    PickAnchor, "Three places to tie to. Which one is an anchor for this job?", "Trois points où s’attacher. Lequel est un ancrage pour ce travail?";
    Room, "The worker slips here. Is there room to stop?", "La personne glisse ici. Y a-t-il assez de dégagement?";
    Along, "How far along the wall from the anchor’s line may one work? Take the furthest at which {reserve} is left below and the swing stays under {fast}.", "Jusqu’où pouvez-vous vous éloigner de l’aplomb de l’ancrage? Prenez la plus grande distance où il reste {reserve} et où le balancement reste sous {fast}.";
    Method, "Before anybody climbs: what now?", "Avant que quelqu’un monte : que faites-vous?";
    After, "What now?", "Que faites-vous maintenant?";
    Footing, "Nobody has tied this ladder. How does it stand with the worker on it?", "Personne n’a attaché cette échelle. Comment tient-elle avec la personne dessus?";
    Wire, "There is a power line beside this ladder. May it be used here?", "Il y a une ligne électrique près de cette échelle. Pouvez-vous vous en servir ici?";
    Worn, "Three ways to wear a harness, each with one thing wrong. In which one does the trunk hang furthest from upright after the stop?", "Trois façons de porter un harnais, chacune avec un défaut. Dans laquelle le tronc pend-il le plus loin de la verticale après l’arrêt?";
    Clipped, "{moment}. Lanyard A: {a}. Lanyard B: {b}. A slip now: what holds?", "{moment}. Cordon A : {a}. Cordon B : {b}. Un faux pas maintenant : qu’est-ce qui retient?";
    Pair, "Which of the two is the better one?", "Lequel des deux vaut mieux?";
    Stand, "Where may the ladder stand, as things are now?", "Où placer l’échelle, dans l’état actuel des choses?";
}

texts! {
    /// A step to put in order.
    Step::label;
    AskMethod, "Ask whether another method would do", "Se demander si une autre méthode convient";
    WalkSite, "Walk the site: wires, ground, what stands below", "Faire le tour du lieu : fils, sol, ce qui se trouve dessous";
    PlanRescue, "Settle the rescue, in writing", "Prévoir le sauvetage, par écrit";
    LookOverGear, "Look over every part of the gear", "Examiner chaque pièce de l’équipement";
    PlaceLadder, "Set the ladder’s foot and tie its top", "Placer le pied de l’échelle et en attacher le haut";
    SetAnchor, "Set the anchor as its maker says, into the framing", "Poser l’ancrage selon sa notice, dans la charpente";
    HangLifeline, "Hang the lifeline and check the stop at its end", "Suspendre la corde d’assurance et vérifier l’arrêt du bout";
    PutOnHarness, "Put the harness on and tighten it, on the ground", "Mettre le harnais et le serrer, au sol";
    ClampGrab, "Clamp the grab on the rope, arrow to the anchor", "Poser le coulisseau sur la corde, flèche vers l’ancrage";
    ClipLanyard, "Clip the lanyard to the D-ring", "Accrocher le cordon à l’anneau en D";
    TugTest, "Pull down on the grab to test it", "Tirer sur le coulisseau pour l’éprouver";
    BeginWork, "Begin to work, moving the grab up as you climb", "Commencer le travail en remontant le coulisseau à mesure";
    FirstUp, "Protect the first one up another way while the anchor is set: a lift, a scaffold, or a line over the ridge tied on the far side", "Protéger autrement la première personne qui pose l’ancrage : nacelle, échafaudage, ou corde par-dessus le faîte attachée de l’autre côté";
}

texts! {
    /// A lesson's name.
    Lesson::label;
    AlongTheWall, "Moving along the wall", "Se déplacer le long du mur";
    GrabBolt, "Bolt tight or loose", "Boulon serré ou desserré";
    AnchorChimney, "Round a chimney", "Autour d’une cheminée";
    GrabHeight, "The grab, high or low", "Le coulisseau, haut ou bas";
    GrabArrow, "The arrow on the grab", "La flèche du coulisseau";
    BoltAndLatch, "The latch of the grab", "Le loquet du coulisseau";
    AbsorberOrNot, "With and without an absorber", "Avec et sans absorbeur";
    AnchorGround, "What the anchor is fixed to", "Ce qui tient l’ancrage";
    RoomToStop, "Room to stop", "Le dégagement";
    SlackOnTheRoof, "Slack on the roof", "Du mou sur le toit";
}

texts! {
    /// What to do there, short enough for a card.
    Lesson::verb;
    AlongTheWall, "Move along the wall", "Longer le mur";
    GrabBolt, "Tighten the bolt", "Serrer le boulon";
    AnchorChimney, "Sling a chimney", "Ceinturer la cheminée";
    GrabHeight, "Grab high or low", "Coulisseau haut ou bas";
    GrabArrow, "Turn the grab over", "Retourner le coulisseau";
    BoltAndLatch, "Close the latch", "Fermer le loquet";
    AbsorberOrNot, "Tear it or not", "Déchirer ou non";
    AnchorGround, "Wood or boards", "Bois ou panneau";
    RoomToStop, "Leave room to stop", "Garder du dégagement";
    SlackOnTheRoof, "Take up the slack", "Reprendre le mou";
}

texts! {
    /// The one thing in which the two set-ups differ.
    Lesson::differs;
    AlongTheWall, "Only the place differs.", "Seul l’endroit change.";
    GrabBolt, "Only the grab’s bolt differs.", "Seul le boulon du coulisseau change.";
    AnchorChimney, "Only what the rope is tied to differs.", "Seul ce qui tient la corde change.";
    GrabHeight, "Only the grab’s height differs.", "Seule la hauteur du coulisseau change.";
    GrabArrow, "Only the arrow on the grab differs.", "Seule la flèche du coulisseau change.";
    BoltAndLatch, "Only the latch differs.", "Seul le loquet change.";
    AbsorberOrNot, "Only the absorber differs.", "Seul l’absorbeur change.";
    AnchorGround, "Only what the nails are in differs.", "Seul ce qui tient les clous change.";
    RoomToStop, "Only the height of the work differs.", "Seule la hauteur du travail change.";
    SlackOnTheRoof, "Only the slack in the line differs.", "Seul le mou de la corde change.";
}

texts! {
    /// What it teaches.
    Lesson::principle;
    AlongTheWall, "A rope at a slant acts as a pendulum: the fall ends under the anchor, lower and moving sideways. Move the anchor, or come down, before the work is too far from it.", "Une corde penchée est un pendule : la chute finit sous l’ancrage, plus bas et de côté. Déplacez l’ancrage, ou descendez, avant que le travail vous éloigne trop.";
    GrabBolt, "A loose bolt makes the grab a brake that slips. The stop is softer but longer, and there may be no room for it. Tighten the bolt as its maker says each time the grab goes on a rope, and look again through the day.", "Avec un boulon desserré, le coulisseau devient un frein qui glisse : l’arrêt est plus doux mais plus long, et la place peut manquer. Serrez-le comme le dit son fabricant chaque fois que le coulisseau va sur une corde, et revérifiez dans la journée.";
    AnchorChimney, "Weight holds bricks and old mortar down. It does not hold them against a pull from the side. A sling round a chimney is only as good as a qualified person says it is.", "Briques et vieux mortier tiennent par leur poids, pas contre une traction de côté. Une élingue autour d’une cheminée ne vaut que ce qu’en dit une personne qualifiée.";
    GrabHeight, "Count free fall as the lanyard’s length, plus how far the grab hangs below the D-ring. Keep the grab at the D-ring or higher.", "Comptez comme chute libre la longueur du cordon, plus la hauteur dont le coulisseau pend sous l’anneau en D. Gardez le coulisseau à l’anneau ou plus haut.";
    GrabArrow, "A grab locks in one direction only. With its arrow away from the anchor it runs along the rope like a bead on a string.", "Un coulisseau ne bloque que dans un sens. Si la flèche pointe à l’opposé de l’ancrage, il file le long de la corde comme une perle.";
    BoltAndLatch, "The latch is what keeps the rope in the grab when it is pulled hard. Close it, pull down to test, and look again every 15 to 20 minutes.", "C’est le loquet qui garde la corde dans le coulisseau quand on tire fort. Fermez-le, tirez pour l’éprouver, et revérifiez-le toutes les 15 à 20 minutes.";
    AbsorberOrNot, "A stop needs distance: the shorter it is, the harder it pulls. The absorber tears to give that distance; without it only the rope’s stretch does, and a short rope has little.", "Un arrêt demande de la distance : plus il est court, plus il est dur. L’absorbeur se déchire pour la donner; sans lui, seule la corde s’allonge, et une corde courte s’allonge peu.";
    AnchorGround, "A nail holds by the length that is in solid wood. In the sheathing alone that is a finger’s breadth.", "Un clou tient par la longueur qui est dans le bois massif. Dans le revêtement seul, c’est l’épaisseur d’un doigt.";
    RoomToStop, "Free fall, tear-out, stretch and the body’s own length have to fit below. Near the ground no gear can make that room. Use another method there.", "La chute libre, la déchirure, l’allongement et la longueur du corps doivent tenir dessous. Près du sol, aucun équipement ne crée de dégagement : une autre méthode, oui.";
    SlackOnTheRoof, "Slack rope turns into free fall. Pull it in and move the grab up before you start the work.", "Le mou de la corde, c’est de la chute libre qui attend. Reprenez-le et remontez le coulisseau avant de vous mettre au travail.";
}

texts! {
    /// Where that comes from.
    Lesson::principle_source;
    AlongTheWall, "Closed form of a pendulum: drop L (1 − cos a), speed √(2 g × drop).", "Forme exacte d’un pendule : chute L (1 − cos a), vitesse √(2 g × chute).";
    GrabBolt, "Common practice; what a loose bolt holds is assumed.", "Pratique courante; ce que tient un boulon desserré est supposé.";
    AnchorChimney, "Statics of a block on its joint; O. Reg. 213/91 s. 26.7 asks what a fixed support can bear (checked as for the limits).", "Statique d’un bloc sur son joint; le Règl. de l’Ont. 213/91, art. 26.7, demande ce que peut porter un support fixe (vérifié comme pour les limites).";
    GrabHeight, "Free fall = lanyard less the grab’s height over the D-ring (geometry): the most there can be. Standing beside the rope uses some of it up; before it bites, a grab runs on a little (0.15 m here, assumed), and that counts too (29 CFR 1926.500(b)).", "Chute libre = cordon moins la hauteur du coulisseau au-dessus de l’anneau (géométrie) : c’est le plus qu’elle peut être. Si la personne se tient à côté de la corde, elle est plus courte; avant de mordre, le coulisseau file encore un peu (0,15 m ici, supposé), et cela compte aussi (29 CFR 1926.500(b)).";
    GrabArrow, "Common practice; makers mark the direction on the grab.", "Pratique courante; les fabricants marquent le sens sur le coulisseau.";
    BoltAndLatch, "Common practice.", "Pratique courante.";
    AbsorberOrNot, "Distance = weight × fall ÷ (force − weight); F = mg + √((mg)² + 2 mg M f) on a rope (Wexler 1950).", "Distance = poids × chute ÷ (force − poids); F = mg + √((mg)² + 2 mg M f) sur une corde (Wexler 1950).";
    AnchorGround, "NDS and USDA Wood Handbook: withdrawal grows with the length in wood.", "NDS et USDA Wood Handbook : la résistance à l’arrachement croît avec la longueur dans le bois.";
    RoomToStop, "OSHA Technical Manual, section V chapter 4; Ontario alert C8/0895 (1995) on arrest at 3 m.", "OSHA Technical Manual, section V, chapitre 4; alerte ontarienne C8/0895 (1995) sur l’arrêt à 3 m.";
    SlackOnTheRoof, "Common practice.", "Pratique courante.";
}

texts! {
    /// An ending to be found.
    Ending::label;
    Stopped, "stopped in the air", "arrêt dans le vide";
    OnRoof, "stopped on the roof", "arrêt sur le toit";
    Spent, "the absorber torn to its end", "l’absorbeur déchiré jusqu’au bout";
    Swing, "a hard blow against wall or ladder", "un choc dur contre le mur ou l’échelle";
    Ground, "down to the ground", "jusqu’au sol";
    Deck, "down on a deck", "sur une terrasse";
    OffRope, "the rope left the grab", "la corde sortie du coulisseau";
    Anchor, "the anchor gave way", "l’ancrage arraché";
    Rope, "the rope broke", "la corde rompue";
    Link, "a connection let go", "un connecteur, le cordon ou le harnais rompu";
    Ladder, "the ladder went first", "l’échelle partie d’abord";
}

texts! {
    /// Where to look for an ending that was not seen yet.
    Ending::hint;
    Stopped, "everything as it should be, from a ladder", "tout comme il faut, depuis une échelle";
    OnRoof, "work well up the slope", "travailler bien en haut de la pente";
    Spent, "something in the gear was used before", "une pièce du matériel a déjà servi";
    Swing, "fall far before the line is tight", "tomber loin avant que la corde se tende";
    Ground, "too low, or held by too little", "trop bas, ou mal retenu";
    Deck, "another house", "une autre maison";
    OffRope, "look at the grab’s side", "regardez le côté du coulisseau";
    Anchor, "something on the roof lets go", "quelque chose sur le toit lâche";
    Rope, "look along the rope", "regardez le long de la corde";
    Link, "look at harness and hooks", "regardez le harnais et les crochets";
    Ladder, "nothing holds the ladder, and it freezes", "rien ne tient l’échelle, et il gèle";
}

macro_rules! after {
    ($($case:ident, $en:literal, $fr:literal;
        $en0:literal, $fr0:literal; $en1:literal, $fr1:literal; $en2:literal, $fr2:literal;
        $why_en1:literal, $why_fr1:literal; $why_en2:literal, $why_fr2:literal;)*) => {
        impl AfterCase {
            /// What happened.
            pub fn stem(self) -> Text {
                match self { $(AfterCase::$case => Text { en: $en, fr: $fr },)* }
            }
            /// What could be done; the first is right.
            pub fn choices(self) -> [Text; 3] {
                match self {
                    $(AfterCase::$case => [
                        Text { en: $en0, fr: $fr0 }, Text { en: $en1, fr: $fr1 }, Text { en: $en2, fr: $fr2 },
                    ],)*
                }
            }
            /// Why the other two are wrong.
            pub fn whys(self) -> [Text; 2] {
                match self {
                    $(AfterCase::$case => [
                        Text { en: $why_en1, fr: $why_fr1 }, Text { en: $why_en2, fr: $why_fr2 },
                    ],)*
                }
            }
        }
    };
}

// A case, what happened; what could be done, the right one first; why the other two are wrong.
after! {
    HangsAwake, "The fall is stopped. The worker hangs in the harness and talks to you.", "La chute est arrêtée. La personne est suspendue dans le harnais et vous parle.";
        "Start the planned rescue at once, call the emergency number, have the worker keep the legs moving.", "Lancer tout de suite le sauvetage prévu, appeler les secours, faire bouger les jambes.";
        "Call the emergency number and wait: hanging in a harness does no harm.", "Appeler les secours et attendre : être suspendu dans un harnais ne fait pas de mal.";
        "Two of you pull the worker up by the rope.", "À deux, remonter la personne en tirant sur la corde.";
        "When somebody hangs still, blood pools in the legs within minutes. The crew’s own rescue starts at once; the emergency services come on top.", "Chez une personne immobile, le sang s’accumule dans les jambes en quelques minutes. Le sauvetage de l’équipe commence tout de suite; les secours viennent en plus.";
        "Hauling by hand fails and puts two more people at the edge. The plan says who does what, with which gear.", "Hisser à la main échoue et met deux autres personnes au bord. Le plan dit qui fait quoi, avec quel équipement.";
    HangsStill, "The fall is stopped. The worker hangs in the harness and does not move.", "La chute est arrêtée. La personne est suspendue dans le harnais et ne bouge pas.";
        "Call for help, bring the worker down by the plan at once, then first aid, airway first.", "Appeler les secours, descendre la personne selon le plan sans attendre, puis premiers soins, voies respiratoires d’abord.";
        "Climb out to the worker as you are: seconds count.", "Aller vers la personne sans s’attacher : chaque seconde compte.";
        "Touch nothing until the emergency services are there.", "Ne rien toucher avant l’arrivée des secours.";
        "A second fall makes two to rescue. Rescuers are tied in too.", "Une deuxième chute fait deux personnes à sauver. Les sauveteurs s’attachent aussi.";
        "For someone who hangs without moving, every minute counts.", "Pour une personne suspendue qui ne bouge pas, les minutes comptent.";
    NoPlan, "The gear is ready. Nobody has settled how a worker who hangs would be brought down.", "L’équipement est prêt. Rien n’est prévu pour descendre une personne suspendue.";
        "Nobody climbs until the rescue is settled and the crew knows it.", "Personne ne monte avant que le sauvetage soit prévu et connu de l’équipe.";
        "Go ahead: the emergency number is the plan.", "Commencer : le numéro d’urgence tient lieu de plan.";
        "Go ahead with the most experienced worker.", "Commencer avec la personne la plus expérimentée.";
        "Help from outside may be half an hour away. Someone who hangs does not have that long.", "L’aide extérieure peut être à une demi-heure. Une personne suspendue ne peut pas attendre autant.";
        "Experience does not bring anybody down from a rope.", "L’expérience ne fait descendre personne d’une corde.";
    DownAndFine, "After ten minutes in the harness the worker is on the ground and says that nothing hurts.", "Après dix minutes dans le harnais, la personne est au sol et dit n’avoir mal nulle part.";
        "Medical help all the same, and somebody stays until it comes.", "Faire voir la personne par un soignant quand même, et quelqu’un reste auprès d’elle.";
        "A rest in the shade, then back to work.", "Un repos à l’ombre, puis retour au travail.";
        "Send the worker home for the day.", "Renvoyer la personne chez elle pour la journée.";
        "What hanging and a sudden stop do can show hours later.", "Les effets de la suspension et d’un arrêt brusque peuvent apparaître des heures plus tard.";
        "If the worker is alone at home, nobody sees what shows later.", "Si la personne est seule chez elle, personne ne verra ce qui se montre plus tard.";
    GearAfter, "The harness, lanyard, grab, rope and anchor that caught the fall look fine.", "Le harnais, le cordon, le coulisseau, la corde et l’ancrage qui ont arrêté la chute ont l’air intacts.";
        "Take all of it out of service and tag it, the anchor with its fasteners too; a competent person or the maker judges.", "Retirer tout du service et l’étiqueter, l’ancrage et ses attaches aussi; une personne compétente ou le fabricant décide.";
        "Use it again: it has just proved itself.", "S’en servir de nouveau : il vient de faire ses preuves.";
        "Change the absorber and go on with the rest.", "Changer l’absorbeur et garder le reste.";
        "What a fall does to fibres and metal cannot be seen.", "Ce qu’une chute fait aux fibres et au métal ne se voit pas.";
        "Rope, grab, connectors, harness and anchor took the same force as the absorber.", "La corde, le coulisseau, les connecteurs, le harnais et l’ancrage ont pris la même force que l’absorbeur.";
    WhyItHappened, "Everybody is well again. The wall is not finished.", "Tout le monde va bien. Le mur n’est pas fini.";
        "Stop, report, find out why, and teach again before work goes on.", "Arrêter, déclarer, chercher la cause et former de nouveau avant de reprendre.";
        "Finish the wall, then talk about it in the evening.", "Finir le mur, puis en parler le soir.";
        "Tell the worker to be more careful.", "Dire à la personne de faire plus attention.";
        "What led to this fall can lead to the next one before the evening.", "Ce qui a permis une glissade en permet une autre avant le soir.";
        "Being told to be careful changes neither ladder, anchor nor grab.", "Faire plus attention ne change ni l’échelle, ni l’ancrage, ni le coulisseau.";
}

texts! {
    /// What a piece of the drop or of the energy is called.
    Piece::label;
    FreeFall, "free fall", "chute libre";
    Absorber, "absorber", "absorbeur";
    Grab, "grab slides", "coulisseau glisse";
    Rope, "rope", "corde";
    Harness, "harness", "harnais";
    Body, "body, house, ladder", "corps, maison, échelle";
    Room, "room left", "dégagement restant";
    Edge, "roof’s edge", "bord du toit";
    Moving, "still moving", "encore en mouvement";
}

texts! {
    /// A change on a button.
    Change::short;
    Framing, "Into the framing", "Dans la charpente";
    Rated, "A rated anchor", "Un ancrage à charge nominale";
    RopeEnd, "A stop at the rope’s end", "Un arrêt en bout de corde";
    NoSlack, "Take the slack out", "Reprendre le mou";
    PadEdge, "Pad the edge", "Protéger le bord";
    GrabUp, "Raise the grab", "Monter le coulisseau";
    ArrowUp, "Turn it over", "Retourner le coulisseau";
    BoltTight, "Tighten the bolt", "Serrer le boulon";
    LatchClosed, "Close the latch", "Fermer le loquet";
    WithAbsorber, "Use an absorber", "Prendre un absorbeur";
    ShortLanyard, "A shorter link", "Un cordon plus court";
    ClipIn, "Clip in", "Accrocher le cordon";
    TieLadder, "Tie the ladder", "Attacher l’échelle";
    StandInLine, "Stand between the rails", "Rester entre les montants";
    HarnessSnug, "Snug the harness", "Ajuster le harnais";
    SoundGear, "Change the worn gear", "Changer le matériel usé";
    LadderFoot, "Set the ladder’s foot", "Replacer le pied d’échelle";
    RescueWritten, "Write the rescue plan", "Écrire le plan de sauvetage";
    CompetentChooser, "Ask a competent person", "Demander à une personne compétente";
}
