//! What findings say, both languages side by side.

use super::table::Text;
use crate::rules::FindingCode;

macro_rules! findings {
    ($($code:ident {
        title $title_en:literal, $title_fr:literal;
        says $says_en:literal, $says_fr:literal;
        $(met $met_en:literal, $met_fr:literal;)?
        change $change_en:literal, $change_fr:literal;
    })*) => {
        impl FindingCode {
            /// Its heading.
            pub fn title(self) -> Text {
                match self { $(FindingCode::$code => Text { en: $title_en, fr: $title_fr },)* }
            }
            /// What it says where its limit is not met, or where it has none.
            pub fn says(self) -> Text {
                match self { $(FindingCode::$code => Text { en: $says_en, fr: $says_fr },)* }
            }
            /// What it says where its limit is met; one that needs no second sentence says the first.
            pub fn says_met(self) -> Text {
                match self { $(FindingCode::$code => findings!(@met self $($met_en, $met_fr)?),)* }
            }
            /// What to change.
            pub fn change(self) -> Text {
                match self { $(FindingCode::$code => Text { en: $change_en, fr: $change_fr },)* }
            }
        }
    };
    (@met $code:ident) => { $code.says() };
    (@met $code:ident $en:literal, $fr:literal) => { Text { en: $en, fr: $fr } };
}

