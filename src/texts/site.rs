//! Texts of the site walk, both languages side by side.

use super::Text;
use super::table::{texts, words};
use crate::practice::site::{Reach, Row, Sort, Work};

words! {
    /// Texts of the site walk.
    Walk;
    Name, "The site walk", "La visite du chantier";
    Verb, "Walk the site", "Visitez le chantier";
    Front, "Front", "Façade";
    Plan, "From above", "Vue du dessus";
    Lead, "Before anything leaves the truck: find what matters here. Tap it, in either picture.", "Avant de sortir quoi que ce soit du camion : trouvez ce qui compte ici. Touchez-le, dans l’une ou l’autre image.";
    Job, "{work}, from {a} to {b} along the wall. Eave {eave}. In the yard: ladders, poles, rope gear{lift}.", "{work}, de {a} à {b} le long du mur. Avant-toit à {eave}. Sur place : échelles, perches, cordes{lift}.";
    JobLift, ", a lift", ", une plateforme élévatrice";
    WeatherNow, "Wind {wind} km/h. Roof {roof}.", "Vent {wind} km/h. Toit {roof}.";
    Wet, "wet", "mouillé";
    Dry, "dry", "sec";
    AskWire, "A wire. Which kind?", "Un fil. De quelle sorte?";
    AskDo, "What about it?", "Qu’en faites-vous?";
    Asks, "I can’t tell: ask", "Je ne sais pas : demander";
    NotHere, "It changes nothing", "Ça ne change rien";
    Unmark, "Take the mark off", "Retirer la marque";
    ToPlan, "Now the ladder", "Placer l’échelle";
    Back, "Back to the walk", "Revenir à la visite";
    Method, "How is it done? The first that can be, in the order of the rules.", "Comment s’y prendre? La première méthode possible, dans l’ordre des règles.";
    MethodGround, "from the ground, with a pole", "du sol, avec une perche";
    MethodLift, "from a lift", "avec une plateforme élévatrice";
    MethodArrest, "ladder, rope and grab", "échelle, corde et coulisseau";
    Ladder, "Ladder", "Échelle";
    LadderAt, "along the wall {at}", "le long du mur {at}";
    Foot, "foot {at} out", "pied à {at}";
    AnchorWord, "Anchor", "Ancrage";
    AnchorAt, "Anchor on the ridge, {at}", "Ancrage au faîte, {at}";
    Left, "{what} to the left", "{what} vers la gauche";
    Right, "{what} to the right", "{what} vers la droite";
    Nearer, "Foot nearer", "Rapprocher le pied";
    Further, "Foot further out", "Éloigner le pied";
    Above, "Anchor above the ladder", "Ancrage au-dessus de l’échelle";
    Ring, "Dashed: as far as its top can come down.", "En tirets : jusqu’où son sommet peut tomber.";
    FirstUp, "The first one up", "La première personne à monter";
    FirstThrown, "a line over the ridge, set from the ground", "une corde par-dessus le faîte, posée du sol";
    FirstLift, "from a lift", "par une plateforme";
    FirstQuick, "up quickly, anchor first", "monter vite, ancrage d’abord";
    Hangs, "If somebody hangs: reached from", "Si une personne pend : atteinte par";
    Stop, "Work stops at (km/h)", "Arrêt à (km/h)";
    StopWhose, "The ladder maker’s figure, or your company’s. None is given here.", "Le chiffre du fabricant de l’échelle, ou de l’entreprise. Aucun n’est donné ici.";
    Go, "This is the plan: up", "C’est le plan : on monte";
    Ask, "Stop and ask first", "Arrêter et demander";
    PickMethod, "First say how", "Dites d’abord comment";
    ToldFine, "Nothing in this plan is open but who sets the anchor, and the ladder meets nothing.", "Rien dans ce plan n’est ouvert, sauf qui pose l’ancrage, et l’échelle ne rencontre rien.";
    ToldAsk, "You stopped to ask. Nobody goes up until there is an answer.", "Vous avez arrêté pour demander. Personne ne monte avant la réponse.";
    ToldOpen, "{n} things in this plan are still open: not found, not said, or not as they should be.", "{n} points de ce plan sont encore ouverts : pas trouvés, pas dits, ou pas comme il faut.";
    ToldOne, "One thing in this plan is still open.", "Un point de ce plan est encore ouvert.";
    Near, "comes within {m} of it", "s’en approche à {m}";
    Touches, "can touch it", "peut le toucher";
    NearDrop, "Service drop: falling, the ladder {near}. Its owner is asked first: no distance makes it fit to touch.", "Branchement : en tombant, l’échelle {near}. Son propriétaire d’abord : aucune distance ne le rend touchable.";
    NearLine, "Power line: falling, the ladder {near}; {keep} is to be kept here until its owner has said what it carries.", "Ligne : en tombant, l’échelle {near}; ici, {keep} à garder tant que son propriétaire n’a pas dit sa tension.";
    NearPhone, "Thin line: falling, the ladder {near}. It counts as live until its owner has said.", "Fil mince : en tombant, l’échelle {near}. Il compte comme sous tension jusqu’à réponse du propriétaire.";
    Missed, "Not found: {what}. {does}", "Pas trouvé : {what}. {does}";
    Wrongly, "{what}: you said ‘{said}’. {does}", "{what} : vous avez dit « {said} ». {does}";
    Meets, "{what}: the ladder or its line is too near. {does}", "{what} : l’échelle ou sa corde est trop près. {does}";
    Before, "Here it can be done {what}, and that comes before rope and grab.", "Ici, c’est possible {what}, et cela passe avant la corde et le coulisseau.";
    CannotGround, "The pole does not reach: the eave is {eave} up, pole and arm {reach} (assumed).", "La perche n’atteint pas : avant-toit à {eave}, perche et bras {reach} (supposé).";
    CannotHands, "The pole does not do this job: it takes both hands there.", "La perche ne suffit pas : le travail se fait à deux mains.";
    CannotNoLift, "No lift stands in the yard.", "Pas de plateforme sur place.";
    ToldFineOther, "Nothing in this plan is open.", "Rien dans ce plan n’est ouvert.";
    LooksAt, "{what}, {at} along the wall", "{what}, à {at} le long du mur";
    Slide, "Slide the picture sideways: it goes on.", "Faites glisser l’image : elle continue.";
    SlipPlumb, "A slip under the anchor: {room} left under the boots.", "Faux pas sous l’ancrage : {room} sous les bottes.";
    CannotLift, "The ground before the job is soft or slopes: no lift stands there.", "Devant le travail, le sol est mou ou en pente : aucune plateforme ne s’y tient.";
    FarFromJob, "The ladder stands {m} from the middle of the job: that is leaning out.", "L’échelle est à {m} du milieu du travail : il faudrait se pencher.";
    Angle, "The ladder leans at {deg}°: one in four is 75°.", "L’échelle est à {deg}° : un pour quatre fait 75°.";
    FirstBare, "Nothing holds the first one up on the way to the ridge.", "Rien ne retient la première personne jusqu’au faîte.";
    FirstOpen, "How the first one up is protected is not said.", "La protection de la première personne n’est pas dite.";
    NoWindow, "No window is within reach of where somebody would hang.", "Aucune fenêtre n’est à portée de qui pendrait.";
    NoGround, "No place beside where somebody would hang is free for a second ladder: {what}.", "Aucune place libre pour une seconde échelle près de qui pendrait : {what}.";
    NobodyReaches, "Waiting for the fire service alone is no plan: nobody of the crew gets there first.", "Attendre les pompiers seuls n’est pas un plan : personne de l’équipe n’arrive avant.";
    Within, "Here a person who hangs is to be down within {minutes} minutes.", "Ici, la personne suspendue doit être descendue en {minutes} minutes au plus.";
    ReachOpen, "From where somebody who hangs is reached is not said.", "On n’a pas dit par où atteindre une personne suspendue.";
    WindOpen, "No wind is named at which work stops.", "Aucun vent n’est fixé pour l’arrêt du travail.";
    WindOver, "The wind is at or over that figure already.", "Le vent atteint ou dépasse déjà ce chiffre.";
    NeedNotAsk, "Nothing here asked for it. A call costs ten minutes.", "Rien ici ne l’exigeait. Un appel coûte dix minutes.";
    Slip, "Slip here", "Faux pas ici";
    Tip, "Let it tip", "Faire basculer";
    Tipped, "{what}: as it tips, the ladder {near}.", "{what} : en basculant, l’échelle {near}.";
    TippedFree, "As it tips, the ladder comes down without meeting a wire.", "En basculant, l’échelle descend sans rencontrer de fil.";
    SlipRoom, "A slip {off} beside the anchor: sideways at up to {speed}, {room} left under the boots.", "Faux pas à {off} de l’ancrage : jusqu’à {speed} de côté, {room} sous les bottes.";
    SlipDown, "A slip {off} beside the anchor: the boots come down on the ground, {room} short.", "Faux pas à {off} de l’ancrage : les bottes touchent le sol, il manque {room}.";
    Card, "Plan card", "Fiche de travail";
    CardDone, "settled", "réglé";
    CardOpen, "open", "ouvert";
    CardNote, "It plays with open rows, but does not print as done.", "Elle se joue avec des lignes ouvertes, mais ne s’imprime pas comme terminée.";
    CardNot, "Not done: {n} rows open.", "Pas terminée : {n} lignes ouvertes.";
    CardNotOne, "Not done: one row open.", "Pas terminée : une ligne ouverte.";
    CardNothing, "nothing marked", "rien de marqué";
    CardUnused, "not used", "non utilisé";
    CardRules, "Rules: {place}", "Règlement : {place}";
    StopUnread, "That is no wind in km/h between 1 and 200.", "Ce n’est pas un vent en km/h entre 1 et 200.";
    Asked, "{what}: to be asked about. Open until there is an answer.", "{what} : à demander. Ouvert jusqu’à la réponse.";
    ToAsk, "{what}: falling, the ladder {near}. Nobody goes up before its owner has answered.", "{what} : en tombant, l’échelle {near}. Personne ne monte avant la réponse du propriétaire.";
    ComesDown, "A slip there comes down on the ground: {room} too little room. Put the anchor above the work.", "Un faux pas là finit au sol : il manque {room}. Mettez l’ancrage au-dessus du travail.";
    SwingsHard, "A slip there swings sideways at up to {speed}, and strikes hard. Put the anchor above the work.", "Un faux pas là balance jusqu’à {speed} et frappe fort. Mettez l’ancrage au-dessus du travail.";
    LittleRoom, "A slip there leaves {room} under the boots; {kept} is kept by common practice.", "Un faux pas là laisse {room} sous les bottes; la pratique courante garde {kept}.";
    NotComputed, "The slip there could not be computed, so nothing is said of it.", "Le faux pas là n’a pas pu être calculé : rien n’en est dit.";
    NoLift, "No lift stands in the yard for the first one up.", "Pas de plateforme sur place pour la première personne.";
    StandsAt, "{what}, from {a} to {b}", "{what}, de {a} à {b}";
    WindowAt, "upper window at {at}", "fenêtre haute à {at}";
    PoleAt, "pole at {at}", "poteau à {at}";
    CardFirst, "Job at {at} along the wall, eave {eave}", "Travail à {at} le long du mur, avant-toit à {eave}";
    Danger, "Danger: overhead wires. Treat every wire as live until its owner has said otherwise, in writing on this card.", "Danger : fils électriques. Traitez chaque fil comme sous tension tant que son propriétaire n’a pas dit le contraire, par écrit sur cette fiche.";
    Owner, "Wire’s owner asked: who, when, what was said", "Propriétaire du fil : qui, quand, réponse";
    Signs, "Filled in by · read by the crew · date", "Remplie par · lue par l’équipe · date";
    Change, "Change the plan", "Changer le plan";
    Bench, "To the workbench", "Vers l’atelier";
    Another, "Another house", "Une autre maison";
    Note, "Computed: how near the ladder comes to wires however it turns about its foot, what it meets, the slip. Told only: wasps, dog, passers-by, wind, what a door does. A metre to be kept from a service drop and a phone line is our own choice; what a pole and an arm reach is assumed.", "Calculés : la distance de l’échelle aux fils quand elle pivote sur son pied, ce qu’elle rencontre, le faux pas. Seulement dits : guêpes, chien, passants, vent, ce que fait une porte. Le mètre à garder d’un branchement et d’un fil de téléphone est notre choix; la portée d’une perche et d’un bras est supposée.";
    Sources, "Cover on a service drop is against weather, not insulation; ladders are carried flat: safety pages of utilities and of Queensland’s regulator (read in a summary). Distances and order of methods: the place’s own, see ‘How we know’. Ladder one in four: 29 CFR 1926.1053(b)(5)(i). Walking the site first, the rest of the list: common practice.", "La gaine d’un branchement protège des intempéries, elle n’isole pas; on porte une échelle à plat : pages de sécurité de distributeurs et du régulateur du Queensland (lues dans un résumé). Distances et ordre des méthodes : ceux du lieu. Échelle un pour quatre : 29 CFR 1926.1053(b)(5)(i). Faire d’abord le tour, et le reste de la liste : pratique courante.";
}

