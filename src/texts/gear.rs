//! Texts of the rooms about the gear itself: the harness, connectors, up onto the roof, the gear list, the note.

use super::table::words;
use super::table::{Text, texts};
use crate::practice::harness::{Fault, Step};

words! {
    /// Texts of the rooms about the gear.
    Gear;
    GroupGear, "The gear on you", "L’équipement sur soi";
    Caution, "Prepares and refreshes. Read the instructions of the gear you wear; a competent person decides on your site.", "Prépare et rafraîchit. Lisez les instructions de l’équipement que vous portez; une personne compétente décide sur votre chantier.";
    HarnessName, "Put the harness on", "Mettre le harnais";
    HarnessVerb, "Put the harness on", "Mettez le harnais";
    HarnessState, "The harness as it is worn", "Le harnais tel qu’il est porté";
    HarnessLead, "Somebody pulled it on in a hurry. Put it right, in any order; drag a strap or use the buttons.", "On l’a enfilé en vitesse. Rajustez-le, dans l’ordre voulu; tirez une sangle ou prenez les boutons.";
    FindPart, "Makers’ patterns differ: find the same part on yours.", "Les modèles diffèrent : trouvez la même pièce sur le vôtre.";
    Front, "front", "devant";
    Back, "back", "dos";
    DoneYet, "done", "fait";
    NotYet, "not yet", "pas encore";
    Flat, "flat", "à plat";
    Twisted, "twisted", "vrillée";
    Closed, "closed", "fermée";
    Open, "open", "ouverte";
    TooHigh, "at the throat", "à la gorge";
    Tucked, "tucked", "rangés";
    Loose, "hanging", "pendants";
    Blades, "between the blades", "entre les omoplates";
    RingLow, "a hand lower", "une main plus bas";
    Waist, "at the waist", "à la taille";
    Aside, "over one blade", "sur une omoplate";
    LeftLeg, "Left leg", "Cuisse gauche";
    RightLeg, "Right leg", "Cuisse droite";
    SlackOf, "{what}: {cm} cm off the thigh", "{what} : à {cm} cm de la cuisse";
    Less, "Tighter", "Serrer";
    More, "Looser", "Relâcher";
    Another, "Look at another’s", "Regarder un autre";
    AnotherLead, "Another painter is about to climb. Mark each step at which something is not as it should be, or none, then say it.", "Un autre peintre va monter. Marquez chaque étape où quelque chose ne va pas, ou aucune, puis dites-le.";
    MarkIt, "Not as it should be", "Pas comme il faut";
    SayIt, "Say it", "Le dire";
    SaidRight, "That is what there was to find: {what}.", "C’est bien ce qu’il y avait à trouver : {what}.";
    SaidFine, "Nothing was wrong, and you said so.", "Rien n’était mal, et vous l’avez dit.";
    SaidOther, "There was to find: {what}. You marked: {said}.", "Il y avait à trouver : {what}. Vous avez marqué : {said}.";
    Nothing, "nothing", "rien";
    OwnAgain, "Back to mine", "Revenir au mien";
    LetGo, "Let go in it", "Se laisser tomber avec";
    ReadyToTry, "Let go at any moment: the same slip, rightly worn beside it.", "Laissez-vous tomber quand vous voulez : le même faux pas, bien porté à côté.";
    RightlyWorn, "A: as it should be", "A : comme il faut";
    AsWorn, "B: as it is worn", "B : tel qu’il est porté";
    AllRight, "Worn so, the harness did what it is made for: the trunk hangs {rest}° from upright.", "Porté ainsi, le harnais fait ce pour quoi il est conçu : le tronc pend à {rest}° de la verticale.";
    HangsMore, "Worn so, the trunk hangs {rest}° from upright; rightly worn, {other}°.", "Porté ainsi, le tronc pend à {rest}° de la verticale; bien porté, à {other}°.";
    SlidesMore, "The ring slides {slide} up the back; rightly worn, {other}.", "L’anneau glisse de {slide} vers le haut; bien porté, de {other}.";
    ComesDown, "For a moment the head is lower than the hips.", "Un instant, la tête est plus basse que les hanches.";
    SlipsOut, "Worn so, a person can slip out of it.", "Porté ainsi, on peut en glisser.";
    StillWrong, "Still to put right: {what}.", "Reste à corriger : {what}.";
    RowLean, "Trunk from upright, at rest", "Tronc, écart de la verticale, au repos";
    RowWorst, "Furthest, while held", "Au plus, pendant la retenue";
    RowSlide, "Ring slides up", "Glissement de l’anneau";
    RowRoom, "Room left", "Espace restant";
    RowForce, "Force on the body", "Force sur le corps";
    NotShown, "One of the two falls failed its own energy check, so nothing is shown of it.", "L’une des deux chutes échoue à son propre bilan d’énergie : rien n’en est montré.";
    PutRight, "Put it right", "Le corriger";
    HarnessNote, "Computed: lean, slide, force, room, by the same fall with the grab left 0.45 m low. Told only: that straps cut in, that a body can leave its harness. A ring over one blade changes nothing in a picture from the side. How far straps let the ring slide is assumed.", "Calculés : inclinaison, glissement, force, espace, par la même chute avec le coulisseau laissé 0,45 m trop bas. Seulement dits : que les sangles serrent, qu’un corps peut quitter son harnais. Un anneau sur une omoplate ne change rien de profil. La course de l’anneau est supposée.";
    HarnessSources, "Ring in the middle of the back near shoulder height: 29 CFR 1926.502(d)(17) (from memory). Flat hand, not a fist: common practice, not a law; your maker’s words go first. A low ring or chest strap lets a person fall out head first: a fall-protection textbook, 4th ed., p. 202 (read in a summary). Whoever hung: call for help, legs moving, down fast (OSHA bulletin 03-24-2004; read in a summary).", "Anneau au milieu du dos, près des épaules : 29 CFR 1926.502(d)(17) (de mémoire). La main à plat, pas le poing : pratique courante, pas une loi; la notice du fabricant passe d’abord. Un anneau ou une sangle de poitrine trop bas laissent tomber la tête la première : un manuel de protection antichute, 4e éd., p. 202 (lu dans un résumé). Quiconque est resté suspendu : appeler, bouger les jambes, descendre vite (bulletin OSHA 03-24-2004; lu dans un résumé).";
}

