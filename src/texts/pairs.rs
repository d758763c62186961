//! Texts of lines, edges and supports, two by two, both languages side by side.

use super::Text;
use super::table::{texts, words};
use crate::practice::pairs::{Half, Lined, Question, Slung};

words! {
    /// Texts of the racks of pairs.
    Pairs;
    RopesName, "Line and edge", "Corde et arête";
    RopesVerb, "Choose the line", "Choisissez la corde";
    SupportsName, "What it is tied to", "À quoi on l’attache";
    SupportsVerb, "Choose the support", "Choisissez le support";
    OfBare, "In a slip {off} beside the anchor, {m} of line saws along that edge. A pad, a roller or a sleeve goes there, and stays there.", "Lors d’un faux pas à {off} de l’ancrage, {m} de corde scient cette arête. Une protection, un rouleau ou une gaine va là, et y reste.";
    OfKnot, "A knot can leave the line {left} of {whole}, and the grab cannot pass it.", "Un nœud peut ne laisser à la corde que {left} sur {whole}, et le coulisseau n’y passe pas.";
    OfFrayed, "Worn to its core it bears about {left} (assumed); the usual fall pulls {pull}. It parts.", "Usée jusqu’à l’âme, elle porte environ {left} (supposé); la chute habituelle tire {pull}. Elle rompt.";
    OfStiff, "Paint, solvent, sun and heat leave no figure to count on. Stiff, glazed or faded: out of use.", "Peinture, solvant, soleil et chaleur ne laissent aucun chiffre sur lequel compter. Raide, lustrée ou décolorée : hors service.";
    OfShared, "If one falls, {pull} pulls at the line, and the other is jerked off the ladder. One person a line.", "Si l’un tombe, {pull} tirent sur la corde, et l’autre est arraché de l’échelle. Une personne par corde.";
    OfShort, "It ends just below the grab, with no stop: in a fall the grab runs off its end. A line reaches the ground and ends in its maker’s stop.", "Elle finit juste sous le coulisseau, sans butée : dans une chute, il en sort. Une corde va jusqu’au sol et finit par la butée du fabricant.";
    OfSlack, "A metre on the shingles: free fall {b} instead of {a}.", "Un mètre sur les bardeaux : chute libre de {b} au lieu de {a}.";
    OfNylon, "It gives more: whole drop {b} instead of {a}. And a grab takes only the line that is written on it.", "Elle s’allonge plus : chute totale de {b} au lieu de {a}. Et un coulisseau ne prend que la corde inscrite dessus.";
    OfSupport, "The weakest in twenty bears {low}; the usual fall pulls {pull}. {why}", "Le plus faible sur vingt porte {low}; la chute habituelle tire {pull}. {why}";
    OfHigh, "The higher the sling, the sooner the chimney tips.", "Plus l’élingue est haute, plus tôt la cheminée bascule.";
    OfSoft, "In soft joints only the bricks above the sling resist.", "Avec des joints mous, seules les briques au-dessus de l’élingue résistent.";
    OfHookedBack, "The line’s own hook is pulled across its gate with {pull}; older standards ask it to bear no more than {old}. And brick cuts the line. A sling rated for it goes round; the line goes to its ring.", "Le mousqueton de la corde est tiré en travers du doigt par {pull}; les normes anciennes n’exigent que {old}. Et la brique coupe la corde. Une élingue prévue pour cela fait le tour; la corde va à son anneau.";
    OfBoards, "All nails missed the rafters.", "Tous les clous ont manqué les chevrons.";
    OfPipe, "It lets air into the drains; it is no anchor (assumed figure).", "Il aère les tuyaux; ce n’est pas un ancrage (chiffre supposé).";
    OfLoose, "The chimney alone bears {low} at that height; the usual fall pulls {pull}. How chimney and tie-back share is not known, so the tie-back has to bear it all: {tie} in the rafters.", "La cheminée seule porte {low} à cette hauteur; la chute habituelle tire {pull}. Le partage avec le tirant est inconnu : le tirant doit tout porter, {tie} dans les chevrons.";
    RopesNote, "Computed: drop, free fall, what drags over the edge, a line that parts or ends. Told only: paint, solvent, sun, heat (no figure is given), the second person. What a worn line bears and what a knot leaves are assumed.", "Calculés : chute, chute libre, ce qui frotte sur l’arête, une corde qui rompt ou finit. Seulement dits : peinture, solvant, soleil, chaleur (aucun chiffre), la deuxième personne. Ce que porte une corde usée et ce que laisse un nœud sont supposés.";
    RopesSources, "Edges, abrasion: 29 CFR 1926.502(d)(11); one person a line: (d)(10)(i) (both from memory); O. Reg. 213/91 s. 26.9 (read, on knots). Stretch at 8 kN: 16 mm 10 %, 12 mm nylon 27 % (makers’ lifeline instructions, read in a summary).", "Arêtes, abrasion : 29 CFR 1926.502(d)(11); une personne par corde : (d)(10)(i) (de mémoire); O. Reg. 213/91, art. 26.9 (lu, sur les nœuds). Allongement à 8 kN : 16 mm 10 %, nylon 12 mm 27 % (notices de fabricants, lues dans un résumé).";
    SupportsNote, "Computed: a block’s statics (weight, no mortar tension, friction 0.6 assumed), nails by the NDS and the Wood Handbook. The chimney’s size and weight are invented: a mason’s would differ. None of these is an anchor until a competent person has said so for this house.", "Calculés : la statique d’un bloc (poids, mortier sans traction, frottement 0,6 supposé), les clous selon le NDS et le Wood Handbook. Taille et poids de la cheminée sont inventés : un maçon dirait autre chose. Rien de cela n’est un ancrage avant qu’une personne compétente l’ait dit pour cette maison.";
    SupportsSources, "A sling or tie-back rated for it, never the line hooked back on itself: 29 CFR 1926.502(d)(6) (read in an OSHA letter, 2003-07-09). Gate strengths: as under ‘Hook and ring’. What is asked: common practice.", "Une élingue ou un tirant prévu pour cela, jamais la corde sur elle-même : 29 CFR 1926.502(d)(6) (lu dans une lettre d’OSHA, 2003-07-09). Résistance du doigt : voir « Mousqueton et anneau ». Ce qu’on demande : pratique courante.";
    StillAsk, "to be asked about", "à faire vérifier";
    LookAgain, "You took the worse one here: {what}.", "Ici vous avez pris le moins bon : {what}.";
    QuestionsAsk, "Before anything is tied to a chimney: which of these does a competent person ask?", "Avant d’attacher quoi que ce soit à une cheminée : que demande une personne compétente?";
    QuestionsAll, "Those are the five. Without an answer to each it is no anchor.", "Ce sont les cinq. Sans réponse à chacune, ce n’est pas un ancrage.";
    QuestionsMissed, "{n} of the five were left out. Without an answer to each it is no anchor.", "Il en manque {n} sur 5. Sans réponse à chacune, ce n’est pas un ancrage.";
    Asked, "to be asked", "à demander";
    NotTaken, "to be asked, and you left it out", "à demander, et vous l’avez laissée";
    TellsNothing, "tells nothing", "n’apprend rien";
}

