//! Texts of the rooms about the gear itself: the harness, connectors, up onto the roof, the gear list, the note.

use super::table::words;
use super::table::{Text, texts};
use crate::practice::eave::{Moment, TakeDown};
use crate::practice::harness::{Fault, Step};
use crate::practice::hooks::{Act, Joined};
use crate::quiz::gear_list::{PieceKind, Why};

words! {
    /// Texts of the rooms about the gear.
    Gear;
    GroupGear, "The gear on you", "L’équipement sur soi";
    Caution, "Prepares and refreshes. Read the instructions of the gear you wear; a competent person decides on your site.", "Prépare et rafraîchit. Lisez les instructions de l’équipement que vous portez; une personne compétente décide sur votre chantier.";
    HarnessName, "Put the harness on", "Mettre le harnais";
    HarnessVerb, "Put the harness on", "Mettez le harnais";
    HarnessState, "The harness as it is worn", "Le harnais tel qu’il est porté";
    HarnessLead, "Somebody pulled it on in a hurry. Put it right, in any order; drag a strap or use the buttons.", "On l’a enfilé en vitesse. Rajustez-le, dans l’ordre voulu; tirez une sangle ou prenez les boutons.";
    FindPart, "Makers’ patterns differ: find the same part on yours.", "Les modèles diffèrent : trouvez la même pièce sur le vôtre.";
    Front, "front", "devant";
    Back, "back", "dos";
    DoneYet, "done", "fait";
    NotYet, "not yet", "pas encore";
    Flat, "flat", "à plat";
    Twisted, "twisted", "une sangle vrillée";
    Closed, "closed", "fermée";
    Open, "open", "ouverte";
    TooHigh, "at the throat", "à la gorge";
    Tucked, "tucked", "rangés";
    Loose, "hanging", "pendants";
    Blades, "between the blades", "entre les omoplates";
    RingLow, "a hand lower", "une main plus bas";
    Waist, "at the waist", "à la taille";
    Aside, "over one blade", "sur une omoplate";
    LookFit, "fit for use", "bon pour l’usage";
    LookOut, "out of use", "hors service";
    LookMissed, "Look again: {what}", "Regardez encore : {what}";
    LookOutSaid, "Out of use: this one is not worn. It is kept apart and written down.", "Hors service : on ne le porte pas. On le met à part et on l’écrit.";
    LookAnother, "Take another", "En prendre un autre";
    LeftLeg, "Left leg", "Cuisse gauche";
    RightLeg, "Right leg", "Cuisse droite";
    SlackOf, "{what}: {cm} off the thigh", "{what} : à {cm} de la cuisse";
    Less, "Tighter", "Serrer";
    More, "Looser", "Relâcher";
    Another, "Check a partner’s", "Vérifier celui d’un autre";
    AnotherLead, "Another painter is about to climb. Mark each step at which something is not as it should be, or none, then say it.", "Un autre peintre va monter. Marquez chaque étape où quelque chose ne va pas, ou aucune, puis dites-le.";
    MarkIt, "Not as it should be", "Pas comme il faut";
    SayIt, "Say it", "Le dire";
    SaidRight, "That is what there was to find: {what}.", "C’est bien ce qu’il y avait à trouver : {what}.";
    SaidFine, "Nothing was wrong, and you said so.", "Rien n’était mal, et vous l’avez dit.";
    SaidOther, "There was to find: {what}. You marked: {said}.", "Il y avait à trouver : {what}. Vous avez marqué : {said}.";
    Nothing, "nothing", "rien";
    OwnAgain, "Back to mine", "Revenir au mien";
    LetGo, "Slip in this harness", "Faux pas dans ce harnais";
    HarnessShort, "Pulled on in a hurry: put it right, 1 to 9.", "Enfilé en vitesse : rajustez-le, de 1 à 9.";
    ReadyToTry, "Slip at any moment: the same slip, rightly worn beside it.", "Un faux pas quand vous voulez : le même, bien porté, à côté.";
    RightlyWorn, "A: as it should be", "A : comme il faut";
    AsWorn, "B: as it is worn", "B : tel qu’il est porté";
    AllRight, "Worn so, the harness did what it is made for: the trunk hangs {rest}° from upright.", "Porté ainsi, le harnais fait ce pour quoi il est conçu : le tronc pend à {rest}° de la verticale.";
    HangsMore, "Worn so, the trunk hangs {rest}° from upright; rightly worn, {other}°.", "Porté ainsi, le tronc pend à {rest}° de la verticale; bien porté, à {other}°.";
    SlidesMore, "The ring slides {slide} up the back; rightly worn, {other}.", "L’anneau glisse de {slide} vers le haut; bien porté, de {other}.";
    ComesDown, "For a moment the head is lower than the hips.", "Un instant, la tête est plus basse que les hanches.";
    StaysDown, "The head hangs lower than the hips.", "La tête pend plus bas que les hanches.";
    SlipsOut, "Worn so, a person can slip out of it.", "Porté ainsi, on peut en glisser.";
    StillWrong, "Still to put right: {what}.", "Reste à corriger : {what}.";
    RowLean, "Trunk from upright, at rest", "Tronc, écart de la verticale, au repos";
    RowWorst, "Furthest, while held", "Au plus, pendant la retenue";
    RowSlide, "Ring slides up", "Glissement de l’anneau";
    RowRoom, "Room left", "Espace restant";
    RowForce, "Force on the body", "Force sur le corps";
    NotShown, "One of the two falls failed its own energy check, so nothing is shown of it.", "L’une des deux chutes échoue à son propre bilan d’énergie : rien n’en est montré.";
    PutRight, "Put it right", "Le corriger";
    HarnessNote, "Computed: lean, slide, force, room, by the same fall with the grab left 0.45 m low. Told only: that straps cut in, that a body can leave its harness. A low ring leaves the line less slack, so the drop is shorter and the room larger; how one hangs is what it costs. A ring over one blade changes nothing in a picture from the side. How far straps let the ring slide is assumed.", "Calculés : inclinaison, glissement, force, espace, par la même chute avec le coulisseau laissé 0,45 m trop bas. Seulement dits : que les sangles serrent, qu’un corps peut quitter son harnais. Un anneau bas laisse moins de mou : la chute est plus courte et l’espace plus grand; c’est la suspension qui en paie le prix. Un anneau sur une omoplate ne change rien de profil. La course de l’anneau est supposée.";
    EaveName, "Onto the roof and back", "Sur le toit et retour";
    EaveVerb, "Step onto the roof", "Passez sur le toit";
    EaveFirst, "No line hangs yet. How is the first one up protected?", "Aucune corde n’est en place. Comment protéger la première personne à monter?";
    FirstThrown, "A line thrown over the ridge, tied off on the far side by a person on the ground", "Une corde lancée par-dessus le faîte, attachée de l’autre côté par une personne au sol";
    FirstLift, "From a lift or a scaffold", "Depuis une plateforme élévatrice ou un échafaudage";
    FirstOther, "Another method, from the ground", "Une autre méthode, depuis le sol";
    FirstQuick, "Up quickly, the anchor goes on first thing", "Monter vite, l’ancrage d’abord";
    FirstFine, "That can be right: a competent person chooses, before anybody climbs.", "Ce peut être juste : une personne compétente choisit, avant que quiconque monte.";
    FirstNot, "Then nothing holds from the ladder to the ridge. Ask before anybody climbs: a line over the ridge, a lift, or another method.", "Alors rien ne retient de l’échelle au faîte. Demandez avant que quiconque monte : une corde par-dessus le faîte, une plateforme, ou une autre méthode.";
    EaveGo, "To the ladder", "À l’échelle";
    EaveWhere, "Moment {n} of 9: {what}", "Moment {n} de 9 : {what}";
    LinkA, "Lanyard A", "Cordon A";
    OfEdge, "Above or below: of the edge.", "Au-dessus ou dessous : du bord.";
    LinkB, "Lanyard B", "Cordon B";
    Below, "below", "dessous";
    Above, "above", "au-dessus";
    Off, "off", "décroché";
    Parked, "parked", "rangé";
    SlackLine, "a metre of line slack on the shingles", "un mètre de corde lâche sur les bardeaux";
    EaveAsk, "A slip now: what holds?", "Un faux pas maintenant : qu’est-ce qui retient?";
    HoldsA, "A", "A";
    HoldsB, "B", "B";
    HoldsEither, "A or B, whichever comes taut first", "A ou B, le premier tendu";
    HoldsNothing, "Nothing", "Rien";
    SlipNow, "Slip now", "Faux pas";
    PickFirst, "First say what holds", "Dites d’abord ce qui retient";
    EaveSaid, "You said: {said}. It was: {came}.", "Vous avez dit : {said}. C’était : {came}.";
    EaveFell, "free fall {free}, whole drop {drop}", "chute libre {free}, chute totale {drop}";
    EaveOrder, "In the taught order here: {a}, {b}.", "Dans l’ordre enseigné, ici : {a}, {b}.";
    EaveTakeUp, "Take up the slack before anybody steps: each metre on the shingles is a metre more to fall.", "Reprenez le mou avant de passer : chaque mètre sur les bardeaux est un mètre de chute en plus.";
    EaveLock, "Say it", "Le dire";
    EaveOn, "Next", "Suivant";
    EaveBefore, "Moment before", "Moment précédent";
    EaveStay, "Again", "Encore";
    EaveOver, "To the first", "Au premier";
    DownAsk, "The day is over. Tap the seven in the order in which it all comes down.", "La journée est finie. Touchez les sept dans l’ordre où tout se démonte.";
    DownDone, "That is the order: what holds comes off last.", "C’est l’ordre : ce qui retient s’enlève en dernier.";
    DownGo, "Take it all down", "Tout démonter";
    EaveTwo, "Two grabs on one line, or a second link: only as their maker allows; else a second line. Step off to the side if your rails do not part. Last on the line unties from the far side or the ground; holes are sealed, and it is written down.", "Deux coulisseaux sur une corde, ou un second cordon : seulement si le fabricant le permet; sinon une seconde corde. Sortez de côté si les montants ne s’écartent pas. La dernière personne sur la corde la détache de l’autre côté ou du sol; on bouche les trous et on l’écrit.";
    EaveNote, "Computed: each slip with what is clipped then. Only the link that comes taut first is run; the other is drawn. Told only: hands on rails, balance, the throw over the ridge.", "Calculé : chaque faux pas avec ce qui est accroché alors. Seul le cordon qui se tend en premier est calculé; l’autre est dessiné. Seulement dits : les mains aux montants, l’équilibre, le lancer par-dessus le faîte.";
    EaveSources, "Rails 3 ft past and secured, else a grab rail: 29 CFR 1926.1053(b)(1) (read in a toolbox sheet). 900 mm: Quebec S-2.1, r. 4, s. 3.5.6 (read). Three points of contact: Ontario’s ladder advisory, 2015 (read in a summary). One link always on, the pad and the first one up: common practice.", "Montants 3 pi au-delà et fixés, sinon une poignée : 29 CFR 1926.1053(b)(1) (lu dans une fiche). 900 mm : Québec, S-2.1, r. 4, art. 3.5.6 (lu). Trois points d’appui : avis ontarien sur les échelles, 2015 (lu dans un résumé). Un cordon toujours accroché, la protection d’arête et la première personne : pratique courante.";
    HooksName, "Hook and ring", "Mousqueton et anneau";
    HooksVerb, "Hook up and tug", "Accrochez et tirez";
    HooksAsk, "Which of the two would you hang on?", "Auquel des deux vous suspendriez-vous?";
    PairsAsk, "Which of the two is the better one?", "Lequel des deux vaut mieux?";
    HooksOf, "{n} of {all}", "{n} sur {all}";
    HooksYes, "You chose it.", "Votre choix.";
    HooksPull, "The usual fall pulls {pull}. Loaded so, older standards ask only {old} of a hook: it may break. Newer ones ask {new}.", "La chute habituelle tire {pull}. Chargé ainsi, les normes anciennes ne demandent que {old} : il peut rompre. Les récentes demandent {new}.";
    HooksNone, "The usual fall pulls {pull}. No standard gives a strength for this: it is no connection.", "La chute habituelle tire {pull}. Aucune norme ne donne de résistance pour ce cas : ce n’est pas un raccordement.";
    HooksThis, "This one, {what}", "Ici : {what}";
    HooksOther, "The other one, {what}", "L’autre : {what}";
    HooksOrder, "Now hook up. Tap the five in the order in which you do them.", "Maintenant, accrochez. Touchez les cinq gestes dans l’ordre où vous les faites.";
    HooksDone, "That is the order.", "C’est l’ordre.";
    HooksLater, "Something comes before it.", "Quelque chose vient avant.";
    HooksHolds, "Loaded along its body, gate shut: as it is made for.", "Chargé dans sa longueur, doigt fermé : comme prévu.";
    HooksLittle, "Loaded so, older standards ask little of a hook: it may break.", "Chargé ainsi, les normes anciennes exigent peu : il peut rompre.";
    HooksNoFigure, "No standard gives a strength for this: it is no connection.", "Aucune norme ne donne de résistance pour ce cas : ce n’est pas un raccordement.";
    HooksScore, "Right choices: {n} of {all}.", "Choix justes : {n} sur {all}.";
    HooksAgain, "Once more", "Encore une fois";
    HooksNote, "These are the least that a standard asks; a hook may bear more. Read the mark on yours. Unless made for it, a hook does not go: to webbing or rope, to another hook, into a ring with another hook, to a horizontal line, to a shape that can press its gate. Locking hooks resist roll-out; that a twist opens a gate is drawn from the published list, no chance is given.", "Ce sont les minimums d’une norme; un mousqueton peut porter plus. Lisez la marque du vôtre. Sauf s’il est fait pour cela, un mousqueton ne va pas : à une sangle ou une corde, à un autre mousqueton, dans un anneau avec un autre, à une ligne horizontale, à une forme qui peut presser son doigt. Les mousquetons verrouillables résistent au décrochage par rotation; qu’une torsion ouvre un doigt est tiré de la liste publiée, sans probabilité.";
    HooksSources, "29 CFR 1926.502(d)(5) and (6) (read in an OSHA letter, 2003-07-09); subpart M, appendix C (j) (read in a summary). Strengths: CSA Z259.12-01, ANSI Z359.1-1999 and -2007 (a table of these standards, and an OSHA letter, 2009-10-13; read in a summary). Order of hooking up: common practice.", "29 CFR 1926.502(d)(5) et (6) (lus dans une lettre d’OSHA, 2003-07-09); sous-partie M, annexe C (j) (lue dans un résumé). Résistances : CSA Z259.12-01, ANSI Z359.1-1999 et -2007 (un tableau de ces normes, et une lettre d’OSHA, 2009-10-13; lus dans un résumé). Ordre des gestes : pratique courante.";
    ListName, "The gear list", "La liste de l’équipement";
    ListLead, "Each part with its serial, its dates, and why it was withdrawn. Kept on this device alone.", "Chaque pièce avec son numéro, ses dates, et le motif de son retrait. Gardé sur cet appareil seulement.";
    ListEmpty, "Nothing is listed yet.", "Rien n’est encore inscrit.";
    ListUnread, "{n} kept entries cannot be read by this version. They stay as they are.", "{n} entrées gardées sont illisibles pour cette version. Elles restent telles quelles.";
    ListAdd, "Add a part", "Ajouter une pièce";
    ListKind, "What it is", "Sorte";
    ListCalled, "What the crew calls it", "Nom dans l’équipe";
    ListSerial, "Serial", "Numéro de série";
    ListMade, "Made on", "Fabriqué le";
    ListInspected, "Last inspection", "Dernière inspection";
    ListBy, "Inspected by", "Inspecté par";
    ListDue, "Due again: the maker’s or the company’s day", "À revoir : le jour du fabricant ou de l’entreprise";
    ListPrint, "A list, not an inspection: what is on it is what somebody wrote down.", "Une liste, pas une inspection : elle dit ce que quelqu’un y a écrit.";
    ListWith, "With whom", "Chez qui";
    ListToday, "Inspected today", "Inspecté aujourd’hui";
    ListOpen, "Open {what}", "Ouvrir {what}";
    ListShut, "Done", "Terminé";
    ListWithdraw, "Withdraw it", "La retirer";
    ListBack, "Back into use", "La remettre en service";
    ListBackAsk, "It was withdrawn for a reason: {why}. Only its maker or a competent person puts it back. Put it back?", "Elle a été retirée pour une raison : {why}. Seul le fabricant ou une personne compétente la remet. La remettre?";
    ListDelete, "Delete this part", "Effacer cette pièce";
    ListDeleteAsk, "Delete {what} from the list?", "Effacer {what} de la liste?";
    ListCsv, "Save as CSV", "Enregistrer en CSV";
    ListState, "How it stands", "État";
    ListNote, "How often is for the maker and the company to say: none is set here. Besides that, look it over before each use: 29 CFR 1926.502(d)(21) (read in a summary). What has stopped a fall goes out of service: 29 CFR 1926.502(d)(19) (read in a summary). A fall played here withdraws nothing; what was withdrawn stays on the list.", "La fréquence revient au fabricant et à l’entreprise : aucune n’est fixée ici. De plus, vérifier avant chaque usage : 29 CFR 1926.502(d)(21) (lu dans un résumé). Ce qui a arrêté une chute sort du service : 29 CFR 1926.502(d)(19) (lu dans un résumé). Une chute jouée ici ne retire rien; ce qui a été retiré reste sur la liste.";
    StateOverdue, "overdue", "en retard";
    StateNoDue, "inspected, no due day written", "inspecté, sans date de révision";
    StateUnknown, "no inspection known", "aucune inspection connue";
    StateSoon, "due {day}", "échéance {day}";
    StateInUse, "in use until {day}", "en service jusqu’au {day}";
    StateWithdrawn, "withdrawn {day}: {why}", "retirée le {day} : {why}";
    NoteName, "After a fall: the note", "Après une chute : la fiche";
    NoteLead, "Call first, reach the worker, medical help whatever it looks like. Then write it down while people remember.", "D’abord appeler, rejoindre la personne, des soins quoi qu’il paraisse. Ensuite l’écrire, tant que l’on se souvient.";
    NoteFrom, "Add what is computed for the set-up page’s set-up", "Ajouter ce qui est calculé pour le montage de la page";
    NoteWho, "Who fell", "Qui est tombé";
    NoteWhen, "Day and time", "Jour et heure";
    NoteWhere, "Where", "Où";
    NoteSaw, "Who saw it", "Témoins";
    NoteWhat, "What happened", "Ce qui s’est passé";
    NoteCare, "Injuries, care, who was called", "Blessures, soins, qui a été appelé";
    NoteTold, "Who was told: employer, insurer, authority", "Qui a été avisé : employeur, assureur, autorité";
    NoteWhy, "Why it happened, and what changes", "Pourquoi, et ce qui change";
    NoteComputed, "Computed for a set-up in practice, not what happened", "Calculé pour un montage d’exercice, pas ce qui s’est passé";
    NoteOut, "Withdrawn and kept, not thrown away; the scene left as it is", "Retiré et gardé, pas jeté; les lieux laissés tels quels";
    NoteSerial, "serial", "numéro";
    NoteKept, "kept at", "gardé à";
    NoteTeach, "Taught again before work goes on", "Formation refaite avant de reprendre";
    NoteSigns, "Worker · supervisor · date", "Travailleur · superviseur · date";
    NoteNot, "This page records what people say. It replaces no report that the law asks for: many places ask for one within hours.", "Cette page note ce que les gens disent. Elle ne remplace aucun rapport exigé par la loi : bien des lieux en exigent un en quelques heures.";
    NoteForce, "force on the body {force}", "force sur le corps {force}";
    NoteClear, "Clear the note", "Effacer la fiche";
    NoteClearAsk, "Clear everything written in this note?", "Effacer tout ce qui est écrit dans cette fiche?";
    NoteHere, "Kept on this device until you clear it.", "Gardé sur cet appareil jusqu’à ce que vous l’effaciez.";
    HarnessSources, "Ring in the middle of the back near shoulder height: 29 CFR 1926.502(d)(17) (from memory). Flat hand, not a fist: common practice, not a law; your maker’s words go first. A low ring or chest strap lets a person fall out head first: a fall-protection textbook, 4th ed., p. 202 (read in a summary). Whoever hung: call for help, legs moving, down fast (OSHA bulletin 03-24-2004; read in a summary).", "Anneau au milieu du dos, près des épaules : 29 CFR 1926.502(d)(17) (de mémoire). La main à plat, pas le poing : pratique courante, pas une loi; la notice du fabricant passe d’abord. Un anneau ou une sangle de poitrine trop bas laissent tomber la tête la première : un manuel de protection antichute, 4e éd., p. 202 (lu dans un résumé). Quiconque est resté suspendu : appeler, bouger les jambes, descendre vite (bulletin OSHA 03-24-2004; lu dans un résumé).";
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
    LegOpen, "Nothing holds from below: the harness rides up to the armpits.", "Rien ne retient par-dessous : le harnais remonte aux aisselles.";
    LegSlack, "The harness rides up before it holds: the fall is longer and the loop strikes the groin.", "Le harnais remonte avant de tenir : la chute s’allonge et la sangle frappe l’aine.";
    RingWaist, "The trunk folds forward, face down: hard to breathe, hard to reach the ladder.", "Le tronc se plie en avant, face en bas : on respire mal, on atteint mal l’échelle.";
    RingLow, "The lower the ring, the further the trunk folds forward.", "Plus l’anneau est bas, plus le tronc se plie en avant.";
    RingAside, "The pull turns the body and loads one shoulder.", "La traction fait tourner le corps et charge une épaule.";
    ChestHigh, "It comes up to the throat when the straps draw tight.", "Elle remonte à la gorge quand les sangles se tendent.";
    Twisted, "On its edge webbing cuts in and bears less than it was made for.", "Sur la tranche, la sangle coupe et porte moins que prévu.";
    NotLooked, "A cut, a burn or a missing label is found before the climb or not at all.", "Une coupure, une brûlure ou une étiquette absente se trouve avant de monter, ou pas du tout.";
    TailsLoose, "Ends catch on rungs, and an adjuster can let the strap run through.", "Les bouts s’accrochent aux échelons, et un ajusteur peut laisser filer la sangle.";
    NotShaken, "Straps that were never sorted end up crossed.", "Des sangles jamais démêlées finissent croisées.";
    NotChecked, "Nobody sees their own back.", "Personne ne voit son propre dos.";
}

