//! Texts in both languages side by side: those of the bench's handles and houses, and those of the
//! rooms. Two tables, because the page's two modules each carry only what they show.

use super::Lang;
use serde::{Deserialize, Serialize};

/// Something with a text in both languages.
pub trait Worded: Copy + Send + Sync + 'static {
    /// The text.
    fn words(self, lang: Lang) -> &'static str;
    /// The term that a place's own rules use for the same thing, where they have one.
    fn in_place(self, _place: &str) -> Self {
        self
    }
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
                match (self, lang) {
                    $(($table::$name, Lang::En) => $en, ($table::$name, Lang::Fr) => $fr,)*
                }
            }
        }
    };
}

words! {
    /// Texts of the bench's handles and houses.
    Bench;
    HandHeading, "Take hold of a part", "Prendre une pièce en main";
    HandWorker, "Worker", "Personne";
    HandHelp, "Drag a ringed part in the drawing, or use the buttons.", "Faites glisser une pièce cerclée dans le dessin, ou utilisez les boutons.";
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
    StrapsUp, "Tighten the straps", "Serrer les sangles";
    StrapsSlack, "Loosen the straps", "Desserrer les sangles";
    TieLadder, "Tie the ladder at the top", "Attacher l’échelle en haut";
    UntieLadder, "Untie the ladder", "Détacher l’échelle";
    SwapGround, "Move it off the framing", "La fixer hors de la charpente";
    SwapFraming, "Move it onto the framing", "La fixer dans la charpente";
    ClimbNote, "Climbing leaves the grab where it is on the rope.", "Quand la personne monte, le coulisseau reste où il est sur la corde.";
    Clipped, "clipped in", "accroché";
    NotClipped, "not clipped", "pas accroché";
    ClipLabel, "Clipped to the D-ring", "Accroché à l’anneau en D";
    ClipYes, "yes", "oui";
    ClipNo, "no", "non";
    LensGrab, "The grab close up: arrow {arrow}, latch {latch}, bolt {bolt}.", "Le coulisseau de près : flèche {arrow}, loquet {latch}, boulon {bolt}.";
    LensBack, "The harness from behind: lanyard {clip}, straps {straps}.", "Le harnais de dos : cordon {clip}, sangles {straps}.";
    LensFoot, "The ladder’s foot: {angle} from the ground, top {tied}.", "Le pied de l’échelle : {angle} depuis le sol, haut {tied}.";
    LensAnchor, "The anchor close up: {kind}.", "Le point d’ancrage de près : {kind}.";
    HouseHeading, "House", "Maison";
    HouseHint, "Each house changes how a fall goes. Choosing one also moves ladder and worker.", "Chacune change la chute. Si vous en choisissez une, l’échelle et la personne se déplacent aussi.";
    HouseBungalow, "Bungalow", "Plain-pied";
    HouseTwoStorey, "Two storeys, deck", "Deux étages, terrasse";
    HouseWalkOut, "Sloping ground", "Sol en pente";
    HouseCape, "Steep roof, dormers", "Toit raide, lucarnes";
    HouseTallGable, "Tall gable, chimney", "Haut pignon, cheminée";
    BackToSetUp, "Back to the set-up", "Revenir au montage";
    AfterTheStop, "After the stop: the rescue", "Après l’arrêt : le sauvetage";
    MarkFor, "The mark is for: {title}.", "Ce symbole signale : {title}.";
    CameByLink, "This set-up came by a link or from a practice page. Yours is kept.", "Ce montage vient d’un lien ou d’un exercice. Le vôtre est conservé.";
    NotKeptYet, "This set-up is not kept yet: change something, or keep it.", "Ce montage n’est pas encore conservé : changez quelque chose, ou gardez-le.";
    BackToMine, "Back to mine", "Revenir au mien";
    KeepThisOne, "Keep this one instead", "Garder plutôt celui-ci";
    UpdateReady, "A new version is ready. What you made stays.", "Une nouvelle version est prête. Ce que vous avez fait reste.";
    UpdateReload, "Reload", "Recharger";
    FaultTooLarge, "It is over 1 MB; a set-up is far smaller.", "Il dépasse 1 Mo; un montage est bien plus petit.";
    FaultNotText, "It cannot be read as text.", "Il ne peut pas être lu comme du texte.";
    FaultNotASetUp, "It is not a set-up.", "Ce n’est pas un montage.";
    FaultRecords, "It is a file of records: open it under Crew.", "C’est un fichier de fiches : ouvrez-le sous Équipe.";
    FaultCut, "It ends too early: save or send it again.", "Il s’arrête trop tôt : enregistrez-le ou envoyez-le de nouveau.";
    FaultBroken, "It is damaged.", "Il est abîmé.";
    FaultNewer, "It was made by a newer version: reload this page while you have a network, then open it again.", "Il a été fait par une version plus récente : rechargez cette page avec un réseau, puis rouvrez-le.";
    FaultUnknownField, "It holds something that a set-up does not have.", "Il contient quelque chose qu’un montage n’a pas.";
    FaultWrongValue, "It holds a value that does not fit.", "Il contient une valeur qui ne convient pas.";
    FaultOutOfRange, "One of its numbers or dates is outside what can be entered here.", "Un de ses nombres ou une de ses dates sort de ce qui peut être saisi ici.";
    FaultAt, "For whoever made it: {place}.", "Pour qui l’a fait : {place}.";
    FaultLine, "line {line}, column {column}", "ligne {line}, colonne {column}";
    ChimneyCaution, "WARNING: a chimney is not built to be pulled at. Only where a competent person has looked at it, with a sling rated for it; never the line hooked back on itself.", "AVERTISSEMENT : une cheminée n’est pas bâtie pour qu’on tire dessus. Seulement si une personne compétente l’a examinée, avec une élingue à charge nominale; jamais la corde raccrochée sur elle-même.";
    WireCaution, "DANGER: before anything goes up near a wire, ask its owner what it carries. Carry ladders lying down. Brush, pole and gutter reach further than you.", "DANGER : avant de monter quoi que ce soit près d’un fil, demandez à l’exploitant sa tension. Portez les échelles couchées. Pinceau, manche et gouttière vont plus loin que vous.";
    RulesHere, "What this place asks", "Ce que ce règlement demande";
    RulesHint, "Each line shows its source and where it was read. Anything from memory must be looked up before anybody relies on it.", "Chaque ligne avec sa source, et le texte où elle a été lue. Vérifiez ce qui est de mémoire avant de vous y fier.";
    UpToVolts, "up to {kv} kV", "jusqu’à {kv} kV";
    WordsHeading, "What is this? Words of the trade", "Qu’est-ce que c’est? Les mots du métier";
    LimitTriggerHeight, "Protection required from", "Protection exigée à partir de";
    LimitTriggerHeightLadder, "On a portable ladder from", "Sur une échelle portative à partir de";
    LimitBodyForce, "Force on the body", "Force sur le corps";
    LimitFreeFall, "Free fall", "Chute libre";
    LimitStoppingDistance, "Distance to stop, without the rope’s stretch", "Distance d’arrêt, sans l’allongement de la corde";
    LimitAnchor, "Anchor", "Point d’ancrage";
    LimitAnchorWithAbsorber, "Anchor, with an absorber", "Point d’ancrage, avec absorbeur";
    LimitLadderFootLeast, "Ladder’s foot out, least", "Pied de l’échelle, écart le plus petit";
    LimitLadderFootMost, "Ladder’s foot out, most", "Pied de l’échelle, écart le plus grand";
    LimitClearanceReserve, "Room kept in reserve", "Place gardée en réserve";
    LimitAnchorFactor, "Anchor, times the most the system can pull", "Point d’ancrage, en fois le plus que le système peut tirer";
    LimitAbsorberExtension, "Tear-out of the absorber", "Déploiement de l’absorbeur";
    LimitArrestDistance, "From lock to stop, in the type test", "Arrêt entier à l’essai de type";
    LimitTrainingYears, "Training valid, years", "Formation valable, années";
    LimitWrittenPlanHeight, "Written plan from", "Plan écrit à partir de";
    LimitAnchorOffset, "Along the wall from the anchor", "Le long du mur depuis l’ancrage";
    LimitAnchorLean, "Slant of the rope", "Inclinaison de la corde";
    LimitApproachDistance, "Distance from a power line", "Distance d’une ligne électrique";
    LimitApproachUnknown, "Distance until its owner has said what it carries", "Distance tant que l’exploitant n’a pas dit la tension";
    LimitGrabLink, "Link on a rope grab", "Cordon sur un coulisseau";
    LimitRescueMinutes, "Down after a stop, minutes", "En bas après un arrêt, minutes";
    LimitLadderTolerance, "Measuring tolerance of the foot", "Tolérance de mesure du pied";
    LimitRailsPastLanding, "Rails past a landing", "Montants au-delà d’un palier";
    DutyRescueWritten, "A rescue procedure in writing", "Une procédure de sauvetage écrite";
    DutyRescuePlanned, "A rescue planned before use", "Un sauvetage prévu avant usage";
    DutyAnchorByCompetentPerson, "The anchor chosen by a competent person", "Un ancrage choisi par une personne compétente";
    DutyNoKnots, "No knots along the lifeline", "Pas de nœuds sur la corde d’assurance";
    DutyGearWithdrawn, "Faulty gear out of service", "Matériel défectueux retiré";
    DutyTrainingRecord, "A record of training", "Un registre de formation";
    DutyMethodOrder, "The order of methods", "L’ordre des méthodes";
    DutyLadderExempt, "No protection asked for on a portable ladder", "Pas de protection exigée sur une échelle portative";
    DutyLadderConditions, "Conditions of its own on a portable ladder", "Des conditions propres à l’échelle portative";
    DutyAbsorberRequired, "An energy absorber", "Un absorbeur d’énergie";
    DutyLineReachesGround, "The line reaches the ground or a level nobody can fall from", "La corde va jusqu’au sol ou à un niveau d’où personne ne peut tomber";
    DutyOnePersonALine, "One person to a line", "Une personne par corde";
    DutyEdgeProtected, "The line kept from sharp edges", "La corde protégée des arêtes vives";
    DutyInspectEachUse, "Gear looked over before each use", "Matériel inspecté avant chaque usage";
    DutyOutAfterFall, "Gear out of service after a fall", "Matériel retiré après une chute";
    DutyLadderSecured, "The ladder tied or held", "L’échelle attachée ou tenue";
    DutyRescueDrill, "Rescue practised, its gear on the site", "Sauvetage exercé, matériel sur place";
    DutyRetrain, "Taught again when there is reason to", "Formation refaite quand il y a lieu";
    DutyNoMetalLadder, "No metal ladder near electric lines", "Pas d’échelle de métal près des lignes électriques";
    DutyShortLink, "A short link on a rope grab", "Un cordon court sur un coulisseau";
    WordAnchor, "Anchor", "Point d’ancrage";
    ToldAnchor, "What the lifeline is tied to.", "Ce à quoi la corde est attachée.";
    WordLifeline, "Lifeline", "Corde d’assurance";
    ToldLifeline, "The rope that hangs from the anchor, past the worker, to the ground.", "La corde qui pend de l’ancrage, passe la personne et va au sol.";
    WordLanyard, "Lanyard", "Cordon d’assujettissement";
    ToldLanyard, "The short link between the grab and the harness.", "Le lien court entre le coulisseau et le harnais.";
    WordDring, "D-ring", "Anneau en D";
    ToldDring, "The ring on the back of the harness, between the shoulder blades.", "L’anneau au dos du harnais, entre les omoplates.";
    WordKn, "kN", "kN";
    ToldKn, "A kilonewton: about the weight of 100 kg.", "Un kilonewton : à peu près le poids de 100 kg.";
    WordRafter, "Rafter, truss, sheathing", "Chevron, ferme, revêtement";
    ToldRafter, "The beams under the roof, the frames they can be part of, and the boards on top.", "Les poutres sous le toit, les cadres dont elles peuvent faire partie, et les panneaux dessus.";
    WordBreaking, "Breaking load", "Charge de rupture";
    ToldBreaking, "The load at which it breaks.", "La charge à laquelle ça rompt.";
    WordWorking, "Working load, within allowable stress", "Charge admissible, sous contrainte admissible";
    ToldWorking, "What it can carry day in, day out: a fraction of the breaking load.", "Ce que ça peut porter tous les jours : une fraction de la charge de rupture.";
    WordTwenty, "One in twenty", "Un sur vingt";
    ToldTwenty, "Of twenty made alike, about one is this weak or weaker.", "Sur vingt pareils, le plus faible rompt à peu près là.";
    WordAbsorber, "Energy absorber", "Absorbeur d’énergie";
    ToldAbsorber, "A folded strap that tears open in a hard stop and makes the stop softer. It works once.", "Une sangle pliée qui se déchire dans un arrêt dur et l’adoucit. Elle sert une fois.";
    WordGrab, "Rope grab", "Coulisseau";
    ToldGrab, "The clamp that slides along the lifeline and locks when it is pulled.", "La pince qui glisse sur la corde et se bloque quand on tire. En Ontario, on dit aussi « coulisseau de sécurité ».";
    WordFreeFall, "Free fall", "Chute libre";
    ToldFreeFall, "How far one falls before the line is tight.", "De combien on tombe avant que la liaison se tende.";
    WordClearance, "Clearance", "Dégagement";
    ToldClearance, "The room that has to be free below.", "La place qu’il faut libre dessous.";
    WordEnergy, "Energy check", "Contrôle d’énergie";
    ToldEnergy, "The computer adds up where the energy of the fall went. If the sum is off, it shows no grade.", "L’ordinateur additionne où est passée l’énergie de la chute. Si le compte n’y est pas, il ne donne pas de note.";
    WordCompetent, "Competent person", "Personne compétente";
    ToldCompetent, "Somebody who knows the hazards and the rules, and may stop the work.", "Quelqu’un qui connaît les dangers et les règles, et peut arrêter le travail.";
    WordQualified, "Qualified person", "Personne qualifiée";
    ToldQualified, "An engineer, or somebody with similar proof of what they know.", "Un ingénieur, ou quelqu’un avec ce genre de preuve.";
    WordArrest, "Fall arrest system", "Système d’arrêt de chute";
    ToldArrest, "The five parts that stop a fall once it has begun.", "Les cinq éléments qui arrêtent une chute déjà commencée. Terme du Québec; le règlement de l’Ontario dit « dispositif antichute ».";
    WordRestraint, "Travel restraint system", "Système de limitation de déplacement";
    ToldRestraint, "A line so short that you cannot reach the edge to fall from it.", "Une liaison si courte qu’on n’atteint pas le bord. Terme du Québec; le règlement de l’Ontario dit « limiteur de déplacement ».";
    Neighbours, "A tumble down a roof is no one number: {count} falls that differ by 10 g or 1 mm gave {low} to {high} on the body{room}. The worse end is judged.", "Une culbute sur un toit ne donne pas un seul chiffre : {count} chutes qui diffèrent de 10 g ou de 1 mm ont donné de {low} à {high} sur le corps{room}. C’est le pire qui est jugé.";
    NeighboursRoom, " and {near} to {far} of room", " et de {near} à {far} de dégagement";
    NeighboursOther, "{other} of them ended otherwise; the worst is shown.", "{other} d’entre elles ont fini autrement; la pire est montrée.";
    SplitNote, "More than seven of these in one row of a 38 mm rafter can split it: bore the holes first or set two staggered rows (from memory of the wood design standard’s commentary).", "Plus de sept de ces clous sur un rang peuvent fendre un chevron de 38 mm : percez d’abord, ou posez deux rangs en quinconce (de mémoire, commentaire de la norme de calcul du bois).";
    LeanNote, "The rope leans {lean} out of the rafter’s plane: the figure for a plate on one rafter is not computed for that. In tests, roof trusses pulled sideways gave way in their framing and bracing unless several were tied together (Morris, Hindman and others, J. Archit. Eng. 23 (3), 2017; read in its abstract).", "La corde penche de {lean} hors du plan du chevron : le chiffre d’une plaque sur un seul chevron n’est pas calculé pour cela. Dans des essais, des fermes tirées de côté ont cédé par leur charpente et leur contreventement, sauf si plusieurs étaient liées (Morris, Hindman et autres, J. Archit. Eng. 23 (3), 2017; lu dans le résumé).";
    FirstThat, "Put right first what led to it: {title}.", "Corrigez d’abord ce qui y a mené : {title}.";
    KeysChoosing, "Before the fall, with the drawing in focus: arrow keys go from part to part, Enter picks one up and puts it down, arrow keys move it (Shift finer, Page keys coarser), Escape puts it back.", "Avant la chute, le dessin étant actif : les flèches vont d’une pièce à l’autre, Entrée la prend en main et la pose, les flèches la déplacent (Maj plus fin, Page plus large), Échap la remet.";
}