impl Half {
    /// What is wrong with it, or right, without figures.
    pub fn why(self) -> Text {
        match self {
            Half::Hook(j) if j.is_right() => Text::of(super::Gear::HooksHolds),
            Half::Hook(j) if j.strength_n().is_some() => Text::of(super::Gear::HooksLittle),
            Half::Hook(_) => Text::of(super::Gear::HooksNoFigure),
            Half::Line(l) => l.why(),
            Half::Support(s) => s.why(),
        }
    }

    /// What is seen.
    pub fn label(self) -> Text {
        match self {
            Half::Hook(j) => j.label(),
            Half::Line(l) => l.label(),
            Half::Support(s) => s.label(),
        }
    }
}

texts! {
    /// What is seen.
    Lined::label;
    Padded, "over a pad", "sur une protection";
    Bare, "over the bare edge", "sur l’arête nue";
    Straight, "no knot", "sans nœud";
    Knotted, "a knot along it", "un nœud en chemin";
    Whole, "braid whole", "tresse entière";
    Frayed, "worn to its core", "usée jusqu’à l’âme";
    Clean, "supple and clean", "souple et propre";
    Stiff, "stiff from paint or solvent", "raidie par la peinture ou le solvant";
    Alone, "one person on it", "une personne dessus";
    Shared, "two people on it", "deux personnes dessus";
    Stopped, "to the ground, a stop at its end", "jusqu’au sol, une butée au bout";
    Short, "ends below the grab", "finit sous le coulisseau";
    Taut, "taut to the anchor", "tendue jusqu’à l’ancrage";
    Slack, "a metre slack on the shingles", "un mètre de mou sur les bardeaux";
    Thick, "16 mm polyester and polypropylene", "16 mm polyester et polypropylène";
    Nylon, "12 mm nylon", "nylon de 12 mm";
}