texts! {
    /// What happens at the moment.
    Moment::label;
    Climb, "climbing", "la montée";
    ClipAbove, "clip B above the edge", "accrocher B au-dessus du bord";
    OverPad, "A comes over the pad", "passer A par-dessus la protection";
    StepOn, "step between the rails", "passer entre les montants";
    OnRoof, "at work on the roof", "au travail sur le toit";
    Back, "back, facing the slope", "retour, face à la pente";
    FootDown, "a foot to the rung", "un pied sur l’échelon";
    ClipBelow, "A goes below the edge", "passer A sous le bord";
    Down, "down", "la descente";
}

texts! {
    /// What is done.
    TakeDown::label;
    Clear, "Tools down, nobody below", "Outils en bas, personne dessous";
    SecondLine, "A second line over the ridge, tied off on the far side from the ground", "Une seconde corde par-dessus le faîte, attachée de l’autre côté depuis le sol";
    PlateOff, "Anchor plate off, on that line", "Déposer la plaque d’ancrage, sur cette corde";
    Seal, "Its holes sealed", "Boucher ses trous";
    Down, "Down, one link always on", "Descendre, un cordon toujours accroché";
    Untie, "Line untied from the ground, pulled over", "Détacher la corde depuis le sol et la ramener";
    Write, "Written down, gear looked over", "L’écrire, vérifier l’équipement";
}