texts! {
    /// What it is called.
    Sort::label;
    ServiceDrop, "Service drop", "Branchement du client";
    Line, "Power line", "Ligne électrique aérienne";
    Phone, "Phone or TV line", "Fil de téléphone ou de télé";
    SoftBed, "Soft bed", "Plate-bande molle";
    Slope, "Slope", "Pente";
    Door, "Door that opens out", "Porte qui ouvre vers l’extérieur";
    Skylight, "Skylight", "Puits de lumière";
    Rot, "Rotten fascia", "Bordure de toit pourrie";
    Wasps, "Wasps", "Guêpes";
    Dog, "Dog", "Chien";
    People, "Passers-by", "Passants";
    Bush, "Bush", "Buisson";
    Letters, "Letter box", "Boîte aux lettres";
}

texts! {
    /// What can be seen from the driveway, before anybody has said what it is.
    Sort::looks;
    ServiceDrop, "a thick cable from the pole to the corner of the house", "un gros câble du poteau au coin de la maison";
    Line, "three wires on the pole’s arm", "trois fils sur la traverse du poteau";
    Phone, "a thin line to a small box on the wall", "un fil mince jusqu’à un boîtier au mur";
    SoftBed, "dug earth along the wall", "de la terre remuée au pied du mur";
    Slope, "grass that falls to the side", "une pelouse qui descend de côté";
    Door, "a door in the front wall", "une porte en façade";
    Skylight, "a window in the roof", "une fenêtre dans le toit";
    Rot, "dark, crumbled wood at the roof’s edge", "du bois noir et effrité au bord du toit";
    Wasps, "a grey ball under the eave", "une boule grise sous l’avant-toit";
    Dog, "a dog beside its house", "un chien près de sa niche";
    People, "people on the sidewalk", "des gens sur le trottoir";
    Bush, "a bush on the lawn", "un buisson sur la pelouse";
    Letters, "a letter box by the walk", "une boîte aux lettres au bord du trottoir";
}