texts! {
    /// What the step is called.
    Step::label;
    LookOver, "Look it over", "Vérifier";
    ShakeOut, "Shake it out", "Secouer par l’anneau";
    Shoulders, "Shoulders", "Épaules";
    Chest, "Chest strap", "Sangle de poitrine";
    Legs, "Leg straps", "Sangles de cuisse";
    Snug, "Snug", "Ajuster";
    Tails, "Free ends", "Bouts libres";
    Ring, "Ring on the back", "Anneau dorsal";
    Other, "Somebody else looks", "Une autre personne vérifie";
}

texts! {
    /// What is done at the step.
    Step::says;
    LookOver, "webbing, stitching, metal, label", "sangles, coutures, métal, étiquette";
    ShakeOut, "by the ring, until the straps hang free", "jusqu’à ce que les sangles pendent librement";
    Shoulders, "like a vest, nothing twisted", "comme une veste, rien de vrillé";
    Chest, "across the middle of the chest", "au milieu de la poitrine";
    Legs, "round each thigh, one by one", "autour de chaque cuisse, une à la fois";
    Snug, "a flat hand fits, not a fist", "la main à plat passe, pas le poing";
    Tails, "under their keepers", "sous leurs passants";
    Ring, "between the shoulder blades", "entre les omoplates";
    Other, "front, back, every buckle", "devant, dos, chaque boucle";
}

texts! {
    /// What is wrong, in a few words.
    Fault::label;
    ChestOpen, "chest strap open", "sangle de poitrine ouverte";
    LegOpen, "leg strap open", "sangle de cuisse ouverte";
    LegSlack, "leg strap slack", "sangle de cuisse lâche";
    RingWaist, "ring at the waist", "anneau à la taille";
    RingLow, "ring too low", "anneau trop bas";
    RingAside, "ring over one blade", "anneau sur une omoplate";
    ChestHigh, "chest strap at the throat", "sangle de poitrine à la gorge";
    Twisted, "strap twisted", "sangle vrillée";
    NotLooked, "not looked over", "pas vérifié";
    TailsLoose, "free ends hanging", "bouts libres pendants";
    NotShaken, "not shaken out", "pas secoué";
    NotChecked, "nobody else looked", "personne d’autre n’a vérifié";
}

texts! {
    /// What it can do.
    Fault::does;
    ChestOpen, "Head down, the shoulder straps come off the shoulders and a person can slip out.", "Tête en bas, les bretelles quittent les épaules et l’on peut glisser dehors.";
    LegOpen, "Nothing holds from below: the harness rides up to the armpits.", "Rien ne retient par-dessous : le harnais remonte aux aisselles.";
    LegSlack, "The harness rides up before it holds: the fall is longer and the loop strikes the groin.", "Le harnais remonte avant de tenir : la chute s’allonge et la sangle frappe l’aine.";
    RingWaist, "The trunk folds forward, face down: hard to breathe, hard to reach the ladder.", "Le tronc se plie en avant, face en bas : on respire mal, on atteint mal l’échelle.";
    RingLow, "The lower the ring, the further the trunk folds forward.", "Plus l’anneau est bas, plus le tronc se plie en avant.";
    RingAside, "The pull turns the body and loads one shoulder.", "La traction fait tourner le corps et charge une épaule.";
    ChestHigh, "It comes up to the throat when the straps draw tight.", "Elle remonte à la gorge quand les sangles se tendent.";
    Twisted, "On its edge webbing cuts in and bears less than it was made for.", "Sur la tranche, la sangle coupe et porte moins que prévu.";
    NotLooked, "A cut, a burn or a missing label is found before the climb or not at all.", "Une coupure, une brûlure ou une étiquette absente se trouve avant de monter, ou pas du tout.";
    TailsLoose, "Ends catch on rungs, and an adjuster can let the strap run through.", "Les bouts s’accrochent aux échelons, et un ajusteur peut laisser filer la sangle.";
    NotShaken, "Straps that were never sorted end up crossed.", "Des sangles jamais démêlées finissent croisées.";
    NotChecked, "Nobody sees their own back.", "Personne ne voit son propre dos.";
}