findings! {
    StrikesGround {
        title "Comes down to the ground", "Heurte le sol";
        says "The worker reaches the ground at {value}.", "La personne atteint le sol à {value}.";
        change "Raise the grab; use a shorter link that its maker allows. Where there is still too little room, fall arrest is the wrong method: stop and ask.", "Montez le coulisseau; prenez un cordon plus court, permis par son fabricant. S’il manque encore de la place, l’arrêt de chute est la mauvaise méthode : arrêtez et demandez.";
    }
    StrikesObstacle {
        title "Comes down on the deck", "Tombe sur la terrasse";
        says "The worker lands on the deck at {value}.", "La personne tombe sur la terrasse à {value}.";
        change "Raise the grab, or work where nothing stands below. Otherwise stop and ask.", "Montez le coulisseau, ou travaillez là où rien ne dépasse en bas. Sinon, arrêtez et demandez.";
    }
    OffRope {
        title "Comes off the rope", "Sort de la corde";
        says "The rope left the grab. Nothing holds the worker.", "La corde est sortie du coulisseau. Plus rien ne retient la personne.";
        change "Close the latch, point the arrow to the anchor, use a line with the maker’s stop at its end.", "Fermez le loquet, tournez la flèche vers le point d’ancrage, prenez une corde munie de l’arrêt du fabricant.";
    }
    AnchorGaveWay {
        title "The anchor gives way", "L’ancrage cède";
        says "The pull was more than such an anchor can be counted on to hold: {value}.", "La traction dépassait ce qu’on peut attendre d’un tel point d’ancrage : {value}.";
        change "Tie to the framing or to a rated anchor that a competent person has looked at.", "Attachez à la charpente ou à un ancrage à charge nominale qu’une personne compétente a examiné.";
    }
    PeakForce {
        title "Force on the body", "Force sur le corps";
        says "{value} does not meet the {limit} limit.", "{value} ne respecte pas la limite de {limit}.";
        met "{value} meets the {limit} limit.", "{value} respecte la limite de {limit}.";
        change "Raise the grab to shorten the free fall, or use an absorber that tears at a lower force.", "Montez le coulisseau pour raccourcir la chute libre, ou prenez un absorbeur qui se déchire à une force moindre.";
    }
    FreeFall {
        title "Free fall", "Chute libre";
        says "{value} does not meet the {limit} limit.", "{value} ne respecte pas la limite de {limit}.";
        met "{value} meets the {limit} limit.", "{value} respecte la limite de {limit}.";
        change "Raise the grab; use a shorter link that its maker allows.", "Montez le coulisseau; prenez un cordon plus court, permis par son fabricant.";
    }
    ForceOrFreeFall {
        title "One of two limits is enough here", "Une de deux limites suffit ici";
        says "This place asks for the force limit or the free-fall limit; the one shown decided.", "Cet endroit exige la limite de force ou celle de chute libre; celle affichée a décidé.";
        change "Nothing: this explains the rule.", "Rien : ceci explique la règle.";
    }
    StoppingDistance {
        title "Stopping distance", "Distance d’arrêt";
        says "{value} to stop, without the rope’s stretch, does not meet the {limit} limit.", "Un arrêt en {value}, sans l’allongement de la corde, ne respecte pas la limite de {limit}.";
        met "{value} to stop, without the rope’s stretch, meets the {limit} limit.", "Un arrêt en {value}, sans l’allongement de la corde, respecte la limite de {limit}.";
        change "Shorten the free fall: raise the grab.", "Raccourcissez la chute libre : montez le coulisseau.";
    }
    AbsorberSpent {
        title "Absorber spent", "Absorbeur épuisé";
        says "It tore to its end, {value}. After that nothing limits the force.", "Il s’est déchiré jusqu’au bout, {value}. Ensuite, plus rien ne limite la force.";
        change "Shorten the free fall, or use a whole absorber meant for this mass.", "Raccourcissez la chute libre, ou prenez un absorbeur intact, prévu pour cette masse.";
    }
    NoAbsorber {
        title "No energy absorber", "Pas d’absorbeur d’énergie";
        says "Only the stretch of the rope softened the stop.", "Seul l’allongement de la corde a adouci l’arrêt.";
        change "Use a lanyard with an energy absorber.", "Prenez un cordon avec absorbeur d’énergie.";
    }
    GrabReversed {
        title "Grab upside down", "Coulisseau à l’envers";
        says "With its arrow down the grab cannot lock; it runs along the rope. Since 2004, a grab in Canada must be made so that it cannot go on upside down, unless it works either way (CSA Z259.2.1, by a provincial bulletin).", "Quand la flèche pointe vers le bas, le coulisseau ne peut pas bloquer; il file le long de la corde. Au Canada, depuis 2004, un coulisseau doit refuser d’être posé à l’envers, sauf s’il est fait pour les deux sens (CSA Z259.2.1, d’après un bulletin provincial).";
        change "Take it off and put it back with the arrow towards the anchor.", "Retirez-le et remettez-le, la flèche vers l’ancrage.";
    }
    LatchOpen {
        title "Latch open", "Loquet ouvert";
        says "With the latch open the rope can leave the grab.", "Quand le loquet est ouvert, la corde peut sortir du coulisseau.";
        change "Close it, then pull down on the grab to test.", "Fermez-le, puis tirez le coulisseau vers le bas pour vérifier.";
    }
    BoltLoose {
        title "Bolt loose", "Boulon desserré";
        says "With the bolt loose the grab slides before it holds.", "Quand le boulon est desserré, le coulisseau glisse avant de tenir.";
        change "Tighten it, and look again every 15 to 20 minutes (common practice).", "Serrez-le, et vérifiez de nouveau toutes les 15 à 20 minutes (pratique courante).";
    }
    GrabLow {
        title "Grab below the D-ring", "Coulisseau sous l’anneau en D";
        says "The grab is {value} below the D-ring: add that to the lanyard’s whole length. That is the free fall to count with.", "Le coulisseau est à {value} sous l’anneau en D : ajoutez cette hauteur à toute la longueur du cordon; c’est la chute libre à compter.";
        change "Move it up to the D-ring’s height or higher, each time you climb.", "Montez-le à la hauteur de l’anneau en D ou plus haut, chaque fois que vous montez.";
    }
    HarnessLoose {
        title "Harness loose", "Harnais lâche";
        says "The D-ring rides up before the harness holds. A slack leg or chest strap can hurt badly, or let a person fall out.", "L’anneau en D remonte avant que le harnais retienne; une sangle de cuisse ou de poitrine lâche peut laisser sortir la personne ou la blesser gravement.";
        change "Tighten the straps until a flat hand just fits (common practice).", "Ajustez les sangles : une main à plat passe tout juste (pratique courante).";
    }
    AnchorCapacity {
        title "What the anchor bears", "Ce que l’ancrage supporte";
        says "Breaking load {value} (one in twenty breaks at that or less): does not meet the {limit} asked for.", "{value} de charge de rupture (le plus faible sur vingt) ne respecte pas les {limit} exigés.";
        met "Breaking load {value} (one in twenty breaks at that or less): meets the {limit} asked for.", "{value} de charge de rupture (le plus faible sur vingt) respecte les {limit} exigés.";
        change "Ask a competent person for an anchor that meets the rule.", "Demandez à une personne compétente un ancrage conforme à la règle.";
    }
    AnchorBasis {
        title "Anchor: two kinds of load", "Ancrage : deux sortes de charge";
        says "This place asks what the anchor carries day in, day out ({limit}); {value} is where it breaks. They are different things: ask.", "Le règlement demande ce que le point d’ancrage porte tous les jours ({limit}); {value} est la charge où il rompt. Ce sont deux choses différentes : demandez.";
        change "Have a competent person judge the anchor.", "Faites juger l’ancrage par une personne compétente.";
    }
    LadderAngle {
        title "Ladder’s foot", "Pied de l’échelle";
        says "At {value} from the ground the foot is not where it should be: out by {range} of the length.", "À {value} du sol, le pied n’est pas où il faut : il devrait être écarté d’{range} de la longueur.";
        met "At {value} from the ground the foot is out by {range} of the length, measured to two parts in a hundred.", "À {value} du sol, le pied est écarté d’{range} de la longueur, à deux centièmes près.";
        change "Set the foot out by {range} of the length to the support.", "Écartez le pied d’{range} de la longueur jusqu’à l’appui.";
    }
    ClearanceMargin {
        title "Room left below", "Dégagement restant";
        says "{value} left is less than the {limit} kept in reserve.", "{value} restants, c’est moins que les {limit} gardés en réserve.";
        met "{value} left, more than the {limit} kept in reserve.", "{value} restants, plus que les {limit} gardés en réserve.";
        change "Raise the grab; use a shorter link that its maker allows.", "Montez le coulisseau; prenez un cordon plus court, permis par son fabricant.";
    }
    HardSwing {
        title "A blow on the way", "Un choc en route";
        says "On the way the body swings in and strikes the house or the ladder at {value}: that can injure.", "En chemin, le corps revient et frappe la maison ou l’échelle à {value} : cela peut blesser.";
        change "Less slack, closer in, and the anchor straight above make the blow smaller.", "Moins de mou, plus près du mur et l’ancrage droit au-dessus adoucissent le choc.";
    }
    TriggerHeight {
        title "Is protection required here?", "La protection est-elle exigée ici?";
        says "The rules here start at {limit}. A fall from {value} can still kill.", "Les règles commencent ici à {limit}. Une chute de {value} peut quand même tuer.";
        met "At {value} this place requires protection against falls (from {limit}). Ask first whether a guardrail or travel restraint would do.", "À {value}, cet endroit exige une protection contre les chutes (à partir de {limit}). Demandez-vous d’abord si un garde-corps ou une limitation de déplacement suffirait.";
        change "Think of the other methods first.", "Pensez d’abord aux autres méthodes.";
    }
    RopeBroke {
        title "The rope broke", "La corde a rompu";
        says "A rope in this state bears {value}; the fall pulled harder.", "Une corde dans cet état supporte {value}; la chute a tiré plus fort.";
        change "Take the rope out of service before the climb.", "Retirez la corde du service avant de monter.";
    }
    LinkBroke {
        title "The connection let go", "Un connecteur, le cordon ou le harnais a lâché";
        says "Lanyard, connector and harness in this state bear {value}; the fall pulled harder.", "Le cordon, le connecteur et le harnais dans cet état supportent {value}; la chute a tiré plus fort.";
        change "Look over connector and webbing before the climb, and take what is faulty out of service.", "Examinez le connecteur et les sangles avant de monter, et retirez ce qui est défectueux.";
    }
    AnchorUnsuitable {
        title "Not an anchor", "Pas un ancrage";
        says "Vents, ducts, pipes, gutters and masts are no anchors. About {value} is all that is assumed here.", "Évents, conduits, tuyaux, gouttières et mâts ne sont pas des ancrages. On ne suppose ici qu’environ {value}.";
        change "Stop and ask for an anchor in the framing, or a rated one.", "Arrêtez et demandez un ancrage dans la charpente, ou un ancrage à charge nominale.";
    }
    AnchorAllowable {
        title "What the anchor may bear", "Ce que l’ancrage peut porter";
        says "It may carry {value} day in, day out (within allowable stress). That does not meet the {limit} working load asked for.", "{value} de charge admissible ne respecte pas la charge de service exigée de {limit}.";
        met "It may carry {value} day in, day out (within allowable stress). That meets the {limit} working load asked for.", "{value} de charge admissible respecte la charge de service exigée de {limit}.";
        change "Stop and ask. The anchor’s maker says which fasteners, how many, and into what.", "Arrêtez et demandez : la notice du point d’ancrage dit quelles attaches, combien, et dans quoi.";
    }
    AnchorFactor {
        title "Anchor by safety factor", "Ancrage par coefficient de sécurité";
        says "It breaks at {value} times the most this system can pull ({other}: the absorber’s label, or this fall if it pulled more). That is enough only where a qualified person designed it.", "Il rompt à {value} fois le plus que ce système peut tirer ({other} : l’étiquette de l’absorbeur, ou cette chute si elle a tiré plus). Cela suffit seulement si une personne qualifiée l’a conçu.";
        met "It breaks at {value} times the most this system can pull ({other}): meets the factor of {limit}.", "Il rompt à {value} fois le plus que ce système peut tirer ({other}) : atteint le facteur de {limit}.";
        change "Have a qualified person design it, or take an anchor of the full breaking load.", "Faites-le concevoir par une personne qualifiée, ou prenez un ancrage de pleine charge de rupture.";
    }
    AnchorChooser {
        title "Who chose the anchor", "Qui a choisi l’ancrage";
        says "The worker chose and set the anchor alone.", "La personne a choisi et posé l’ancrage sans aide.";
        change "Have a competent person choose it and look at it.", "Faites-le choisir et examiner par une personne compétente.";
    }
    FastenersMissed {
        title "Fasteners that missed the framing", "Attaches à côté de la charpente";
        says "{value} fasteners hold in the sheathing alone, which lets go at a fraction of the load.", "{value} attaches ne tiennent que dans le revêtement, qui lâche à une fraction de la charge.";
        change "Pull each miss, seal the hole, and drive a new fastener into the rafter.", "Arrachez chaque attache qui a manqué, bouchez le trou et enfoncez une attache neuve dans le chevron.";
    }
    MortarWeak {
        title "Weak mortar", "Mortier faible";
        says "With soft joints only the bricks above the sling resist.", "Avec des joints tendres, seules les briques au-dessus de l’élingue résistent.";
        change "Leave this chimney alone and ask for another anchor.", "Laissez cette cheminée et demandez un autre ancrage.";
    }
    HigherMethod {
        title "Another method comes first", "Une autre méthode passe d’abord";
        says "On this job a method that ranks before fall arrest can be used. A fall that cannot happen needs no arrest.", "Sur ce travail, une méthode qui passe avant l’arrêt de chute est possible. Une chute qui ne peut pas se produire n’a pas à être arrêtée.";
        change "Use it: from the ground or a platform, then guardrail, then travel restraint; fall arrest comes after.", "Utilisez-la : du sol ou d’une plateforme, puis garde-corps, puis limitation de déplacement; l’arrêt de chute vient après.";
    }
    ArrestTooLow {
        title "Too low for fall arrest", "Trop bas pour l’arrêt de chute";
        says "Even with the grab as high as it goes, the usual sum (all at its worst) needs {value} under the feet; there is {other}. This gear cannot be counted on here.", "Même avec le coulisseau au plus haut, la somme usuelle (tout au pire) demande {value} sous les pieds; il y a {other}. On ne peut pas compter sur ce matériel ici.";
        change "Use another method here, and ask.", "Prenez une autre méthode ici, et demandez.";
    }
    ClearanceSum {
        title "Clearance by the usual sum", "Dégagement par la somme usuelle";
        says "The usual sum needs {value} under the feet; there is {other}.", "La somme usuelle exige {value} sous les pieds; il y a {other}.";
        met "The usual sum needs {value} under the feet; there is {other}.", "La somme usuelle exige {value} sous les pieds; il y a {other}.";
        change "Raise the grab, or use a shorter link that its maker allows; where it is still short, ask.", "Montez le coulisseau ou prenez un cordon plus court, permis par son fabricant; s’il manque encore de la place, demandez.";
    }
    RescueMissing {
        title "The rescue", "Le sauvetage";
        says "A worker who hangs must be brought down in minutes. The rescue is not planned the way this place asks.", "Une personne suspendue doit être descendue en quelques minutes. Le sauvetage n’est pas prévu comme cet endroit l’exige.";
        change "Write down who comes, with what, from where; read it to the crew before anybody climbs.", "Écrivez qui vient, avec quoi, d’où; lisez-le à l’équipe avant que quiconque monte.";
    }
    TrainingExpired {
        title "Training has run out", "Formation échue";
        says "The card is valid for {limit} years and has run out.", "La carte vaut {limit} ans et elle est échue.";
        change "Take the refresher before working at height.", "Suivez le recyclage avant de travailler en hauteur.";
    }
    GearFrayed {
        title "Lifeline worn through", "Corde usée";
        says "The sheath is worn through and the core shows.", "La gaine est percée et l’âme est visible.";
        change "Take it out of service.", "Retirez-la du service.";
    }
    GearKnot {
        title "Knot along the lifeline", "Nœud le long de la corde";
        says "A knot can cost half the rope’s strength, and the grab cannot pass it.", "Un nœud peut coûter la moitié de la résistance, et le coulisseau ne le passe pas.";
        change "Take the rope out of service and ask.", "Retirez la corde du service et demandez.";
    }
    GearGate {
        title "Gate does not lock", "Cliquet qui ne verrouille pas";
        says "The gate closes but does not lock; pressed the wrong way it opens.", "Le cliquet du mousqueton se ferme sans verrouiller; pressé de travers, il s’ouvre.";
        change "Take it out of service.", "Retirez-le du service.";
    }
    GearRust {
        title "Connector pitted by rust", "Connecteur piqué de rouille";
        says "Rust has eaten pits into the metal.", "La rouille a creusé le métal.";
        change "Take it out of service.", "Retirez-le du service.";
    }
    GearPack {
        title "Absorber already torn", "Absorbeur déjà déployé";
        says "The pack tore in an earlier fall and was pushed back into its cover: nothing is left to tear.", "Le sachet s’est déchiré lors d’une chute et a été remis dans sa housse : il ne reste rien à déchirer.";
        change "Take the lanyard out of service: an absorber works once.", "Retirez le cordon du service : un absorbeur ne sert qu’une fois.";
    }
    GearWebbing {
        title "Harness webbing cut", "Sangle du harnais coupée";
        says "A strap is cut in from its edge.", "Une sangle est coupée depuis le bord.";
        change "Take the harness out of service.", "Retirez le harnais du service.";
    }
    GearLabel {
        title "No label to read", "Pas d’étiquette lisible";
        says "Without its label nobody can tell how old it is or what it was made for.", "Sans étiquette, nul ne sait son âge ni son usage.";
        change "Take it out of service until somebody competent has said what it is.", "Retirez-le du service jusqu’à ce qu’une personne compétente ait dit ce que c’est.";
    }
    AbsorberExtension {
        title "Tear-out of the absorber", "Déploiement de l’absorbeur";
        says "{value} torn out does not meet the {limit} of the type test.", "{value} de déploiement ne respecte pas les {limit} de l’essai de type.";
        met "{value} torn out meets the {limit} of the type test.", "{value} de déploiement respecte les {limit} de l’essai de type.";
        change "Shorten the free fall.", "Raccourcissez la chute libre.";
    }
    ArrestDistance {
        title "From lock to stop", "Arrêt complet";
        says "{value} from lock to stop does not meet the {limit} of the type test.", "{value} du blocage à l’arrêt ne respecte pas les {limit} de l’essai de type.";
        met "{value} from lock to stop meets the {limit} of the type test.", "{value} du blocage à l’arrêt respecte les {limit} de l’essai de type.";
        change "Shorten the free fall.", "Raccourcissez la chute libre.";
    }
    LadderBarely {
        title "The ladder holds, barely", "L’échelle tient à peine";
        says "The foot needs a friction of {value}; this ground gives about {other}. Feet and ground differ by more than that from place to place.", "Il faut au pied un frottement de {value}; ce sol en donne environ {other}. D’un endroit à l’autre, pieds et sol diffèrent de plus que cela.";
        change "Tie the top, or have the foot held; then set the foot at a quarter of the length.", "Attachez le haut ou faites tenir le pied; placez ensuite le pied au quart de la longueur.";
    }
    LadderSlides {
        title "The ladder slides out", "L’échelle glisse";
        says "The foot needs a friction of {value}; this ground gives about {other}. The ladder’s slide is what begins the fall.", "Il faut au pied un frottement de {value}; ce sol en donne environ {other}. L’échelle glisse, puis la personne tombe.";
        change "Set the foot at a quarter to a third of the length, on dry and firm ground, and tie the top.", "Placez le pied au quart ou au tiers de la longueur, sur un sol ferme et sec, et attachez le haut.";
    }
    LadderTips {
        title "The ladder tips back", "L’échelle bascule en arrière";
        says "It stands so steep that the weight of worker and ladder is behind its foot.", "L’échelle est si droite que le poids de la personne et de l’échelle tombe derrière son pied.";
        change "Bring the foot out to a quarter of the length, and tie the top.", "Écartez le pied d’un quart de la longueur et attachez le haut.";
    }
    LadderReach {
        title "Reaching too far", "Trop penché";
        says "Leaning out moves the weight of worker and ladder {value} from the ladder’s middle. That is outside the rail, which is at {other}.", "Quand on se penche ainsi, le centre de masse de la personne et de l’échelle est à {value} du milieu de l’échelle, au-delà du montant, à {other}.";
        change "Climb down and move the ladder: keep the belt buckle between the rails (common practice).", "Descendez et déplacez l’échelle : gardez la boucle de ceinture entre les montants (pratique courante).";
    }
    LadderUntied {
        title "Ladder not tied", "Échelle non attachée";
        says "Nothing but friction keeps the ladder in place.", "Seul le frottement retient l’échelle.";
        change "Tie the top; until then somebody holds the foot (common practice).", "Attachez le haut; d’ici là, faites tenir le pied par quelqu’un (pratique courante).";
    }
    PowerLine {
        title "DANGER: power line", "DANGER : ligne électrique";
        says "Standing here, ladder or hand can come within {value} of the wire; the approach distance is {limit}.", "D’ici, l’échelle ou la main peut venir à {value} du fil; la distance d’approche est de {limit}.";
        met "Standing here and turning about its foot, the ladder stays {value} from the wire, and so does a hand; the approach distance is {limit}. A pole adds its own length. Carry the ladder lying down.", "Posée ici et pivotant sur son pied, l’échelle reste à {value} du fil, la main aussi; la distance d’approche est de {limit}. Un manche ajoute sa longueur. Portez l’échelle couchée.";
        change "Stop and ask: have the line’s owner cut it off or move it, or use a shorter ladder elsewhere.", "Arrêtez et demandez : l’exploitant doit couper ou déplacer la ligne; sinon, prenez une échelle plus courte ailleurs.";
    }
    AbsorberMass {
        title "Absorber and body mass", "Absorbeur et masse du corps";
        says "{value} is outside the masses this class of absorber is made for.", "{value} est hors des masses prévues pour cette classe d’absorbeur.";
        change "Use an absorber of the class made for this mass.", "Prenez un absorbeur de la classe prévue pour cette masse.";
    }
    NotClipped {
        title "Not clipped in", "Pas accroché";
        says "The lanyard was not clipped to the D-ring. Nothing holds the worker, whatever else is right.", "Le cordon n’était pas accroché à l’anneau en D. Rien ne retient la personne, même si tout le reste est bon.";
        change "Clip the lanyard to the dorsal D-ring, and see the gate close, before leaving the ground.", "Accrochez le cordon à l’anneau en D dorsal et regardez le cliquet du mousqueton se fermer, avant de quitter le sol.";
    }
    RopeSlack {
        title "Slack above the grab", "Du mou au-dessus du coulisseau";
        says "There are {value} of slack rope between the anchor and the grab: all of it is free fall before the line even begins to hold.", "Il y a {value} de mou entre l’ancrage et le coulisseau : c’est autant de chute libre avant que la corde commence à retenir.";
        change "Pull the rope through the grab until it is straight to the anchor, and again after each move up.", "Tirez la corde dans le coulisseau jusqu’à ce qu’elle soit droite vers l’ancrage; recommencez à chaque montée.";
    }
    EdgeBare {
        title "A bare edge under the rope", "Une arête nue sous la corde";
        says "The lifeline is loaded over the bare edge of the roof: drip edge, fascia metal and grit can cut it. The sum counts the edge as friction only.", "La corde d’assurance travaille sur l’arête nue du toit : larmier, tôle et gravillons peuvent la couper. Le calcul ne compte l’arête que comme un frottement.";
        change "Put an edge pad or a roller where the rope passes the eave, and look at that length of rope each time.", "Posez une protection d’arête ou un rouleau là où la corde passe le bord, et regardez ce bout de corde chaque fois.";
    }
    RopeEndOpen {
        title "Nothing at the rope’s end", "Rien au bout de la corde";
        says "A grab that slides would run off the rope’s end.", "Un coulisseau qui glisse sortirait au bout de la corde.";
        change "Use a line with the maker’s stop at its end, long enough to reach the ground. Some places forbid knots.", "Prenez une corde munie de l’arrêt du fabricant, qui va jusqu’au sol. Des règlements interdisent les nœuds.";
    }
    RopeEndKnot {
        title "A knot instead of a stop", "Un nœud en guise d’arrêt";
        says "The rope’s end has a knot where its maker’s stop belongs.", "Au bout de la corde il y a un nœud, là où va l’arrêt du fabricant.";
        change "Use a line with the maker’s stop at its end, and look up whether knots are allowed where you work.", "Prenez une corde munie de l’arrêt du fabricant et vérifiez si les nœuds sont permis là où vous travaillez.";
    }
    RopeShort {
        title "The rope does not reach the ground", "La corde ne va pas jusqu’au sol";
        says "The lifeline ends {value} above what lies below.", "La corde d’assurance s’arrête à {value} au-dessus de ce qui est dessous.";
        change "Use a line long enough to reach the ground, or a level nobody can fall from.", "Prenez une corde assez longue pour aller jusqu’au sol, ou jusqu’à un niveau d’où personne ne peut tomber.";
    }
    GrabLink {
        title "Lanyard too long for a grab", "Cordon trop long pour un coulisseau";
        says "{value} between grab and D-ring is more than the {limit} a rope grab is made to carry.", "{value} entre le coulisseau et l’anneau en D dépassent les {limit} pour lesquels un coulisseau est fait.";
        change "Use a shorter link that the grab’s maker allows. Never knot or wrap a long one.", "Prenez un cordon plus court, permis par le fabricant du coulisseau. Ne nouez ni n’enroulez jamais un cordon long.";
    }
    LadderNotRequired {
        title "Is protection required here?", "La protection est-elle exigée ici?";
        says "Not required on a portable ladder here; wise all the same.", "Elle n’est pas exigée sur une échelle portative ici; elle reste utile.";
        change "Ask your employer: many ask for more than the rule.", "Demandez à votre employeur : plusieurs exigent plus que la règle.";
    }
    LadderConditions {
        title "On a portable ladder", "Sur une échelle portative";
        says "This place has conditions of its own for work from a portable ladder: three points of contact, light work, short time, or a free hand. Ask which count here.", "Ici, le travail sur une échelle portative a ses propres conditions : trois points d’appui, travail léger, courte durée ou main libre. Demandez lesquelles comptent.";
        change "Ask a competent person which of the conditions apply.", "Demandez à une personne compétente quelles conditions s’appliquent.";
    }
    AnchorOpen {
        title "Anchor: not settled, ask", "Point d’ancrage : à vérifier, demandez";
        says "By what is counted here it comes to {value}; this place asks for {limit}. Left out: truss or rafter, splits, rot, plate, spacing, edges of the wood; in a chimney cracks, flue and flashing. Ask.", "Selon ce qui est compté ici, {value}; le règlement demande {limit}. Laissés de côté : ferme ou chevron, fentes, pourriture, plaque, espacement, bords du bois; dans une cheminée, fissures, conduit et solins. Demandez.";
        change "Stop and ask. The anchor’s maker says which fasteners, how many, and into what.", "Arrêtez et demandez : la notice du point d’ancrage dit quelles attaches, combien, et dans quoi.";
    }
    AnchorEngineered {
        title "Anchor: rated and designed", "Point d’ancrage : à charge nominale, conçu";
        says "A rated anchor, set to a qualified person’s drawing for this load.", "Un point d’ancrage à charge nominale, posé selon le plan d’une personne qualifiée.";
        change "Look at its tag and drawing before each use.", "Regardez son étiquette et le plan avant chaque usage.";
    }
    WireUnknown {
        title "DANGER: a wire, and nobody has asked", "DANGER : un fil, et personne n’a demandé";
        says "Nobody knows what distance is enough: the owner has not said what the wire carries. From here ladder or hand come within {value} of it.", "Personne ne sait quelle distance suffit : l’exploitant n’a pas dit la tension du fil. D’ici, l’échelle ou la main en vient à {value}.";
        change "Stop. Ask the line’s owner what it carries and what distance to keep. Until then nothing goes up.", "Arrêtez. Demandez à l’exploitant la tension et la distance à garder. D’ici là, rien ne monte.";
    }
    WireCarried {
        title "WARNING: carry it lying down", "AVERTISSEMENT : portez-la couchée";
        says "Carried upright under the wire, this ladder comes within {value} of it.", "Portée debout sous le fil, cette échelle en vient à {value}.";
        change "Carry it lying down, two people, away from the wire.", "Portez-la couchée, à deux, loin du fil.";
    }
    ServiceDrop {
        title "WARNING: the service drop", "AVERTISSEMENT : le branchement";
        says "The wire to the eave is live, under 750 V. Its cover is for the weather, not for touching. From here ladder or hand come within {value} of it.", "Le fil qui va à l’avant-toit est sous tension, moins de 750 V. Sa gaine le protège des intempéries; elle ne vous protège pas si vous y touchez. D’ici, l’échelle ou la main en vient à {value}.";
        change "Touch nothing near it. Ask the utility to cover it or cut it off before you work there.", "Ne touchez à rien près de lui. Demandez au distributeur de le couvrir ou de le couper avant d’y travailler.";
    }
    GrabLinkAsk {
        title "Is the lanyard short enough?", "Le cordon est-il assez court?";
        says "By one account the Canadian standard allows at most 0.76 m (30 in) between a rope grab and the D-ring. What yours allows is in its maker’s instructions.", "D’après un compte rendu, la norme canadienne permet 0,76 m (30 po) au plus sur un coulisseau. Ce que le vôtre peut porter est dans sa notice.";
        change "Look it up in the maker’s instructions for the grab, or ask.", "Cherchez dans la notice du coulisseau, ou demandez.";
    }
}