texts! {
    /// What is right to do about it.
    Sort::right;
    ServiceDrop, "ask its owner first", "demander d’abord à son propriétaire";
    Line, "keep the distance, ask its owner", "garder la distance, demander au propriétaire";
    Phone, "live until its owner has said", "sous tension jusqu’à réponse du propriétaire";
    SoftBed, "no ladder foot there", "aucun pied d’échelle là";
    Slope, "no ladder foot there", "aucun pied d’échelle là";
    Door, "lock it, or a person stands there", "la verrouiller, ou y poster quelqu’un";
    Skylight, "cover it and mark it", "le couvrir et le signaler";
    Rot, "nothing leans on it or is tied to it", "ne rien y appuyer ni y attacher";
    Wasps, "keep the ladder well away until it is gone", "garder l’échelle à l’écart jusqu’à son retrait";
    Dog, "its owner takes it in", "son maître le rentre";
    People, "tape it off, somebody watches", "barrer et poster quelqu’un";
    Bush, "leave it", "le laisser";
    Letters, "leave it", "la laisser";
}

texts! {
    /// What is often done instead.
    Sort::wrong;
    ServiceDrop, "its cover insulates it", "sa gaine l’isole";
    Line, "high enough", "assez haute";
    Phone, "harmless", "inoffensif";
    SoftBed, "a board under the low rail", "une planche sous le montant bas";
    Slope, "a brick under the low rail", "une brique sous le montant bas";
    Door, "we will hear it open", "on l’entendra s’ouvrir";
    Skylight, "step round it", "le contourner";
    Rot, "lean the ladder on the gutter", "appuyer l’échelle sur la gouttière";
    Wasps, "spray it from the ladder", "l’asperger depuis l’échelle";
    Dog, "it will get used to us", "il s’habituera";
    People, "call out when it gets close", "crier s’ils approchent";
    Bush, "cut it back", "le tailler";
    Letters, "take it away", "l’enlever";
}