texts! {
    /// What is seen.
    Joined::label;
    Shut, "gate shut, lever home, on its ring", "doigt fermé, levier en place, sur son anneau";
    Ajar, "gate ajar, lever up", "doigt entrouvert, levier levé";
    Along, "pulled along the hook", "tiré dans sa longueur";
    Across, "pulled across the gate", "tiré en travers du doigt";
    Fits, "in a ring of its size", "dans un anneau à sa taille";
    Small, "in a ring that holds the gate open", "dans un anneau qui tient le doigt ouvert";
    Alone, "alone in its ring", "seul dans son anneau";
    Two, "two hooks in one ring", "deux mousquetons dans un anneau";
    OnRing, "on the anchor’s ring", "sur l’anneau de l’ancrage";
    OnItself, "back on its own lanyard", "sur son propre cordon";
    InBow, "the ring in the hook’s bow", "l’anneau au fond du crochet";
    Turned, "turned: the ring presses the gate in", "tourné : l’anneau pousse le doigt";
}

texts! {
    /// What is done.
    Act::label;
    Look, "Look at hook and ring", "Regarder mousqueton et anneau";
    Through, "Hook through the ring", "Passer le crochet dans l’anneau";
    Shuts, "Let the gate shut by itself", "Laisser le doigt se fermer seul";
    Home, "Lever home, nothing in the gate", "Levier en place, rien dans le doigt";
    Tug, "Tug twice, the way a fall would pull", "Tirer deux fois, dans le sens d’une chute";
}

texts! {
    /// What the part is called.
    PieceKind::label;
    Harness, "Harness", "Harnais";
    Lanyard, "Lanyard with absorber", "Cordon avec absorbeur";
    Grab, "Rope grab", "Coulisseau";
    Lifeline, "Lifeline", "Corde d’assurance";
    Anchor, "Anchor", "Ancrage";
    Connector, "Connector", "Mousqueton";
    Ladder, "Ladder", "Échelle";
}

texts! {
    /// Why it was withdrawn.
    Why::label;
    Fall, "stopped a real fall", "a arrêté une vraie chute";
    Damage, "damaged", "abîmée";
    Label, "label cannot be read", "étiquette illisible";
    Age, "past its age", "trop vieille";
    Lost, "lost", "perdue";
}