texts! {
    /// What is wrong with it, or right, without figures.
    Lined::why;
    Padded, "The pad keeps the edge off the line.", "La protection garde l’arête loin de la corde.";
    Bare, "A bare edge saws the line.", "Une arête nue scie la corde.";
    Straight, "Nothing weakens it.", "Rien ne l’affaiblit.";
    Knotted, "A knot can cost half the line’s strength, and the grab cannot pass it.", "Un nœud peut coûter la moitié de la résistance, et le coulisseau n’y passe pas.";
    Whole, "Nothing weakens it.", "Rien ne l’affaiblit.";
    Frayed, "Worn to its core it parts in a usual fall.", "Usée jusqu’à l’âme, elle rompt dans une chute habituelle.";
    Clean, "Nothing weakens it.", "Rien ne l’affaiblit.";
    Stiff, "Paint and solvent leave no figure to count on: out of use.", "Peinture et solvant ne laissent aucun chiffre sur lequel compter : hors service.";
    Alone, "One person a line.", "Une personne par corde.";
    Shared, "If one falls, the other is jerked off the ladder.", "Si l’un tombe, l’autre est arraché de l’échelle.";
    Stopped, "It reaches the ground.", "Elle va jusqu’au sol.";
    Short, "In a fall the grab runs off its end.", "Dans une chute, le coulisseau en sort par le bout.";
    Taut, "No slack to fall through.", "Pas de mou à parcourir en chute.";
    Slack, "Each metre of slack is a metre more to fall.", "Chaque mètre de mou est un mètre de chute en plus.";
    Thick, "It gives less, and grabs are made for it.", "Elle s’allonge moins, et les coulisseaux sont faits pour elle.";
    Nylon, "It gives more, so one falls further; and a grab takes only the line written on it.", "Il s’allonge plus : on tombe plus loin; et un coulisseau ne prend que la corde inscrite dessus.";
}

texts! {
    /// What is wrong with it, or right, without figures.
    Slung::why;
    Low, "Low down a chimney tips last.", "En bas, une cheminée bascule en dernier.";
    High, "The higher the sling, the sooner the chimney tips.", "Plus l’élingue est haute, plus tôt la cheminée bascule.";
    Hard, "The whole stack resists.", "Toute la cheminée résiste.";
    Soft, "In soft joints only the bricks above the sling resist.", "Avec des joints mous, seules les briques au-dessus résistent.";
    Choked, "The sling is rated for it, and the line goes to its ring.", "L’élingue est prévue pour cela, et la corde va à son anneau.";
    HookedBack, "The line’s own hook is pulled across its gate, and brick cuts the line.", "Le mousqueton est tiré en travers du doigt, et la brique coupe la corde.";
    Rafters, "The nails hold in wood.", "Les clous tiennent dans le bois.";
    Boards, "All nails missed the rafters: it lets go in a usual fall.", "Tous les clous ont manqué les chevrons : il lâche dans une chute habituelle.";
    Eye, "Its maker states what it bears.", "Son fabricant dit ce qu’il porte.";
    Pipe, "It lets air into the drains; it is no anchor.", "Il aère les tuyaux; ce n’est pas un ancrage.";
    TiedBack, "The tie-back can bear it all.", "Le tirant peut tout porter.";
    Loose, "So high up the chimney alone tips in a usual fall.", "Si haut, la cheminée seule bascule dans une chute habituelle.";
}

texts! {
    /// What is seen.
    Slung::label;
    Low, "sling just above the roof", "élingue juste au-dessus du toit";
    High, "sling under the chimney’s top", "élingue sous le haut de la cheminée";
    Hard, "joints hard and full", "joints durs et pleins";
    Soft, "joints soft and open", "joints mous et ouverts";
    Choked, "sling round it, line to its ring", "élingue autour, corde à son anneau";
    HookedBack, "line round it, hooked back on itself", "corde autour, raccrochée sur elle-même";
    Rafters, "nails in the rafters", "clous dans les chevrons";
    Boards, "nails in the boards alone", "clous dans le voligeage seul";
    Eye, "rated eye", "œillet d’ancrage à charge nominale";
    Pipe, "vent pipe", "tuyau d’évent";
    TiedBack, "tied back to the rafters behind it", "retenue aux chevrons derrière";
    Loose, "not tied back", "sans tirant";
}

texts! {
    /// The question.
    Question::label;
    Solid, "Brick all through, or a shell on a frame?", "Brique pleine, ou coquille sur une ossature?";
    Joints, "Joints hard and full, up to the sling?", "Joints durs et pleins jusqu’à l’élingue?";
    Way, "Which way would a fall pull, and how high up?", "Dans quel sens tirerait une chute, et à quelle hauteur?";
    Bears, "What does it bear, by whom, in writing?", "Que porte-t-elle, selon qui, par écrit?";
    Sling, "Is the sling rated for it, and clear of corners?", "L’élingue est-elle prévue pour cela, à l’écart des angles?";
    Looks, "Does it look strong?", "A-t-elle l’air solide?";
    Before, "Did the last crew tie to it?", "La dernière équipe s’y est-elle attachée?";
    Painted, "When was it painted?", "Quand a-t-elle été peinte?";
}