words! {
    /// Texts of the rooms.
    Room;
    KnowHeading, "How we know", "D’où viennent nos chiffres";
    KnowLead, "Published drops and figures, each beside what this program gives for the same thing. Every row is computed again before a version is let out. Most sources were read in an abstract or a summary only, and each row says so.", "Des chutes et des chiffres publiés, chacun à côté de ce que ce programme donne pour la même chose. Chaque ligne est recalculée avant chaque version. La plupart des sources n’ont été lues qu’en résumé; chaque ligne le dit.";
    KnowPublished, "Published: {text}", "Publié : {text}";
    KnowOurs, "Here: {value}", "Ici : {value}";
    KnowAgrees, "agrees", "concorde";
    KnowNot, "does not agree", "ne concorde pas";
    KnowNoFigure, "no figure to hold it against", "pas de chiffre pour comparer";
    KnowText, "read in the text", "lu dans le texte";
    KnowAbstract, "read in its abstract", "lu dans le résumé";
    KnowMemory, "from memory, not read", "de mémoire, non lu";
    KnowSummary, "read in a summary", "lu dans un résumé d’un tiers";
    KnowOpen, "Looked for and not read, because their tables were out of reach: drops on back-up devices and with jointed dummies (HSE contract research reports 364 of 2001 and 411 of 2002), guided arresters wet and iced (Baszczynski, 2004), drops of lanyards and grabs (NBSIR 76-1146, 1977), anchors on truss roofs (Morris and Hindman, 2013 to 2017). Against an independent calculation of the same bodies and the same line, falls without contact agree to 0.03 % in force.", "Cherchés mais non lus, leurs tableaux étant hors d’atteinte : chutes sur dispositifs de secours et avec mannequins articulés (rapports HSE 364 de 2001 et 411 de 2002), coulisseaux mouillés et glacés (Baszczynski, 2004), chutes de cordons et de coulisseaux (NBSIR 76-1146, 1977), ancrages sur toits à fermes (Morris et Hindman, 2013 à 2017). Comparées à un calcul indépendant des mêmes corps et de la même liaison, les chutes sans contact concordent à 0,03 % en force.";
    NoteEndedElsewhere, "This form was finished or dropped in another tab. One sitting gives one record: it is on the crew’s list.", "Ce questionnaire a été terminé ou abandonné dans un autre onglet. Une séance donne une seule fiche : elle est dans la liste de l’équipe.";
    NoteNoEngine, "The part that draws and marks the questions did not answer. Your answers are kept: try again, with a network if you have one.", "La partie qui tire et corrige les questions n’a pas répondu. Vos réponses sont conservées : réessayez, avec un réseau si possible.";
    NoteNotSealed, "The record could not be sealed. Your answers are kept on this device.", "La fiche n’a pas pu être scellée. Vos réponses sont conservées sur cet appareil.";
    CrewAdded, "{n} added to the crew.", "{n} ajoutés à l’équipe.";
    CrewRemoved, "{who} is off the list. Paste the name to put it back.", "{who} n’est plus dans la liste. Collez le nom pour l’y remettre.";
    CrewTooMany, "{n} left out: the list holds 500 names.", "{n} laissés de côté : la liste contient 500 noms au plus.";
    CrewNotKept, "Not added: this device would not keep it.", "Pas ajouté : cet appareil ne l’a pas conservé.";
    CrewUnread, "{n} records on this device cannot be read by this version. They are kept, and go into the file of all records.", "{n} fiches de cet appareil ne peuvent pas être lues par cette version. Elles sont conservées et vont dans le fichier de toutes les fiches.";
    CrewShowAll, "Show all {n}", "Tout afficher ({n})";
    ImportLeftOut, "Left out: {range} with a value that is not possible, {unread} that cannot be read.", "Écartées : {range} avec une valeur impossible, {unread} illisibles.";
    ImportNotKept, "Nothing was taken in: this device would not keep it.", "Rien n’a été pris : cet appareil ne l’a pas conservé.";
    RefusedUnreadable, "Not opened: the file cannot be read as text. Nothing has changed.", "Pas ouvert : le fichier ne peut pas être lu comme du texte. Rien n’a changé.";
    DoubtRange, "This record holds a value that is not possible.", "Cette fiche contient quelque chose d’impossible.";
    MarkReplayed, "form made again: the answers fit it", "refaite : ses réponses correspondent à son questionnaire";
    MarkWaiting, "form not yet made again", "pas encore refaite";
    SheetVersionsTold, "app {app} · physics / physique {physics} · rules / règles {rules} · quiz / questionnaire {quiz}", "app {app} · physics / physique {physics} · rules / règles {rules} · quiz / questionnaire {quiz}";
    MoreHeading, "More practice", "Autres exercices";
    DayName, "A working day", "Une journée de travail";
    DayLine, "Eight jobs round one house. Move, look again, come down in time.", "Huit tâches autour d’une maison. Se déplacer, revérifier, descendre à temps.";
    FramingName, "Find the framing", "Trouver la charpente";
    FramingLine, "Tap the roof, mark the rafters, drive the anchor’s fasteners.", "Taper le toit, marquer les chevrons, clouer l’ancrage.";
    RescueName, "After the stop", "Après l’arrêt";
    RescueLine, "A worker hangs. The clock runs. Who does what?", "Une personne est suspendue. Le temps passe. Qui fait quoi?";
    BackToList, "All practice", "Tous les exercices";
    ClearProgress, "Clear lessons done and endings found", "Effacer les leçons faites et les fins trouvées";
    ClearedProgress, "Cleared.", "Effacé.";
    Assumed, "(assumed)", "(supposé)";
    OneFall, "The fall. Move through it with the slider.", "La chute, à parcourir avec le curseur.";
    PlayOne, "Play, four times slower", "Lancer, quatre fois plus lentement";
    HangsStill, "The worker at the end of the fall, hanging.", "La personne à la fin de la chute, suspendue.";

    FramingLead, "Under the shingles stand rafters 1½ in (38 mm) thick, 16 or 24 in (406 or 610 mm) apart. Tap to hear where, mark them, then drive the plate’s six fasteners.", "Sous les bardeaux, des chevrons de 38 mm (1½ po) d’épaisseur, à 406 ou 610 mm (16 ou 24 po). Tapez pour entendre où, marquez-les, puis clouez les six attaches de la plaque.";
    FramingRoof, "Stretch of roof seen from above, {width} wide. Hammer at {at}.", "Bande de toit vue de dessus, large de {width}. Marteau à {at}.";
    FramingAt, "Hammer, from the left edge", "Marteau, depuis le bord gauche";
    FramingTap, "Tap", "Taper";
    FramingMark, "Chalk mark", "Marque à la craie";
    FramingStrike, "Strike the fastener", "Frapper l’attache";
    FramingPull, "Pull it out", "L’arracher";
    FramingSeal, "Seal the hole", "Boucher le trou";
    FramingSound, "Sound", "Son";
    SoundSolid, "solid", "plein";
    SoundBetween, "in between", "entre les deux";
    SoundHollow, "hollow", "creux";
    TapTold, "At {at}: {sound}.", "À {at} : {sound}.";
    DriveTold, "Fastener {n}, {done} of 3 blows: holds {force} against being pulled out (on average).", "Attache {n}, {done} coup(s) sur 3 : tient {force} à l’arrachement (moyenne).";
    DriveNone, "No fastener started.", "Aucune attache commencée.";
    HomeTold, "Driven all the way in: {n} of 6.", "Enfoncées : {n} sur 6.";
    PulledTold, "Pulled. The hole at {at} is open to the rain.", "Arrachée. Le trou à {at} reste ouvert à la pluie.";
    SealedTold, "Hole sealed (common practice).", "Trou bouché (pratique courante).";
    FramingDone, "Look under the roof", "Regarder sous le toit";
    FramingFound, "In the framing: {hits}. In the sheathing alone: {misses}. Not all the way in: {proud}. Open holes: {open}.", "Dans la charpente : {hits}. Dans le revêtement seul : {misses}. Pas enfoncées : {proud}. Trous ouverts : {open}.";
    FramingMarks, "Chalk marks over a rafter: {on} of {all}.", "Marques de craie sur un chevron : {on} sur {all}.";
    FramingFar, "The far slope is taken to be like this one.", "L’autre versant est supposé pareil.";
    FramingFall, "Try a fall on this anchor", "Essayer une chute sur cet ancrage";
    FramingAgain, "Another roof", "Un autre toit";
    FramingNothing, "No fastener is all the way in, so there is no anchor.", "Rien n’est enfoncé : il n’y a pas d’ancrage.";
    FramingKey, "● solid, ◉ in between, ○ hollow, | chalk, ▼ fastener, ✕ open hole", "● plein, ◉ entre les deux, ○ creux, | craie, ▼ attache, ✕ trou ouvert";

    RescueLead, "The fall was stopped. Now somebody has to get the worker down, with what the crew planned.", "La chute est arrêtée. Il faut maintenant descendre la personne, avec ce que l’équipe a prévu.";
    RescueOrdinary, "Nobody is left hanging in your set-up, so here is the standard one.", "Dans votre montage, personne ne reste suspendu; voici donc le montage ordinaire.";
    RescuePlanIs, "Rescue plan: {plan}", "Plan de sauvetage : {plan}";
    RescueWhere, "D-ring {height} above the ground, {grasp} from the nearest rung or eave.", "Anneau en D à {height} du sol, à {grasp} du barreau ou de l’avant-toit le plus proche.";
    RescueClock, "Minutes since the stop: {minute}", "Minutes depuis l’arrêt : {minute}";
    RescueGuide, "Aim to be with the worker within {contact} minutes (ANSI/ASSP Z359.2 recommends that; from an account). Plan to have them down in {plan} (Hsiao and others 2012). In a laboratory healthy volunteers hung still from the back ring: nineteen in twenty lasted {most} minutes, half had to be let down by {half} (Turner and others 2008). Relief straps and moving the legs help.", "Visez à être auprès de la personne en {contact} minutes (ANSI/ASSP Z359.2 le recommande; d’après un compte rendu). Prévoyez de l’avoir descendue en {plan} (Hsiao et coll. 2012). En laboratoire, des volontaires en santé pendus immobiles par l’anneau dorsal : dix-neuf sur vingt ont tenu {most} minutes, la moitié a dû être descendue avant {half} (Turner et coll. 2008). Les sangles de soulagement aident, et bouger les jambes aussi.";
    RescueOwn, "This place: down within {limit} minutes.", "Ici : en bas en {limit} minutes au plus.";
    RescueOwnMet, "Down at minute {down}: within the {limit} minutes of this place.", "En bas à la minute {down} : dans les {limit} minutes exigées ici.";
    RescueOwnNot, "Down at minute {down}: not within the {limit} minutes of this place.", "En bas à la minute {down} : pas dans les {limit} minutes exigées ici.";
    RescueCaution, "CAUTION: practise a rescue with a weight, never with a person hanging. This drill is only words and times. Your rescue plan and trained people say who may rescue, and how.", "ATTENTION : exercez un sauvetage avec un poids, jamais avec une personne suspendue. Cet exercice ne montre que des mots et des durées; le plan et des personnes formées disent qui peut sauver, et comment.";
    FramingCaution, "WARNING: this is a drawing of a site-nailed plate. Its maker and a competent person say whether one may be used, by whom and with which fasteners. Whoever sets it is protected another way: a lift, a scaffold, or a line over the ridge tied on the far side. When you step from ladder to roof, stay clipped to something the whole way: a second lanyard, or the grab moved over the eave before you let go.", "AVERTISSEMENT : ceci est un dessin d’une plaque clouée sur place. Sa notice et une personne compétente disent si elle peut servir, qui peut s’en servir et avec quelles attaches. La personne qui la pose est protégée autrement : nacelle, échafaudage, ou corde par-dessus le faîte attachée de l’autre côté. Quand vous passez de l’échelle au toit, restez accroché tout du long : un deuxième cordon, ou le coulisseau passé par-dessus l’avant-toit avant de lâcher.";
    RescueAsk, "What next?", "Et ensuite?";
    RescueCost, "{minutes} min (assumed)", "{minutes} min (supposé)";
    StepCall, "Call the emergency services", "Appeler les secours";
    StepStraps, "Talk to the worker; feet into the relief straps", "Parler à la personne; pieds dans les sangles de soulagement";
    StepClimb, "The worker climbs back alone", "La personne remonte sans aide";
    StepLadder, "Raise a ladder to the worker, take the weight on a second line, bring the worker down", "Dresser une échelle jusqu’à la personne, prendre le poids sur une deuxième corde, la descendre";
    StepLower, "Lift the load off the grab with the rescue kit and lower the worker", "Soulever la charge du coulisseau avec la trousse de sauvetage et descendre la personne";
    StepHaul, "Pull the worker up by hand, two people", "Tirer la personne à la main, à deux";
    StepWait, "Wait for the fire service", "Attendre les pompiers";
    HinderShort, "The ladder is {value} too short.", "L’échelle est trop courte de {value}.";
    HinderHeavy, "Pulling the worker up takes {value}; two people manage about {pull} (assumed).", "Tirer la personne vers le haut demande {value}; à deux on tire environ {pull} (supposé).";
    HinderGone, "The ladder is not there any more: it slid or tipped in the fall.", "L’échelle n’est plus là : elle a glissé ou basculé dans la chute.";
    HinderRung, "No rung is under the boots: the lowest is {value} over them.", "Aucun barreau sous les bottes : le plus bas est à {value} au-dessus.";
    HinderHurt, "The worker was struck or stopped too hard to be counted on (assumed: a blow of 4 m/s, or 4 kN).", "La personne a été frappée ou arrêtée trop fort pour qu’on compte sur elle (supposé : un choc à 4 m/s, ou 4 kN).";
    HinderKit, "A locked grab does not let go under load, and nothing here lifts it off: the kit comes with a plan in writing.", "Un coulisseau bloqué ne lâche pas sous charge, et rien ici ne la soulève : la trousse vient avec un plan écrit.";
    HinderAlone, "Somebody is there, but one person on a ladder cannot take {value} off the rope. A second line or the kit was not planned.", "Quelqu’un est là, mais une personne sur une échelle ne peut pas ôter {value} de la corde. Aucune deuxième corde ni trousse n’était prévue.";
    HinderReach, "Nothing to hold: the nearest rung or eave is {value} away.", "Rien à saisir : le barreau ou l’avant-toit le plus proche est à {value}.";
    HinderNobody, "Nobody was called. Five minutes are gone.", "Personne n’a été appelé. Cinq minutes de perdues.";
    StepDone, "Done at minute {minute}.", "Fait à la minute {minute}.";
    RescueDown, "Down at minute {down}; somebody was there at minute {reached}.", "En bas à la minute {down}; quelqu’un était là à la minute {reached}.";
    RescueInTime, "Reached within the {contact} minutes.", "Auprès de la personne dans les {contact} minutes.";
    RescueLate, "Later than the {contact} minutes. A plan read before the climb has the kit at hand, and what does not work costs time.", "Plus tard que les {contact} minutes : ce qui ne marche pas prend aussi du temps. Avec un plan lu avant de monter, la corde est sous la main.";
    RescueNoCall, "Nobody called the emergency services. Anyone who hung needs to be looked at.", "Personne n’a appelé les secours. Une personne qui est restée suspendue doit être examinée.";
    StrapsFrom, "Feet in the relief straps from minute {minute}: moving the legs keeps the blood going (common practice).", "Pieds dans les sangles dès la minute {minute} : les jambes font circuler le sang (pratique courante).";
    StrapsNone, "No relief straps were used. Hanging still is what does the harm.", "Pas de sangles de soulagement; ce qui nuit, c’est de rester immobile.";
    RescueAfter, "Afterwards: keep watch, withdraw the gear, write down what happened.", "Ensuite : surveiller, retirer le matériel, noter ce qui s’est passé.";
    RescueAgain, "Again", "Recommencer";

    DayLead, "One working day in a few minutes. Before each job say what you do; each thing takes time. Bolt and latch work loose, and at some point a slip may come. If it does, the set-up of that minute is the one that falls.", "Une journée en quelques minutes. Avant chaque tâche, dites ce que vous faites; tout prend du temps. Le boulon et le loquet se desserrent, et une glissade peut venir. La chute se fait avec le montage de cette minute-là.";
    DayStart, "Start the day", "Commencer la journée";
    DaySeed, "Number of the day", "Numéro de la journée";
    DayJob, "Job {n} of {all}: {task}", "Tâche {n} sur {all} : {task}";
    DayClock, "{time}, {weather}", "{time}, {weather}";
    TaskSoffit, "the soffit", "la sous-face de l’avant-toit";
    TaskFascia, "the fascia board", "la bordure de toit";
    TaskWindow, "a high window", "une fenêtre haute";
    TaskDormer, "a dormer’s side, from the roof", "la joue d’une lucarne, depuis le toit";
    DayWhere, "The work is {anchor} along the wall from the anchor and {ladder} from the ladder. The grab is {grab} above the D-ring.", "Le travail est à {anchor} de l’ancrage le long du mur et à {ladder} de l’échelle. Le coulisseau est à {grab} au-dessus de l’anneau en D.";
    LadderFar, "Too far to lean: the ladder is moved, {minutes} min.", "Trop loin pour se pencher : l’échelle est déplacée, {minutes} min.";
    DayBefore, "Before you start", "Avant de commencer";
    DoGrab, "Move the grab up", "Monter le coulisseau";
    DoLook, "Look at bolt and latch", "Vérifier boulon et loquet";
    DoLookAgain, "Look again after 15 minutes (common practice)", "Revérifier après 15 minutes (pratique courante)";
    DoLadder, "Move the ladder under the work", "Déplacer l’échelle sous le travail";
    DoAnchor, "Move the anchor over the work", "Déplacer l’ancrage au-dessus du travail";
    DoMinutes, "{minutes} min", "{minutes} min";
    DayWork, "Work, {minutes} minutes", "Travailler, {minutes} minutes";
    DayDown, "Come down for today", "Descendre pour aujourd’hui";
    DayLooked, "You looked: {found}.", "Vous avez vérifié : {found}.";
    DaySlip, "{time}: a slip. This is the set-up that fell.", "{time} : une glissade. Voici le montage qui est tombé.";
    DayHere, "The work is straight under the anchor, at the ladder. The grab is {grab} above the D-ring.", "Le travail est juste sous l’ancrage, à l’échelle. Le coulisseau est à {grab} au-dessus de l’anneau en D.";
    DaySwing, "The drawing shows a side view. But {offset} to the side of the anchor the rope runs at a slant, and the fall swings: {risk}.", "Le dessin montre la coupe. Mais à {offset} de l’ancrage la corde penche, et la chute part en balancier : {risk}.";
    DayOver, "The shift is over, no slip came.", "La journée est finie, aucune glissade n’est venue.";
    DayCame, "You came down after {n} jobs.", "Vous êtes descendu après {n} tâches.";
    DayWet, "It is wet: ladder feet and roofs grip less. You may also come down.", "C’est mouillé : l’échelle et le toit tiennent moins. Vous pouvez aussi descendre.";
    RiskHeading, "Minute by minute: how a slip would have ended", "Minute par minute : ce qu’une glissade aurait donné";
    RiskHeld, "stopped, nothing critical", "arrêtée, rien de critique";
    RiskOver, "stopped, but over a limit or hard into something", "arrêtée, mais au-delà d’une limite ou avec un choc";
    RiskStrikes, "down on something", "tombée sur quelque chose";
    RiskLetsGo, "the line lets go", "plus rien ne retient la personne";
    RiskNotGraded, "not graded", "non évaluée";
    RiskRow, "Job {n}, {from}, {minutes} min: {risk}", "Tâche {n}, {from}, {minutes} min : {risk}";
    RiskTotal, "{bad} of {all} minutes of work at risk.", "{bad} minutes de travail à risque sur {all}.";
    RiskWaiting, "Each minute is being worked out…", "Chaque minute est calculée…";
    CauseBolt, "bolt loose", "boulon desserré";
    CauseLatch, "latch open", "loquet ouvert";
    CauseGrab, "grab below the D-ring", "coulisseau resté bas";
    CauseSide, "{value} to the side of the anchor", "{value} à côté de l’ancrage";
    CauseLean, "leaning {value} out", "penché de {value}";
    CauseWet, "wet", "mouillé";
    DayAgain, "Another day", "Une autre journée";
    DaySame, "The same day again", "La même journée encore";
    SeeFall, "See this on the set-up page", "Voir ce montage";

    AlongAsk, "Two workers with the same gear, one under the anchor, one {offset} along the wall. Both slip. What is different for the second?", "Deux personnes avec le même matériel, l’une sous l’ancrage, l’autre à {offset} le long du mur. Les deux glissent. Qu’est-ce qui change pour la seconde?";
    AlongSame, "nothing much", "pas grand-chose";
    AlongLower, "ends lower and swings in fast", "finit plus bas et revient vite en balancier";
    AlongHigher, "ends higher: the rope is already tight", "finit plus haut : la corde est déjà tendue";
    AlongTold, "Ends {extra} lower, swings through under the anchor at {speed}, and keeps {room} of room ({straight} straight under it).", "Finit {extra} plus bas, passe sous l’ancrage à {speed} et garde {room} de dégagement ({straight} juste dessous).";
    AlongWay, "Front of the house: anchor, eave and the path of the D-ring from {offset}.", "La façade : ancrage, avant-toit et trajet de l’anneau en D depuis {offset}.";
}