texts! {
    /// The second thing that is often done.
    Sort::other;
    ServiceDrop, "a wooden ladder", "une échelle de bois";
    Line, "a wooden ladder", "une échelle de bois";
    Phone, "hold it aside", "l’écarter";
    SoftBed, "press the foot in well", "bien enfoncer le pied";
    Slope, "somebody stands on the rung", "quelqu’un sur l’échelon";
    Door, "ladder before it, foot against it", "l’échelle devant, le pied contre";
    Skylight, "it bears a person", "il porte une personne";
    Rot, "screw the anchor there", "y visser l’ancrage";
    Wasps, "work fast", "travailler vite";
    Dog, "throw it something", "lui lancer quelque chose";
    People, "a sign at the truck", "un écriteau au camion";
    Bush, "rope it off", "l’entourer d’une corde";
    Letters, "rope it off", "l’entourer d’une corde";
}

texts! {
    /// What it can do.
    Sort::does;
    ServiceDrop, "Its cover is against weather, not against a hand.", "Sa gaine protège de la pluie, pas d’une main.";
    Line, "Bare, thousands of volts: it jumps across air.", "Nue, des milliers de volts : ça saute dans l’air.";
    Phone, "It can be live by a fault, and looks alike.", "Un défaut peut le mettre sous tension, et il se ressemble.";
    SoftBed, "A rail sinks, and the ladder goes over sideways.", "Un montant s’enfonce, et l’échelle part de côté.";
    Slope, "One rail lower than the other: the ladder goes over to that side.", "Un montant plus bas que l’autre : l’échelle part de ce côté.";
    Door, "Whoever comes out walks into the ladder.", "Qui en sort heurte l’échelle.";
    Skylight, "It bears nobody, and a line across it cuts.", "Il ne porte personne, et une corde en travers s’y coupe.";
    Rot, "What leans on it slides off; what is screwed into it pulls out.", "Ce qui s’y appuie glisse; ce qu’on y visse s’arrache.";
    Wasps, "A sting on a rung is a slip.", "Une piqûre sur un échelon, c’est un faux pas.";
    Dog, "Somebody at the foot of a ladder cannot step back.", "Au pied d’une échelle, on ne peut pas reculer.";
    People, "What falls lands among them.", "Ce qui tombe tombe sur eux.";
    Bush, "It is in nobody’s way.", "Il ne gêne personne.";
    Letters, "It is in nobody’s way.", "Elle ne gêne personne.";
}

texts! {
    /// What the row of the card is called.
    Row::label;
    Wires, "Wires", "Fils";
    Ground, "Ground", "Sol";
    Around, "Above and around", "Dessus et autour";
    People, "People, animals", "Gens, animaux";
    Method, "Method", "Méthode";
    Ladder, "Ladder", "Échelle";
    Anchor, "Anchor", "Ancrage";
    FirstUp, "First one up", "Première personne";
    Hangs, "If one hangs", "Si l’un pend";
    Weather, "Weather", "Météo";
}

texts! {
    /// From where.
    Reach::label;
    Window, "the nearest upper window", "la fenêtre haute la plus proche";
    SecondLadder, "a second ladder beside it", "une seconde échelle à côté";
    FireService, "the fire service", "les pompiers";
}

texts! {
    /// What is done.
    Work::label;
    Roller, "Soffit, with a roller", "Sous-face, au rouleau";
    Hands, "Scrape and caulk the fascia, both hands", "Gratter et calfeutrer la bordure, à deux mains";
}
