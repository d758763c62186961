//! Every text in French. Terms follow the Quebec construction code, the CNESST and Ontario's French text.

use super::Key;
use crate::physics::trace::{EventKind, Outcome, Thing};
use crate::practice::lessons::{Ending, Lesson};
use crate::quiz::questions::{AfterCase, ItemKind, Step};
use crate::rules::FindingCode;
use crate::scenario::{AnchorKind, ProblemCode};

pub fn text(key: Key) -> &'static str {
    match key {
        Key::AppName => "Shortfall",
        Key::Tagline => "Que ferait votre montage en cas de chute? Voyez-le ici, à l’écran.",
        Key::Caution => {
            "Ceci est un exercice. Il ne remplace pas une formation reconnue et n’est pas une attestation. Sur un vrai chantier, les notices des fabricants, les règles locales et une personne compétente passent d’abord. Chaque résultat ne vaut que sous les hypothèses montrées."
        }
        Key::SkipToScene => "Aller à la scène",
        Key::Language => "Langue",
        Key::Units => "Unités",
        Key::UnitsMetric => "mètres, kN",
        Key::UnitsFeet => "pieds, livres",
        Key::PlaceLabel => "Règlement appliqué",
        Key::Theme => "Couleurs",
        Key::ThemeAuto => "comme l’appareil",
        Key::ThemeLight => "clair",
        Key::ThemeDark => "sombre",
        Key::Lettering => "Taille du texte",
        Key::LetteringPage => "normale",
        Key::LetteringRoom => "projecteur",
        Key::Options => "Règles, unités",
        Key::SetUpHeading => "Le montage, en partant de l’ancrage",
        Key::SceneHeading => "La scène",
        Key::SceneRegion => "Dessin de la maison en coupe",
        Key::StateHeading => "La scène en mots",
        Key::PartAnchor => "Point d’ancrage",
        Key::PartLifeline => "Corde d’assurance",
        Key::PartGrab => "Coulisseau",
        Key::PartLanyard => "Cordon d’assujettissement",
        Key::PartHarness => "Harnais et personne",
        Key::PartStance => "Où se tient la personne",
        Key::PartLadder => "Échelle",
        Key::PartHouse => "Maison et sol",
        Key::AnchorKindLabel => "Attachée à",
        Key::AnchorPlace => "Distance du faîte, vers le bas de ce versant",
        Key::RopeLength => "Longueur",
        Key::RopeModulus => "Raideur (force pour 100 % d’allongement)",
        Key::EndKnot => "À son bout du bas",
        Key::EndKnotYes => "nœud",
        Key::EndKnotNo => "rien",
        Key::GrabHeight => "Hauteur au-dessus de l’anneau en D",
        Key::GrabArrow => "Flèche vers",
        Key::ArrowUp => "le haut, l’ancrage",
        Key::ArrowDown => "le bas",
        Key::GrabBolt => "Boulon",
        Key::BoltTight => "serré",
        Key::BoltLoose => "desserré",
        Key::GrabLatch => "Loquet",
        Key::LatchClosed => "fermé",
        Key::LatchOpen => "ouvert",
        Key::LanyardLength => "Longueur",
        Key::AbsorberLabel => "Absorbeur d’énergie",
        Key::AbsorberYes => "dans le cordon",
        Key::AbsorberNo => "aucun",
        Key::DeployForce => "Se déchire à",
        Key::MaxExtension => "Se déploie au plus de",
        Key::HarnessFitLabel => "Sangles",
        Key::FitSnug => "ajustées",
        Key::FitLoose => "lâches",
        Key::Mass => "Masse avec vêtements et outils",
        Key::Stature => "Taille",
        Key::StanceLabel => "Se tient",
        Key::StanceLadder => "sur l’échelle",
        Key::StanceRoof => "sur le toit",
        Key::StandingHeight => "Pieds au-dessus du sol",
        Key::FromEave => "Pieds à partir de l’avant-toit, le long du versant",
        Key::LadderFoot => "Pied écarté de la verticale de l’appui",
        Key::LadderLength => "Longueur",
        Key::EaveHeight => "Avant-toit au-dessus du sol",
        Key::RoofPitch => "Pente du toit",
        Key::HalfSpan => "Du mur au faîte",
        Key::Overhang => "Débord",
        Key::BelowLabel => "En dessous",
        Key::BelowGround => "sol nu",
        Key::BelowObstacle => "une terrasse",
        Key::ObstacleHeight => "Hauteur de la terrasse",
        Key::ObstacleDistance => "Distance de la terrasse au mur",
        Key::ObstacleWidth => "Largeur de la terrasse",
        Key::More => "Plus : {name}",
        Key::Less => "Moins : {name}",
        Key::MoreChoices => "Réglages fins",
        Key::Undo => "Annuler",
        Key::Redo => "Rétablir",
        Key::StartOver => "Recommencer",
        Key::RangeHint => "{min} à {max}",
        Key::PredictHeading => "La personne glisse maintenant. Que se passe-t-il?",
        Key::PredictHint => "Dites d’abord, voyez ensuite. Une réponse fausse apprend autant qu’une juste.",
        Key::PredictFirst => "Choisissez d’abord une réponse.",
        Key::EngineMissing => {
            "Le moteur qui calcule la chute n’a pas répondu, deux fois. Rien n’est perdu : relancez, avec un réseau si possible."
        }
        Key::TryAgain => "Réessayer",
        Key::LockAndPlay => "Confirmer et lancer",
        Key::Locked => "Votre réponse est confirmée : {answer}",
        Key::Computing => "Calcul de la chute…",
        Key::Skip => "Passer au résultat",
        Key::ProblemsHeading => "Ce montage est impossible :",
        Key::NotGraded => {
            "Non noté : cette simulation a échoué à son contrôle d’énergie (écart de {value}). Ses nombres ne sont pas affichés. Changez quelque chose et relancez."
        }
        Key::PlayAgain => "Revoir",
        Key::Pause => "Pause",
        Key::Resume => "Continuer",
        Key::SlowPlay => "au 1/8 de la vitesse",
        Key::TruePlay => "à vitesse réelle",
        Key::PrevEvent => "Événement précédent",
        Key::NextEvent => "Événement suivant",
        Key::Scrub => "Moment de la chute",
        Key::StepBack => "Un pas en arrière",
        Key::StepOn => "Un pas en avant",
        Key::PlayerRegion => "Suivre la chute",
        Key::ResultHeading => "Ce qui s’est passé",
        Key::YouPredicted => "Vous avez dit : {said}. Résultat : {real}.",
        Key::PredictedRight => "Vous l’aviez vu venir.",
        Key::PredictedWrong => "Pas ce que vous aviez dit; regardez pourquoi.",
        Key::ScoreLine => "{score} sur 100",
        Key::Passes => "Aucun constat critique.",
        Key::DoesNotPass => "Ce montage ne passe pas.",
        Key::FindingsHeading => "Ce qu’il faut savoir de ce montage",
        Key::WhatToChange => "Quoi changer :",
        Key::SeverityCritical => "critique",
        Key::SeverityMajor => "à changer",
        Key::SeverityMinor => "mieux vaut changer",
        Key::SeverityNote => "à savoir",
        Key::SeverityGood => "comme il se doit",
        Key::Assumed => "valeur supposée",
        Key::FromMemory => "de mémoire, non lu dans la source",
        Key::CheckedOn => "lu dans le texte, {date}",
        Key::SourceLine => "{document}, {clause}",
        Key::ChangeOne => "Changez une seule chose et relancez : cette chute reste en pointillé.",
        Key::GhostNote => "Pointillé : la chute d’avant",
        Key::VerdictStopped => {
            "Arrêt en l’air : {value} sur le corps, respecte la limite de {limit} sous ces hypothèses."
        }
        Key::VerdictStoppedOver => {
            "Arrêt en l’air, mais {value} sur le corps ne respecte pas la limite de {limit}."
        }
        Key::VerdictOnRoof => {
            "Arrêt sur le toit : {value} sur le corps, respecte la limite de {limit} sous ces hypothèses."
        }
        Key::VerdictNoForce => "Arrêt en l’air avec {value} sur le corps; aucune limite de force fixée ici.",
        Key::VerdictGroundShort => "Heurte le sol à {value} : il manquait {missing} de dégagement.",
        Key::VerdictGround => "Heurte le sol à {value} : rien n’a tenu sur la corde.",
        Key::VerdictObstacleShort => "Tombe sur la terrasse à {value} : il manquait {missing} de dégagement.",
        Key::VerdictObstacle => "Tombe sur la terrasse à {value} : rien n’a tenu sur la corde.",
        Key::VerdictLetGo => "Sort de la corde : plus rien ne retient la personne.",
        Key::VerdictLetGoGround => "Sort de la corde et tombe; choc à {value}.",
        Key::VerdictAnchor => "L’ancrage cède à {value} (supposé) : plus rien ne retient la corde.",
        Key::VerdictAnchorGround => "L’ancrage cède et la personne tombe; choc à {value}.",
        Key::VerdictFreeFall => {
            "Arrêt en l’air, mais {value} de chute libre ne respecte pas la limite de {limit}."
        }
        Key::PlotTitleUnder => "{value} au plus, sous la limite de {limit}",
        Key::PlotTitleOver => "{value} au plus, au-dessus de la limite de {limit}",
        Key::PlotTitleNone => "{value} au plus sur le corps",
        Key::PlotAxisForce => "Force sur le corps ({unit})",
        Key::PlotAxisTime => "Temps après la glissade (s)",
        Key::PlotLimit => "limite {limit}, {place}",
        Key::PlotPeak => "maximum {value}",
        Key::PlotRegion => "Force sur le corps en fonction du temps",
        Key::DimFreeFall => "chute libre {value}",
        Key::DimClearance => "reste {value}",
        Key::DimStanding => "pieds à {value}",
        Key::DimMissing => "dégagement manquant {value}",
        Key::LabelDeck => "terrasse",
        Key::LabelAnchor => "ancrage",
        Key::LabelGrab => "coulisseau",
        Key::ScaleBar => "{value}",
        Key::StateStanding => "La personne se tient sur l’échelle, les pieds à {height} du sol.",
        Key::StateRoof => {
            "La personne se tient sur le toit, à {distance} de l’avant-toit; l’avant-toit est à {height} du sol."
        }
        Key::StateGrab => {
            "Le coulisseau est {offset} l’anneau en D, flèche vers {arrow}, boulon {bolt}, loquet {latch}."
        }
        Key::StateRope => {
            "La corde d’assurance mesure {length} ({kind}); à son bout : {end}. Le cordon mesure {lanyard}, absorbeur d’énergie : {absorber}."
        }
        Key::StateAnchor => "Ancrage : {kind}.",
        Key::StateBelowGround => "En dessous, le sol nu.",
        Key::StateBelowObstacle => "En dessous, une terrasse haute de {height}, à {distance} du mur.",
        Key::StateAfter => "Pendant la dernière chute : {events}.",
        Key::Above => "{value} au-dessus de",
        Key::Below => "{value} au-dessous de",
        Key::Level => "à la hauteur de",
        Key::Storyboard => "Cinq moments de la chute",
        Key::StillOf => "{event}, {time}",
        Key::KeyHelp => {
            "Le dessin étant actif : la barre d’espace lance et arrête, les flèches avancent pas à pas, Page précédente et Page suivante vont d’un événement à l’autre."
        }
        Key::VersionLine => {
            "Version {app}, physique {physics}, règles {rules}. Écart d’énergie de {residual} dans cette simulation."
        }
        Key::ModelNote => {
            "Un mannequin de neuf segments articulés tombe dans le plan du dessin, sur une liaison faite de corde, coulisseau, cordon, absorbeur et harnais. Sont omis : le balancement latéral, le poids de la corde, le vent, les mains qui parent le choc; la vitesse d’un coup contre la maison ou l’échelle est celle du tronc et des cuisses, car une tête et des jambes sans muscles fouettent. Une échelle non attachée bouge si elle ne tient pas ou si elle est heurtée."
        }
        Key::Faster => "Vitesse",
        Key::SaveFile => "Enregistrer le montage",
        Key::OpenFile => "Ouvrir un montage",
        Key::CopyLink => "Copier un lien vers ce montage",
        Key::LinkCopied => "Lien copié.",
        Key::FileBad => "Pas ouvert; rien n’a changé. {reason}",
        Key::Kept => "Ce montage est conservé sur cet appareil.",
        Key::NotKept => {
            "Cet appareil ne conserve rien (stockage désactivé ou plein) : enregistrez le montage dans un fichier avant de fermer la page."
        }
        Key::Anchor(AnchorKind::RidgePlateInFraming) => "plaque de faîte dans la charpente",
        Key::Anchor(AnchorKind::RidgePlateInSheathing) => "plaque de faîte dans le seul revêtement",
        Key::Anchor(AnchorKind::ChimneySling) => "élingue autour de la cheminée",
        Key::Anchor(AnchorKind::VentPipe) => "tuyau d’évent",
        Key::Anchor(AnchorKind::Gutter) => "gouttière",
        Key::Anchor(AnchorKind::RatedEye) => "œillet d’ancrage à charge nominale",
        Key::Problem(ProblemCode::NotFinite) => "{field} : pas un nombre.",
        Key::Problem(ProblemCode::OutOfRange) => "{field} : en dehors de {min} à {max}.",
        Key::Problem(ProblemCode::SchemaNewer) => "Ce montage vient d’une version plus récente.",
        Key::Problem(ProblemCode::PlaceUnknown) => "Aucune règle n’est connue pour cet endroit.",
        Key::Problem(ProblemCode::LadderTooShort) => {
            "Le pied de l’échelle est plus écarté que l’échelle n’est longue."
        }
        Key::Problem(ProblemCode::StandsAboveLadder) => {
            "Les pieds seraient au-dessus de la partie utile de l’échelle ou de l’avant-toit."
        }
        Key::Problem(ProblemCode::LadderInObstacle) => {
            "L’échelle traverserait la terrasse : écartez son pied, ou déplacez la terrasse."
        }
        Key::Problem(ProblemCode::WorkerInHouse) => {
            "La personne serait dans le mur ou le toit : écartez le pied de l’échelle."
        }
        Key::Problem(ProblemCode::StandsOffRoof) => "Les pieds seraient au-delà du faîte.",
        Key::Problem(ProblemCode::AnchorOffRoof) => "L’ancrage serait hors du toit.",
        Key::Problem(ProblemCode::AnchorBelowWorker) => {
            "L’ancrage serait à côté ou au-dessous de la personne : placez-le plus haut."
        }
        Key::Problem(ProblemCode::GrabOutOfReach) => {
            "Le cordon n’atteint pas le coulisseau depuis l’anneau en D : rapprochez le coulisseau ou prenez un cordon plus long."
        }
        Key::Problem(ProblemCode::LifelineTooShort) => {
            "La corde d’assurance finit avant le coulisseau : prenez-en une plus longue."
        }
        Key::Problem(ProblemCode::GrabPastAnchor) => {
            "Le coulisseau serait à l’ancrage ou au-delà : descendez-le."
        }
        Key::Event(EventKind::Slip) => "glissade",
        Key::Event(EventKind::OverEave) => "passage de l’avant-toit",
        Key::Event(EventKind::Taut) => "liaison tendue",
        Key::Event(EventKind::GrabLocks) => "coulisseau bloqué",
        Key::Event(EventKind::GrabRuns) => "coulisseau glisse",
        Key::Event(EventKind::AbsorberOpens) => "absorbeur se déchire",
        Key::Event(EventKind::AbsorberSpent) => "absorbeur épuisé",
        Key::Event(EventKind::RopeEnd) => "nœud du bout",
        Key::Event(EventKind::PeakForce) => "force maximale",
        Key::Event(EventKind::Lowest) => "point le plus bas",
        Key::Event(EventKind::StrikesWall) => "heurte le mur",
        Key::Event(EventKind::StrikesLadder) => "heurte l’échelle",
        Key::Event(EventKind::StrikesRoof) => "heurte le toit",
        Key::Event(EventKind::StrikesObstacle) => "heurte la terrasse",
        Key::Event(EventKind::StrikesGround) => "heurte le sol",
        Key::Event(EventKind::AnchorFails) => "ancrage cède",
        Key::Event(EventKind::OffRope) => "sort de la corde",
        Key::Event(EventKind::End) => "la fin",
        Key::Thing(Thing::Ground) => "le sol",
        Key::Thing(Thing::Obstacle) => "la terrasse",
        Key::Thing(Thing::Wall) => "le mur",
        Key::Thing(Thing::Roof) => "le toit",
        Key::Thing(Thing::Ladder) => "l’échelle",
        Key::Outcome(Outcome::Stopped) => "s’arrête à temps",
        Key::Outcome(Outcome::Strikes) => "heurte quelque chose en bas",
        Key::Outcome(Outcome::LetGo) => "se détache de la corde ou de l’ancrage",
        Key::Title(FindingCode::StrikesGround) => "Heurte le sol",
        Key::Title(FindingCode::StrikesObstacle) => "Tombe sur la terrasse",
        Key::Title(FindingCode::OffRope) => "Sort de la corde",
        Key::Title(FindingCode::AnchorGaveWay) => "L’ancrage cède",
        Key::Title(FindingCode::PeakForce) => "Force sur le corps",
        Key::Title(FindingCode::FreeFall) => "Chute libre",
        Key::Title(FindingCode::ForceOrFreeFall) => "Une de deux limites suffit ici",
        Key::Title(FindingCode::StoppingDistance) => "Distance d’arrêt",
        Key::Title(FindingCode::AbsorberSpent) => "Absorbeur épuisé",
        Key::Title(FindingCode::NoAbsorber) => "Pas d’absorbeur d’énergie",
        Key::Title(FindingCode::GrabReversed) => "Coulisseau à l’envers",
        Key::Title(FindingCode::LatchOpen) => "Loquet ouvert",
        Key::Title(FindingCode::BoltLoose) => "Boulon desserré",
        Key::Title(FindingCode::GrabLow) => "Coulisseau sous l’anneau en D",
        Key::Title(FindingCode::HarnessLoose) => "Harnais lâche",
        Key::Title(FindingCode::AnchorCapacity) => "Ce que l’ancrage supporte",
        Key::Title(FindingCode::AnchorBasis) => "Ancrage : deux sortes de charge",
        Key::Title(FindingCode::LadderAngle) => "Pied de l’échelle",
        Key::Title(FindingCode::ClearanceMargin) => "Dégagement restant",
        Key::Title(FindingCode::HardSwing) => "Un choc en route",
        Key::Title(FindingCode::TriggerHeight) => "La protection est-elle exigée ici?",
        Key::Says(FindingCode::StrikesGround) => "La personne atteint le sol à {value}.",
        Key::Says(FindingCode::StrikesObstacle) => "La personne tombe sur la terrasse à {value}.",
        Key::Says(FindingCode::OffRope) => {
            "La corde est sortie du coulisseau. Plus rien ne retient la personne."
        }
        Key::Says(FindingCode::AnchorGaveWay) => {
            "La traction dépassait ce qu’on peut attendre d’un tel point d’ancrage : {value}."
        }
        Key::Says(FindingCode::PeakForce) => "{value} ne respecte pas la limite de {limit}.",
        Key::Says(FindingCode::FreeFall) => "{value} ne respecte pas la limite de {limit}.",
        Key::Says(FindingCode::ForceOrFreeFall) => {
            "Cet endroit exige la limite de force ou celle de chute libre; celle affichée a décidé."
        }
        Key::Says(FindingCode::StoppingDistance) => {
            "Un arrêt en {value}, sans l’allongement de la corde, ne respecte pas la limite de {limit}."
        }
        Key::Says(FindingCode::AbsorberSpent) => {
            "Il s’est déchiré jusqu’au bout, {value}. Ensuite, plus rien ne limite la force."
        }
        Key::Says(FindingCode::NoAbsorber) => "Seul l’allongement de la corde a adouci l’arrêt.",
        Key::Says(FindingCode::GrabReversed) => {
            "Quand la flèche pointe vers le bas, le coulisseau ne peut pas bloquer; il file le long de la corde. Au Canada, depuis 2004, un coulisseau doit refuser d’être posé à l’envers, sauf s’il est fait pour les deux sens (CSA Z259.2.1, d’après un bulletin provincial)."
        }
        Key::Says(FindingCode::LatchOpen) => {
            "Quand le loquet est ouvert, la corde peut sortir du coulisseau."
        }
        Key::Says(FindingCode::BoltLoose) => {
            "Quand le boulon est desserré, le coulisseau glisse avant de tenir."
        }
        Key::Says(FindingCode::GrabLow) => {
            "Le coulisseau est à {value} sous l’anneau en D : ajoutez cette hauteur à toute la longueur du cordon; c’est la chute libre à compter."
        }
        Key::Says(FindingCode::HarnessLoose) => {
            "L’anneau en D remonte avant que le harnais retienne; une sangle de cuisse ou de poitrine lâche peut laisser sortir la personne ou la blesser gravement."
        }
        Key::Says(FindingCode::AnchorCapacity) => {
            "{value} de charge de rupture (le plus faible sur vingt) ne respecte pas les {limit} exigés."
        }
        Key::Says(FindingCode::AnchorBasis) => {
            "Le règlement demande ce que le point d’ancrage porte tous les jours ({limit}); {value} est la charge où il rompt. Ce sont deux choses différentes : demandez."
        }
        Key::Says(FindingCode::LadderAngle) => {
            "À {value} du sol, le pied n’est pas où il faut : il devrait être écarté d’{range} de la longueur."
        }
        Key::Says(FindingCode::ClearanceMargin) => {
            "{value} restants, c’est moins que les {limit} gardés en réserve."
        }
        Key::Says(FindingCode::HardSwing) => {
            "En chemin, le corps revient et frappe la maison ou l’échelle à {value} : cela peut blesser."
        }
        Key::Says(FindingCode::TriggerHeight) => {
            "Les règles commencent ici à {limit}. Une chute de {value} peut quand même tuer."
        }
        Key::SaysMet(FindingCode::PeakForce) => "{value} respecte la limite de {limit}.",
        Key::SaysMet(FindingCode::FreeFall) => "{value} respecte la limite de {limit}.",
        Key::SaysMet(FindingCode::StoppingDistance) => {
            "Un arrêt en {value}, sans l’allongement de la corde, respecte la limite de {limit}."
        }
        Key::SaysMet(FindingCode::AnchorCapacity) => {
            "{value} de charge de rupture (le plus faible sur vingt) respecte les {limit} exigés."
        }
        Key::SaysMet(FindingCode::LadderAngle) => {
            "À {value} du sol, le pied est écarté d’{range} de la longueur, à deux centièmes près."
        }
        Key::SaysMet(FindingCode::ClearanceMargin) => {
            "{value} restants, plus que les {limit} gardés en réserve."
        }
        Key::SaysMet(FindingCode::TriggerHeight) => {
            "À {value}, cet endroit exige une protection contre les chutes (à partir de {limit}). Demandez-vous d’abord si un garde-corps ou une limitation de déplacement suffirait."
        }
        Key::Change(FindingCode::StrikesGround) => {
            "Montez le coulisseau; prenez un cordon plus court, permis par son fabricant. S’il manque encore de la place, l’arrêt de chute est la mauvaise méthode : arrêtez et demandez."
        }
        Key::Change(FindingCode::StrikesObstacle) => {
            "Montez le coulisseau, ou travaillez là où rien ne dépasse en bas. Sinon, arrêtez et demandez."
        }
        Key::Change(FindingCode::OffRope) => {
            "Fermez le loquet, tournez la flèche vers le point d’ancrage, prenez une corde munie de l’arrêt du fabricant."
        }
        Key::Change(FindingCode::AnchorGaveWay) => {
            "Attachez à la charpente ou à un ancrage à charge nominale qu’une personne compétente a examiné."
        }
        Key::Change(FindingCode::PeakForce) => {
            "Montez le coulisseau pour raccourcir la chute libre, ou prenez un absorbeur qui se déchire à une force moindre."
        }
        Key::Change(FindingCode::FreeFall) => {
            "Montez le coulisseau; prenez un cordon plus court, permis par son fabricant."
        }
        Key::Change(FindingCode::ForceOrFreeFall) => "Rien : ceci explique la règle.",
        Key::Change(FindingCode::StoppingDistance) => "Raccourcissez la chute libre : montez le coulisseau.",
        Key::Change(FindingCode::AbsorberSpent) => {
            "Raccourcissez la chute libre, ou prenez un absorbeur intact, prévu pour cette masse."
        }
        Key::Change(FindingCode::NoAbsorber) => "Prenez un cordon avec absorbeur d’énergie.",
        Key::Change(FindingCode::GrabReversed) => "Retirez-le et remettez-le, la flèche vers l’ancrage.",
        Key::Change(FindingCode::LatchOpen) => {
            "Fermez-le, puis tirez le coulisseau vers le bas pour vérifier."
        }
        Key::Change(FindingCode::BoltLoose) => {
            "Serrez-le, et vérifiez de nouveau toutes les 15 à 20 minutes (pratique courante)."
        }
        Key::Change(FindingCode::GrabLow) => {
            "Montez-le à la hauteur de l’anneau en D ou plus haut, chaque fois que vous montez."
        }
        Key::Change(FindingCode::HarnessLoose) => {
            "Ajustez les sangles : une main à plat passe tout juste (pratique courante)."
        }
        Key::Change(FindingCode::AnchorCapacity) => {
            "Demandez à une personne compétente un ancrage conforme à la règle."
        }
        Key::Change(FindingCode::AnchorBasis) => "Faites juger l’ancrage par une personne compétente.",
        Key::Change(FindingCode::LadderAngle) => "Écartez le pied d’{range} de la longueur jusqu’à l’appui.",
        Key::Change(FindingCode::ClearanceMargin) => {
            "Montez le coulisseau; prenez un cordon plus court, permis par son fabricant."
        }
        Key::Change(FindingCode::HardSwing) => {
            "Moins de mou, plus près du mur et l’ancrage droit au-dessus adoucissent le choc."
        }
        Key::Change(FindingCode::TriggerHeight) => "Pensez d’abord aux autres méthodes.",
        Key::Event(EventKind::RopeBreaks) => "corde rompt",
        Key::Event(EventKind::LinkBreaks) => "connecteur, cordon ou harnais rompt",
        Key::Anchor(AnchorKind::RoofVent) => "évent ou conduit de toit",
        Key::Anchor(AnchorKind::AntennaMast) => "mât d’antenne",
        Key::Problem(ProblemCode::NotADate) => "{field} : écrivez le jour comme 2026-05-01.",
        Key::Problem(ProblemCode::SlingAboveChimney) => {
            "L’élingue serait au-dessus du sommet de la cheminée."
        }
        Key::Title(FindingCode::RopeBroke) => "La corde a rompu",
        Key::Title(FindingCode::LinkBroke) => "Un connecteur, le cordon ou le harnais a lâché",
        Key::Title(FindingCode::AnchorUnsuitable) => "Pas un ancrage",
        Key::Title(FindingCode::AnchorAllowable) => "Ce que l’ancrage peut porter",
        Key::Title(FindingCode::AnchorFactor) => "Ancrage par coefficient de sécurité",
        Key::Title(FindingCode::AnchorChooser) => "Qui a choisi l’ancrage",
        Key::Title(FindingCode::FastenersMissed) => "Attaches à côté de la charpente",
        Key::Title(FindingCode::MortarWeak) => "Mortier faible",
        Key::Title(FindingCode::HigherMethod) => "Une autre méthode passe d’abord",
        Key::Title(FindingCode::ArrestTooLow) => "Trop bas pour l’arrêt de chute",
        Key::Title(FindingCode::ClearanceSum) => "Dégagement par la somme usuelle",
        Key::Title(FindingCode::RescueMissing) => "Le sauvetage",
        Key::Title(FindingCode::TrainingExpired) => "Formation échue",
        Key::Title(FindingCode::GearFrayed) => "Corde usée",
        Key::Title(FindingCode::GearKnot) => "Nœud le long de la corde",
        Key::Title(FindingCode::GearGate) => "Cliquet qui ne verrouille pas",
        Key::Title(FindingCode::GearRust) => "Connecteur piqué de rouille",
        Key::Title(FindingCode::GearPack) => "Absorbeur déjà déployé",
        Key::Title(FindingCode::GearWebbing) => "Sangle du harnais coupée",
        Key::Title(FindingCode::GearLabel) => "Pas d’étiquette lisible",
        Key::Title(FindingCode::AbsorberExtension) => "Déploiement de l’absorbeur",
        Key::Title(FindingCode::ArrestDistance) => "Arrêt complet",
        Key::Says(FindingCode::RopeBroke) => {
            "Une corde dans cet état supporte {value}; la chute a tiré plus fort."
        }
        Key::Says(FindingCode::LinkBroke) => {
            "Le cordon, le connecteur et le harnais dans cet état supportent {value}; la chute a tiré plus fort."
        }
        Key::Says(FindingCode::AnchorUnsuitable) => {
            "Évents, conduits, tuyaux, gouttières et mâts ne sont pas des ancrages. On ne suppose ici qu’environ {value}."
        }
        Key::Says(FindingCode::AnchorAllowable) => {
            "{value} de charge admissible ne respecte pas la charge de service exigée de {limit}."
        }
        Key::Says(FindingCode::AnchorFactor) => {
            "Il rompt à {value} fois le plus que ce système peut tirer ({other} : l’étiquette de l’absorbeur, ou cette chute si elle a tiré plus). Cela suffit seulement si une personne qualifiée l’a conçu."
        }
        Key::Says(FindingCode::AnchorChooser) => "La personne a choisi et posé l’ancrage sans aide.",
        Key::Says(FindingCode::FastenersMissed) => {
            "{value} attaches ne tiennent que dans le revêtement, qui lâche à une fraction de la charge."
        }
        Key::Says(FindingCode::MortarWeak) => {
            "Avec des joints tendres, seules les briques au-dessus de l’élingue résistent."
        }
        Key::Says(FindingCode::HigherMethod) => {
            "Sur ce travail, une méthode qui passe avant l’arrêt de chute est possible. Une chute qui ne peut pas se produire n’a pas à être arrêtée."
        }
        Key::Says(FindingCode::ArrestTooLow) => {
            "Même avec le coulisseau au plus haut, la somme usuelle (tout au pire) demande {value} sous les pieds; il y a {other}. On ne peut pas compter sur ce matériel ici."
        }
        Key::Says(FindingCode::ClearanceSum) => {
            "La somme usuelle exige {value} sous les pieds; il y a {other}."
        }
        Key::Says(FindingCode::RescueMissing) => {
            "Une personne suspendue doit être descendue en quelques minutes. Le sauvetage n’est pas prévu comme cet endroit l’exige."
        }
        Key::Says(FindingCode::TrainingExpired) => "La carte vaut {limit} ans et elle est échue.",
        Key::Says(FindingCode::GearFrayed) => "La gaine est percée et l’âme est visible.",
        Key::Says(FindingCode::GearKnot) => {
            "Un nœud peut coûter la moitié de la résistance, et le coulisseau ne le passe pas."
        }
        Key::Says(FindingCode::GearGate) => {
            "Le cliquet du mousqueton se ferme sans verrouiller; pressé de travers, il s’ouvre."
        }
        Key::Says(FindingCode::GearRust) => "La rouille a creusé le métal.",
        Key::Says(FindingCode::GearPack) => {
            "Le sachet s’est déchiré lors d’une chute et a été remis dans sa housse : il ne reste rien à déchirer."
        }
        Key::Says(FindingCode::GearWebbing) => "Une sangle est coupée depuis le bord.",
        Key::Says(FindingCode::GearLabel) => "Sans étiquette, nul ne sait son âge ni son usage.",
        Key::Says(FindingCode::AbsorberExtension) => {
            "{value} de déploiement ne respecte pas les {limit} de l’essai de type."
        }
        Key::Says(FindingCode::ArrestDistance) => {
            "{value} du blocage à l’arrêt ne respecte pas les {limit} de l’essai de type."
        }
        Key::SaysMet(FindingCode::AnchorAllowable) => {
            "{value} de charge admissible respecte la charge de service exigée de {limit}."
        }
        Key::SaysMet(FindingCode::AnchorFactor) => {
            "Il rompt à {value} fois le plus que ce système peut tirer ({other}) : atteint le facteur de {limit}."
        }
        Key::SaysMet(FindingCode::ClearanceSum) => {
            "La somme usuelle exige {value} sous les pieds; il y a {other}."
        }
        Key::SaysMet(FindingCode::AbsorberExtension) => {
            "{value} de déploiement respecte les {limit} de l’essai de type."
        }
        Key::SaysMet(FindingCode::ArrestDistance) => {
            "{value} du blocage à l’arrêt respecte les {limit} de l’essai de type."
        }
        Key::Change(FindingCode::RopeBroke) => "Retirez la corde du service avant de monter.",
        Key::Change(FindingCode::LinkBroke) => {
            "Examinez le connecteur et les sangles avant de monter, et retirez ce qui est défectueux."
        }
        Key::Change(FindingCode::AnchorUnsuitable) => {
            "Arrêtez et demandez un ancrage dans la charpente, ou un ancrage à charge nominale."
        }
        Key::Change(FindingCode::AnchorAllowable) => {
            "Arrêtez et demandez : la notice du point d’ancrage dit quelles attaches, combien, et dans quoi."
        }
        Key::Change(FindingCode::AnchorFactor) => {
            "Faites-le concevoir par une personne qualifiée, ou prenez un ancrage de pleine charge de rupture."
        }
        Key::Change(FindingCode::AnchorChooser) => {
            "Faites-le choisir et examiner par une personne compétente."
        }
        Key::Change(FindingCode::FastenersMissed) => {
            "Arrachez chaque attache qui a manqué, bouchez le trou et enfoncez une attache neuve dans le chevron."
        }
        Key::Change(FindingCode::MortarWeak) => "Laissez cette cheminée et demandez un autre ancrage.",
        Key::Change(FindingCode::HigherMethod) => {
            "Utilisez-la : du sol ou d’une plateforme, puis garde-corps, puis limitation de déplacement; l’arrêt de chute vient après."
        }
        Key::Change(FindingCode::ArrestTooLow) => "Prenez une autre méthode ici, et demandez.",
        Key::Change(FindingCode::ClearanceSum) => {
            "Montez le coulisseau ou prenez un cordon plus court, permis par son fabricant; s’il manque encore de la place, demandez."
        }
        Key::Change(FindingCode::RescueMissing) => {
            "Écrivez qui vient, avec quoi, d’où; lisez-le à l’équipe avant que quiconque monte."
        }
        Key::Change(FindingCode::TrainingExpired) => "Suivez le recyclage avant de travailler en hauteur.",
        Key::Change(FindingCode::GearFrayed) => "Retirez-la du service.",
        Key::Change(FindingCode::GearKnot) => "Retirez la corde du service et demandez.",
        Key::Change(FindingCode::GearGate) => "Retirez-le du service.",
        Key::Change(FindingCode::GearRust) => "Retirez-le du service.",
        Key::Change(FindingCode::GearPack) => {
            "Retirez le cordon du service : un absorbeur ne sert qu’une fois."
        }
        Key::Change(FindingCode::GearWebbing) => "Retirez le harnais du service.",
        Key::Change(FindingCode::GearLabel) => {
            "Retirez-le du service jusqu’à ce qu’une personne compétente ait dit ce que c’est."
        }
        Key::Change(FindingCode::AbsorberExtension) => "Raccourcissez la chute libre.",
        Key::Change(FindingCode::ArrestDistance) => "Raccourcissez la chute libre.",
        Key::StatedBreaking => "Charge de rupture indiquée par le fabricant",
        Key::ChimneyWidth => "Largeur de la cheminée dans le sens de la traction",
        Key::ChimneyHeight => "Hauteur de la cheminée au-dessus du toit",
        Key::SlingHeight => "Hauteur de l’élingue au-dessus du toit",
        Key::ChimneyWeight => "Poids d’un mètre de cheminée",
        Key::MortarLabel => "Mortier",
        Key::MortarSound => "dur et plein",
        Key::MortarWeak => "tendre, fissuré ou absent",
        Key::FastenersPerSide => "Attaches de chaque côté du faîte",
        Key::FastenersMissed => "Dont à côté de la charpente",
        Key::FastenerKindLabel => "Attache",
        Key::FastenerNail16d => "clou 16d, 3½ po",
        Key::FastenerNail10d => "clou 10d, 3 po",
        Key::FastenerNail20d => "clou 20d, 4 po",
        Key::FastenerRing => "clou annelé 16d",
        Key::FastenerScrew => "vis à bois nº 10, 3 po",
        Key::SpeciesLabel => "Chevrons",
        Key::SpeciesSpf => "épinette-pin-sapin",
        Key::SpeciesFir => "douglas-mélèze",
        Key::SpeciesPine => "pin du Sud",
        Key::MoistureLabel => "Bois",
        Key::MoistureDry => "sec",
        Key::MoistureWet => "humide",
        Key::StrengthComputed => {
            "En moyenne, il rompt à {mean}; un sur vingt rompt à {low} ou moins. La chute prend {low}."
        }
        Key::StrengthAllowable => "Charge admissible selon le code du bois (NDS) : {value}.",
        Key::StrengthNoAllowable => "Aucun code n’en donne de charge admissible.",
        Key::StrengthStated => "Pris comme indiqué : {low}.",
        Key::StrengthUnsuitable => "Ce n’est pas un ancrage. On suppose environ {low}.",
        Key::StrengthJudge => {
            "Compté par les attaches seules. Ferme ou chevron, fentes, pourriture, plaque, espacement et bords sont laissés de côté : à vérifier, demandez. Seule une personne qualifiée peut juger un vrai point d’ancrage."
        }
        Key::StrengthDrawing => {
            "Coupe du toit à l’ancrage : {hit} attaches dans les chevrons, {miss} dans le revêtement seul."
        }
        Key::StrengthHit => "tient",
        Key::StrengthMiss => "lâche",
        Key::PartGear => "Examiner l’équipement",
        Key::GearHint => {
            "Regardez chaque pièce comme avant de monter. Certaines pièces de la remise sont défectueuses."
        }
        Key::GearSeen => "{seen} sur {all} examinées",
        Key::GearShed => "Prendre ce qui est à la remise",
        Key::GearNew => "Prendre de l’équipement neuf",
        Key::GearPass => "Bon pour le service",
        Key::GearReject => "Retirer du service",
        Key::GearPassed => "jugée bonne",
        Key::GearRejected => "retirée et remplacée",
        Key::GearYouPassed => "Vous l’aviez jugée bonne pour le service.",
        Key::GearNotLooked => "Vous n’avez pas examiné cette pièce.",
        Key::PartRope => "Corde d’assurance",
        Key::PartConnector => "Connecteur",
        Key::PartPack => "Sachet de l’absorbeur",
        Key::PartWebbing => "Sangles du harnais",
        Key::PartLabel => "Étiquette du harnais",
        Key::PartArrow => "Coulisseau : sa flèche",
        Key::PartBolt => "Coulisseau : son boulon",
        Key::PartLatch => "Coulisseau : son loquet",
        Key::PartNails => "Ancrage : ses attaches",
        Key::LooksRopeSound => "Régulière et ronde partout; la gaine est propre et entière.",
        Key::LooksRopeFrayed => "Sur une largeur de main, la gaine manque et des brins blancs apparaissent.",
        Key::LooksRopeKnotted => "À deux longueurs de bras, il y a un nœud simple, bien serré.",
        Key::LooksConnectorSound => "Le cliquet du mousqueton se referme et sa bague tourne par-dessus.",
        Key::LooksConnectorUnlocked => {
            "Le cliquet du mousqueton se referme; la bague ne bouge pas. Le pouce rouvre le cliquet."
        }
        Key::LooksConnectorCorroded => "Écailles brunes, et dessous des creux où l’ongle accroche.",
        Key::LooksPackSound => "Un sachet plat, housse fermée, coutures en rangs.",
        Key::LooksPackDeployed => {
            "La housse est fermée, mais une queue de sangle déchirée, fils pendants, y est repliée."
        }
        Key::LooksWebbingSound => "Sangles plates et souples, bords droits.",
        Key::LooksWebbingCut => "À la cuisse, une entaille entre depuis le bord, large d’un doigt.",
        Key::LooksLabelLegible => "Étiquette cousue; date et norme lisibles.",
        Key::LooksLabelMissing => "Il ne reste que quelques fils à la place de l’étiquette.",
        Key::LooksArrowUp => "La flèche sur le côté pointe vers l’ancrage.",
        Key::LooksArrowDown => "La flèche sur le côté pointe vers le sol.",
        Key::LooksBoltTight => "Le boulon ne tourne pas à la main.",
        Key::LooksBoltLoose => "Le boulon tourne entre deux doigts.",
        Key::LooksLatchClosed => "Le loquet est rabattu sur la corde, sans aucun espace.",
        Key::LooksLatchOpen => "On voit de la lumière entre le loquet et le corps du coulisseau.",
        Key::LooksNailsHit => "Vues d’en dessous, toutes les pointes sont dans un chevron.",
        Key::LooksNailsMissed => {
            "Vues d’en dessous, {value} pointes sortent du revêtement à côté du chevron."
        }
        Key::PartPlan => "Avant que quiconque monte",
        Key::OtherMethodLabel => "Y a-t-il une autre méthode pour ce travail?",
        Key::OtherNone => "aucune trouvée",
        Key::OtherGuardrail => "garde-corps",
        Key::OtherRestraint => "limitation de déplacement",
        Key::OtherRestraintQuebec => "système de limitation de déplacement",
        Key::OtherRestraintOntario => "limiteur de déplacement",
        Key::PartGrabOntario => "Coulisseau de sécurité",
        Key::OtherRestrict => "limiteur de chute (arrêt en 0,6 m); Ontario seulement",
        Key::RescueLabel => "Plan de sauvetage",
        Key::RescueNone => "aucun",
        Key::RescueSpoken => "convenu de vive voix",
        Key::RescueWritten => "écrit, lu à l’équipe",
        Key::ChooserLabel => "Ancrage choisi par",
        Key::ChooserWorker => "la personne qui peint, sans aide",
        Key::ChooserCompetent => "une personne compétente",
        Key::ChooserQualified => "une personne qualifiée (ingénieur)",
        Key::TrainedOn => "Carte de formation datée du",
        Key::WorkOn => "Jour du travail",
        Key::SayOtherMethod => "je prendrais une autre méthode",
        Key::SayStopAndAsk => "j’arrêterais pour demander",
        Key::AdviceHeading => "Vous avez répondu : {said}.",
        Key::AdviceCalled => "Ce montage y invite :",
        Key::AdviceNotCalled => "Rien ici ne l’imposait. Demander reste une bonne réponse.",
        Key::AdviceFall => "Si la personne avait continué, la glissade aurait fini ainsi :",
        Key::ChangesHeading => "Ce qu’un seul changement ferait",
        Key::ChangesHint => "Chaque ligne est la même chute recalculée avec une seule chose changée.",
        Key::ChangesWaiting => "Calcul en cours…",
        Key::ChangesNone => "Aucun changement de la liste ne donne plus de points.",
        Key::ChangesBest => "Le changement qui aide le plus",
        Key::ChangesLine => "{change} : de {before} à {after} points",
        Key::ChangesPass => "aucun constat critique",
        Key::ChangesFail => "encore un constat critique",
        Key::ChangesMake => "Faire ce changement",
        Key::ChArrow => "Tourner la flèche du coulisseau vers l’ancrage",
        Key::ChLatch => "Fermer le loquet",
        Key::ChBolt => "Serrer le boulon",
        Key::ChGrabUp => "Mettre le coulisseau aussi haut que le cordon le permet",
        Key::ChAbsorber => "Prendre un cordon avec absorbeur",
        Key::ChLanyard => {
            "Prendre un cordon plus court, permis par le fabricant du coulisseau : 0,6 m (2 pi)"
        }
        Key::SideUntold => {
            "La chute d’ici échoue à sa propre vérification d’énergie et n’est pas montrée. Celles d’à côté le sont."
        }
        Key::ChSlack => "Reprendre le mou de la corde",
        Key::ChPad => "Poser une protection sur l’arête du toit",
        Key::ChKnot => "Prendre une corde munie de l’arrêt du fabricant",
        Key::ChHarness => "Ajuster le harnais",
        Key::ChFraming => "Fixer l’ancrage dans la charpente",
        Key::ChRated => "Prendre un ancrage à charge nominale",
        Key::ChGear => "Changer l’équipement défectueux",
        Key::ChLadder => "Mettre le pied de l’échelle au quart de sa longueur",
        Key::ChRescue => "Écrire le plan de sauvetage",
        Key::ChChooser => "Faire choisir l’ancrage par une personne compétente",
        Key::WhyLabel => "Pourquoi",
        Key::WhyFreeFall => {
            "La personne est tombée jusqu’à ce que la liaison se tende : cordon {lanyard}, coulisseau {offset} l’anneau en D, donc {slack} par les longueurs; le reste vient du glissement du coulisseau et du balancement du corps."
        }
        Key::WhyForceAbsorber => {
            "L’absorbeur s’est déployé de {length} à {force} et a pris cette part du choc; il en reste {left}."
        }
        Key::WhyForceWhole => {
            "L’absorbeur se déchire à {force}; cette chute a fini avant, dans l’allongement de la corde : {length}."
        }
        Key::WhyForceSpent => {
            "Une fois l’absorbeur déployé jusqu’au bout, à {length}, l’arrêt a été aussi dur que la corde."
        }
        Key::WhyForceRope => {
            "Sans absorbeur, l’énergie est allée dans l’allongement de la corde, {length} : plus la corde est courte, plus l’arrêt est dur."
        }
        Key::WhyClearance => {
            "L’anneau en D est descendu de {fall} en tout : chute libre {free}, absorbeur {absorber}, coulisseau {slip}, corde {rope}, harnais {harness}; le reste, {rest}, vient du corps qui tourne et se balance."
        }
        Key::WhyAnchor => {
            "L’ancrage a reçu {anchor}; le bord du toit a retenu le reste des {force} à l’anneau en D. L’ancrage est jugé sans cette aide."
        }
        Key::WhySlip => "Le coulisseau a glissé de {slip} le long de la corde.",
        Key::MarginLine => "Marge : {value}",
        Key::MarginMissing => "Manque : {value}",
        Key::GearSummary => "corde, connecteur, sachet, sangles, étiquette, coulisseau",
        Key::ThumbsHeading => "Règles du métier, à côté des chiffres",
        Key::ThumbsHint => {
            "Ce qui se dit dans les équipes, avec nos propres chiffres ronds. Nous n’y avons trouvé aucune source : pratique courante. À côté : ce que disent les nombres ou une règle publiée."
        }
        Key::ThumbHolds => "se vérifie",
        Key::ThumbPartly => "se vérifie en partie",
        Key::ThumbUnknown => "aucun chiffre à lui opposer",
        Key::ThumbHarness => "Un harnais à partir de 3 m (10 pi).",
        Key::ThumbHarnessTold => {
            "10 pi font {ten}. L’Ontario et le Québec exigent une protection au-dessus de {canada} : là, c’est proche. La construction aux États-Unis l’exige à partir de {us} : là, c’est faux."
        }
        Key::ThumbAnchor => "Un point d’ancrage supporte 9 kN (2 000 lb).",
        Key::ThumbAnchorTold => {
            "2 000 lbf font {load}. L’Ontario exige une charge de service de {on} avec absorbeur; le Québec une charge de rupture de {qc}, les États-Unis de {us}. Charge de service et charge de rupture ne se comparent pas : le chiffre ne dit rien tant qu’il ne dit pas laquelle; comme charge de rupture, il ne suffit à aucun des deux."
        }
        Key::ThumbForce => "55 kg qui tombent de 2,7 m frappent avec environ 4 kN (120 lb, 9 pi, 900 lb).",
        Key::ThumbForceTold => {
            "Seulement pour un arrêt de {stop}. Sur 3,5 pi, la force constante est de {soft}; sur une corde qui s’allonge d’autant, la pointe est de {peak}. C’est la longueur de l’arrêt qui fait la force."
        }
        Key::ThumbAbsorber => "Un absorbeur ajoute plus d’un mètre (4 pi).",
        Key::ThumbAbsorberTold => {
            "C’est le plus qu’il se déploie. Prévoyez cette longueur. 100 kg après 1,8 m sur un absorbeur à {low} en prennent {long}; après 0,6 m à {high}, {short}."
        }
        Key::ThumbBelow => "Un coulisseau à une longueur de cordon sous l’anneau : deux fois le cordon.",
        Key::ThumbBelowTold => {
            "Par la géométrie, {free} de chute libre avec un cordon de 0,9 m. Le glissement du coulisseau et le harnais ajoutent jusqu’à {more} avant tout autre allongement."
        }
        Key::ThumbFace => "Un coulisseau à hauteur du visage ou plus haut : presque pas de chute.",
        Key::ThumbFaceTold => {
            "À 0,3 m au-dessus de l’anneau, un cordon de 0,9 m a encore {free} de mou; il n’y en a plus qu’à toute la longueur du cordon. Le glissement et le harnais ajoutent jusqu’à {more}. Le dicton oublie les deux."
        }
        Key::ThumbNails => "Quatre clous ou vis de chaque côté du faîte, dans la charpente.",
        Key::ThumbNailsTold => {
            "Dans l’épinette sèche sur un toit 6 dans 12, les clous rompent à {nails} (un sur vingt à cela ou moins); leur charge admissible selon le code du bois est {nails_allow}. Pour les vis : {screws} et {screws_allow}. L’Ontario demande {on} sous contrainte admissible. Tous ratés, les clous rompent à {missed}. Rien de cela ne connaît la ferme, la plaque ni les fentes : à vérifier, demandez."
        }
        Key::ThumbLook => "Vérifiez le boulon et le loquet toutes les 15 à 20 minutes.",
        Key::ThumbLookTold => {
            "Aucun chiffre ne dit à quelle vitesse ils se desserrent. Le prix, lui, est connu : desserré, le coulisseau est supposé tenir {loose}; serré, {tight}."
        }
        Key::ThumbArrow => "La flèche pointe vers l’ancrage.",
        Key::ThumbArrowTold => {
            "Dans l’autre sens, le coulisseau ne fait que frotter, avec environ {drag} (supposé); une personne de 85 kg pèse {weight}."
        }
        Key::ThumbLow => {
            "Un point à un pied ou deux sur le toit, un évent ou un conduit n’est pas un ancrage."
        }
        Key::ThumbLowTold => {
            "Un tuyau d’évent est supposé tenir {vent}, moins que le poids d’une personne de 100 kg, {weight}; un arrêt tire plusieurs fois plus."
        }
        Key::ThumbChimney => "Une cheminée doit être saine avant qu’on y passe une corde.",
        Key::ThumbChimneyTold => {
            "Une souche de 18 po, haute de 4 pi 4 po, bascule à {sound} avec l’élingue à un pied. L’élingue à 2 pi, elle bascule à {high}. Être saine ne suffit pas."
        }
        Key::ThumbHoles => "Bouchez les trous de clous quand vous retirez l’ancrage.",
        Key::ThumbHolesTold => {
            "C’est pour protéger le toit, pas pour arrêter une chute. Un clou arraché et remis dans le même trou tient moins; clouez à un endroit neuf du chevron."
        }
        Key::SpreadHeading => "Quelle confiance y accorder?",
        Key::SpreadHint => {
            "Personne ne connaît exactement la masse, la corde, l’absorbeur, le coulisseau, le bord ni l’ancrage. La chute est donc calculée {all} fois avec des valeurs de l’intervalle probable."
        }
        Key::SpreadRun => "Lancer {all} chutes semblables",
        Key::SpreadStop => "Arrêter ici",
        Key::SpreadSo => "{done} chutes sur {all}",
        Key::SpreadStruck => {
            "Sur {counted} chutes semblables, {struck} finissent sur quelque chose en bas et {letgo} se détachent de la corde ou de l’ancrage."
        }
        Key::SpreadRoom => {
            "De celles qui s’arrêtent, dix-neuf sur vingt laissent {low} ou plus; la moitié laisse plus de {middle}."
        }
        Key::SpreadForce => {
            "Dans dix-neuf sur vingt, le corps subit {high} ou moins; dans la moitié, moins de {middle}."
        }
        Key::SpreadMatters => "Ce qui compte le plus : {what}.",
        Key::SpreadMattersNone => "Aucune inconnue ne décide à elle seule.",
        Key::SpreadUnsound => {
            "{value} chutes n’ont pas passé leur propre contrôle d’énergie et sont écartées."
        }
        Key::SpreadSeed => "Graine {seed} : la même graine donne les mêmes chutes.",
        Key::SpreadPlot => "Dégagement restant, chute par chute : chaque barre est une part des chutes.",
        Key::SpreadBarStruck => "heurte ou lâche",
        Key::UncMass => "la masse de la personne",
        Key::UncAbsorber => "la force à laquelle l’absorbeur se déchire",
        Key::UncRope => "l’allongement de la corde",
        Key::UncGrab => "la course du coulisseau avant de serrer",
        Key::UncEdge => "le frottement sur l’arête du toit",
        Key::UncGrip => "la force à laquelle le coulisseau glisse",
        Key::UncSlip => "la vitesse au début de la glissade",
        Key::UncRoof => "le frottement du corps sur le toit",
        Key::RopeSlack => "Mou au-dessus du coulisseau",
        Key::RopeEdgeLabel => "Au bord du toit, elle passe sur",
        Key::EdgePadded => "une protection d’arête",
        Key::EdgeBare => "l’arête nue",
        Key::UncAnchor => "la résistance de l’ancrage",
        Key::SideHeading => "Le long du mur",
        Key::SideHint => {
            "Si vous vous éloignez de l’ancrage le long du mur, la corde penche. Une glissade finit alors plus bas et ramène la personne sous l’ancrage en balancier."
        }
        Key::SideOffset => "Distance le long du mur",
        Key::SideWords => {
            "À {offset}, la corde penche de {lean}. La chute est de {drop}, {extra} de plus qu’à l’aplomb de l’ancrage, et le balancement atteint {speed}, à peu près sous l’ancrage, comme après une chute de {height}."
        }
        Key::SideRoom => "Dégagement sous les pieds : {value}.",
        Key::SideMissing => "Il manque {value} sous les pieds.",
        Key::SideReach => {
            "Il reste au moins {reserve}, et le balancement reste sous {fast}, jusqu’à {reach} le long du mur."
        }
        Key::SideReachNone => {
            "Même à l’aplomb de l’ancrage, il ne reste pas {reserve} avec un balancement sous {fast}."
        }
        Key::SideLimit => "Cet endroit permet {most} ou {lean}; ici, la plus petite des deux est {here}.",
        Key::SideModel => {
            "Calculé sur une masse à l’anneau en D, toit et mur dépliés à plat, la corde libre de glisser le long de l’arête : le plus long balancement. Rien ne cède."
        }
        Key::SideRoof => {
            "Rien à calculer ici : l’anneau en D est au-dessus de l’avant-toit, ou un calcul a échoué à son propre contrôle d’énergie."
        }
        Key::SideDrawing => {
            "Vue de face du mur : la personne est à {offset} de l’aplomb de l’ancrage et finit dessous, {drop} plus bas."
        }
        Key::WeatherLabel => "Temps",
        Key::WeatherDry => "sec",
        Key::WeatherWet => "mouillé",
        Key::WeatherFrozen => "mouillé, puis gelé",
        Key::AbsorberClassLabel => "Classe de l’absorbeur",
        Key::ClassStated => "force indiquée",
        Key::ClassE4 => "E4 (4 kN)",
        Key::ClassE6 => "E6 (6 kN)",
        Key::LadderTiedLabel => "Haut de l’échelle",
        Key::LadderTiedYes => "attaché",
        Key::LadderTiedNo => "non attaché",
        Key::ReachOut => "Corps penché de côté",
        Key::WireLabel => "Ligne électrique à proximité",
        Key::WireNo => "aucune",
        Key::WireYes => "aérienne",
        Key::LineHeight => "Hauteur du fil le plus bas",
        Key::LineDistance => "Distance entre le fil et le mur",
        Key::PartAround => "Temps et fils",
        Key::LabelWire => "ligne électrique",
        Key::Event(EventKind::LadderSlides) => "le pied de l’échelle glisse",
        Key::Event(EventKind::LadderTips) => "l’échelle bascule",
        Key::Title(FindingCode::LadderBarely) => "L’échelle tient à peine",
        Key::Says(FindingCode::LadderBarely) => {
            "Il faut au pied un frottement de {value}; ce sol en donne environ {other}. D’un endroit à l’autre, pieds et sol diffèrent de plus que cela."
        }
        Key::Change(FindingCode::LadderBarely) => {
            "Attachez le haut ou faites tenir le pied; placez ensuite le pied au quart de la longueur."
        }
        Key::Title(FindingCode::LadderSlides) => "L’échelle glisse",
        Key::Says(FindingCode::LadderSlides) => {
            "Il faut au pied un frottement de {value}; ce sol en donne environ {other}. L’échelle glisse, puis la personne tombe."
        }
        Key::Change(FindingCode::LadderSlides) => {
            "Placez le pied au quart ou au tiers de la longueur, sur un sol ferme et sec, et attachez le haut."
        }
        Key::Title(FindingCode::LadderTips) => "L’échelle bascule en arrière",
        Key::Says(FindingCode::LadderTips) => {
            "L’échelle est si droite que le poids de la personne et de l’échelle tombe derrière son pied."
        }
        Key::Change(FindingCode::LadderTips) => {
            "Écartez le pied d’un quart de la longueur et attachez le haut."
        }
        Key::Title(FindingCode::LadderReach) => "Trop penché",
        Key::Says(FindingCode::LadderReach) => {
            "Quand on se penche ainsi, le centre de masse de la personne et de l’échelle est à {value} du milieu de l’échelle, au-delà du montant, à {other}."
        }
        Key::Change(FindingCode::LadderReach) => {
            "Descendez et déplacez l’échelle : gardez la boucle de ceinture entre les montants (pratique courante)."
        }
        Key::Title(FindingCode::LadderUntied) => "Échelle non attachée",
        Key::Says(FindingCode::LadderUntied) => "Seul le frottement retient l’échelle.",
        Key::Change(FindingCode::LadderUntied) => {
            "Attachez le haut; d’ici là, faites tenir le pied par quelqu’un (pratique courante)."
        }
        Key::Title(FindingCode::PowerLine) => "DANGER : ligne électrique",
        Key::Says(FindingCode::PowerLine) => {
            "D’ici, l’échelle ou la main peut venir à {value} du fil; la distance d’approche est de {limit}."
        }
        Key::SaysMet(FindingCode::PowerLine) => {
            "Posée ici et pivotant sur son pied, l’échelle reste à {value} du fil, la main aussi; la distance d’approche est de {limit}. Un manche ajoute sa longueur. Portez l’échelle couchée."
        }
        Key::Change(FindingCode::PowerLine) => {
            "Arrêtez et demandez : l’exploitant doit couper ou déplacer la ligne; sinon, prenez une échelle plus courte ailleurs."
        }
        Key::Title(FindingCode::AbsorberMass) => "Absorbeur et masse du corps",
        Key::Says(FindingCode::AbsorberMass) => {
            "{value} est hors des masses prévues pour cette classe d’absorbeur."
        }
        Key::Change(FindingCode::AbsorberMass) => "Prenez un absorbeur de la classe prévue pour cette masse.",
        Key::SideHeld => {
            "Avec le frottement de l’arête (0,3, supposé) : {drop} de chute; le balancement le plus vite, {speed}, est à {at} de l’aplomb de l’ancrage; la corde scie {dragged} le long de l’arête."
        }
        Key::SideStays => "La personne reste sur le toit.",
        Key::SideThing => {
            "Objet sur le passage (coin, descente pluviale, lucarne, cheminée), depuis l’aplomb de l’ancrage"
        }
        Key::SideThingHit => "Le balancement l’atteint à {speed}, comme une chute de {height}.",
        Key::SideThingMiss => "Le balancement ne va pas jusque-là.",
        Key::MapHeading => "Où il reste du dégagement",
        Key::MapHint => {
            "Le même équipement à d’autres hauteurs. Choisissez un point de la carte, puis chargez-le."
        }
        Key::MapByGrab => "Hauteur du coulisseau et hauteur des pieds",
        Key::MapByOffset => "Distance le long du mur et hauteur des pieds",
        Key::MapLadderOnly => "Tracée pour une personne sur une échelle.",
        Key::MapCell => "{name} {across}, pieds à {up} : {says}",
        Key::MapLoad => "Charger ce montage",
        Key::MapGoing => "{runs} chutes entières jusqu’ici; la carte s’affine.",
        Key::MapTrust => {
            "Tracée à partir de {runs} chutes entières et d’un calcul rapide entre elles; aux points vérifiés, l’écart est d’au plus {off}."
        }
        Key::MapImpossible => "impossible à monter",
        Key::MapUnknown => "non montré : le calcul rapide ne convient pas ici",
        Key::MapMissing => "tombe jusqu’en bas",
        Key::MapShort => "dégagement, mais sous la réserve de {reserve}",
        Key::MapEnough => "la réserve ou plus",
        Key::MapOne => "1 m (3,3 pi) ou plus",
        Key::MapTwo => "2 m (6,6 pi) ou plus",
        Key::SideHeldShort => {
            "Avec le frottement de l’arête (0,3, supposé) : {drop} de chute, sans balancement; la corde scie {dragged} le long de l’arête."
        }
        Key::NavBench => "Montage",
        Key::NavQuiz => "Quiz",
        Key::NavCrew => "Équipe",
        Key::ItemName(ItemKind::Ends) => "L’issue de la chute",
        Key::ItemName(ItemKind::Higher) => "Lequel arrête plus haut",
        Key::ItemName(ItemKind::PutGrab) => "Placer le coulisseau",
        Key::ItemName(ItemKind::Fault) => "Examiner l’équipement",
        Key::ItemName(ItemKind::Steps) => "L’ordre des étapes",
        Key::ItemName(ItemKind::PickAnchor) => "Choisir l’ancrage",
        Key::ItemName(ItemKind::Room) => "Le dégagement",
        Key::ItemName(ItemKind::Along) => "Le long du mur",
        Key::ItemName(ItemKind::Method) => "La bonne méthode",
        Key::ItemName(ItemKind::After) => "Après l’arrêt",
        Key::ItemName(ItemKind::Footing) => "L’appui de l’échelle",
        Key::ItemName(ItemKind::Wire) => "Lignes électriques",
        Key::Stem(ItemKind::Ends) => "La personne glisse ici. Comment cela finit-il?",
        Key::Stem(ItemKind::Higher) => {
            "Deux montages, pareils sauf un point. Dans lequel la personne finit-elle le plus haut au-dessus du sol?"
        }
        Key::Stem(ItemKind::PutGrab) => {
            "Placez le coulisseau à une hauteur où la chute libre reste à {limit} ou moins."
        }
        Key::Stem(ItemKind::Fault) => {
            "Vous examinez l’équipement. Quelle pièce ne doit pas servir telle quelle?"
        }
        Key::Stem(ItemKind::Steps) => "Mettez ces étapes en ordre, la première en haut.",
        Key::Stem(ItemKind::PickAnchor) => {
            "Trois points où s’attacher. Lequel est un ancrage pour ce travail?"
        }
        Key::Stem(ItemKind::Room) => "La personne glisse ici. Y a-t-il assez de dégagement?",
        Key::Stem(ItemKind::Along) => {
            "Jusqu’où pouvez-vous vous éloigner de l’aplomb de l’ancrage? Prenez la plus grande distance où il reste {reserve} et où le balancement reste sous {fast}."
        }
        Key::Stem(ItemKind::Method) => "Avant que quelqu’un monte : que faites-vous?",
        Key::Stem(ItemKind::After) => "Que faites-vous maintenant?",
        Key::Stem(ItemKind::Footing) => {
            "Personne n’a attaché cette échelle. Comment tient-elle avec la personne dessus?"
        }
        Key::Stem(ItemKind::Wire) => {
            "Il y a une ligne électrique près de cette échelle. Pouvez-vous vous en servir ici?"
        }
        Key::Step(Step::AskMethod) => "Se demander si une autre méthode convient",
        Key::Step(Step::WalkSite) => "Faire le tour du lieu : fils, sol, ce qui se trouve dessous",
        Key::Step(Step::PlanRescue) => "Prévoir le sauvetage, par écrit",
        Key::Step(Step::LookOverGear) => "Examiner chaque pièce de l’équipement",
        Key::Step(Step::PlaceLadder) => "Placer le pied de l’échelle et en attacher le haut",
        Key::Step(Step::SetAnchor) => "Poser l’ancrage selon sa notice, dans la charpente",
        Key::Step(Step::HangLifeline) => "Suspendre la corde d’assurance et vérifier l’arrêt du bout",
        Key::Step(Step::PutOnHarness) => "Mettre le harnais et le serrer, au sol",
        Key::Step(Step::ClampGrab) => "Poser le coulisseau sur la corde, flèche vers l’ancrage",
        Key::Step(Step::ClipLanyard) => "Accrocher le cordon à l’anneau en D",
        Key::Step(Step::TugTest) => "Tirer sur le coulisseau pour l’éprouver",
        Key::Step(Step::BeginWork) => "Commencer le travail en remontant le coulisseau à mesure",
        Key::AfterStem(AfterCase::HangsAwake) => {
            "La chute est arrêtée. La personne est suspendue dans le harnais et vous parle."
        }
        Key::AfterStem(AfterCase::HangsStill) => {
            "La chute est arrêtée. La personne est suspendue dans le harnais et ne bouge pas."
        }
        Key::AfterStem(AfterCase::NoPlan) => {
            "L’équipement est prêt. Rien n’est prévu pour descendre une personne suspendue."
        }
        Key::AfterStem(AfterCase::DownAndFine) => {
            "Après dix minutes dans le harnais, la personne est au sol et dit n’avoir mal nulle part."
        }
        Key::AfterStem(AfterCase::GearAfter) => {
            "Le harnais, le cordon, le coulisseau, la corde et l’ancrage qui ont arrêté la chute ont l’air intacts."
        }
        Key::AfterStem(AfterCase::WhyItHappened) => "Tout le monde va bien. Le mur n’est pas fini.",
        Key::AfterChoice(AfterCase::HangsAwake, 0) => {
            "Lancer tout de suite le sauvetage prévu, appeler les secours, faire bouger les jambes."
        }
        Key::AfterChoice(AfterCase::HangsAwake, 1) => {
            "Appeler les secours et attendre : être suspendu dans un harnais ne fait pas de mal."
        }
        Key::AfterChoice(AfterCase::HangsAwake, 2) => "À deux, remonter la personne en tirant sur la corde.",
        Key::AfterChoice(AfterCase::HangsStill, 0) => {
            "Appeler les secours, descendre la personne selon le plan sans attendre, puis premiers soins, voies respiratoires d’abord."
        }
        Key::AfterChoice(AfterCase::HangsStill, 1) => {
            "Aller vers la personne sans s’attacher : chaque seconde compte."
        }
        Key::AfterChoice(AfterCase::HangsStill, 2) => "Ne rien toucher avant l’arrivée des secours.",
        Key::AfterChoice(AfterCase::NoPlan, 0) => {
            "Personne ne monte avant que le sauvetage soit prévu et connu de l’équipe."
        }
        Key::AfterChoice(AfterCase::NoPlan, 1) => "Commencer : le numéro d’urgence tient lieu de plan.",
        Key::AfterChoice(AfterCase::NoPlan, 2) => "Commencer avec la personne la plus expérimentée.",
        Key::AfterChoice(AfterCase::DownAndFine, 0) => {
            "Faire voir la personne par un soignant quand même, et quelqu’un reste auprès d’elle."
        }
        Key::AfterChoice(AfterCase::DownAndFine, 1) => "Un repos à l’ombre, puis retour au travail.",
        Key::AfterChoice(AfterCase::DownAndFine, 2) => "Renvoyer la personne chez elle pour la journée.",
        Key::AfterChoice(AfterCase::GearAfter, 0) => {
            "Retirer tout du service et l’étiqueter, l’ancrage et ses attaches aussi; une personne compétente ou le fabricant décide."
        }
        Key::AfterChoice(AfterCase::GearAfter, 1) => {
            "S’en servir de nouveau : il vient de faire ses preuves."
        }
        Key::AfterChoice(AfterCase::GearAfter, 2) => "Changer l’absorbeur et garder le reste.",
        Key::AfterChoice(AfterCase::WhyItHappened, 0) => {
            "Arrêter, déclarer, chercher la cause et former de nouveau avant de reprendre."
        }
        Key::AfterChoice(AfterCase::WhyItHappened, 1) => "Finir le mur, puis en parler le soir.",
        Key::AfterChoice(AfterCase::WhyItHappened, 2) => "Dire à la personne de faire plus attention.",
        Key::AfterWhy(AfterCase::HangsAwake, 1) => {
            "Chez une personne immobile, le sang s’accumule dans les jambes en quelques minutes. Le sauvetage de l’équipe commence tout de suite; les secours viennent en plus."
        }
        Key::AfterWhy(AfterCase::HangsAwake, 2) => {
            "Hisser à la main échoue et met deux autres personnes au bord. Le plan dit qui fait quoi, avec quel équipement."
        }
        Key::AfterWhy(AfterCase::HangsStill, 1) => {
            "Une deuxième chute fait deux personnes à sauver. Les sauveteurs s’attachent aussi."
        }
        Key::AfterWhy(AfterCase::HangsStill, 2) => {
            "Pour une personne suspendue qui ne bouge pas, les minutes comptent."
        }
        Key::AfterWhy(AfterCase::NoPlan, 1) => {
            "L’aide extérieure peut être à une demi-heure. Une personne suspendue ne peut pas attendre autant."
        }
        Key::AfterWhy(AfterCase::NoPlan, 2) => "L’expérience ne fait descendre personne d’une corde.",
        Key::AfterWhy(AfterCase::DownAndFine, 1) => {
            "Les effets de la suspension et d’un arrêt brusque peuvent apparaître des heures plus tard."
        }
        Key::AfterWhy(AfterCase::DownAndFine, 2) => {
            "Si la personne est seule chez elle, personne ne verra ce qui se montre plus tard."
        }
        Key::AfterWhy(AfterCase::GearAfter, 1) => {
            "Ce qu’une chute fait aux fibres et au métal ne se voit pas."
        }
        Key::AfterWhy(AfterCase::GearAfter, 2) => {
            "La corde, le coulisseau, les connecteurs, le harnais et l’ancrage ont pris la même force que l’absorbeur."
        }
        Key::AfterWhy(AfterCase::WhyItHappened, 1) => {
            "Ce qui a permis une glissade en permet une autre avant le soir."
        }
        Key::AfterWhy(AfterCase::WhyItHappened, 2) => {
            "Faire plus attention ne change ni l’échelle, ni l’ancrage, ni le coulisseau."
        }
        Key::AfterSource => {
            "Bulletin OSHA SHIB 03-24-2004 sur la suspension dans un harnais (de mémoire); pratique courante"
        }
        Key::QSetUp => "Montage {letter}",
        Key::QSame => "À peu près pareil",
        Key::QPart => "{part} : {look}",
        Key::QAllFit => "Les trois peuvent servir",
        Key::QRoomEnough => "Oui, avec {reserve} ou plus de réserve",
        Key::QRoomShort => "De justesse : moins de {reserve} de réserve",
        Key::QRoomNone => "Non : la personne tombe sur ce qui se trouve dessous",
        Key::QArrest => "Commencer, avec l’arrêt de chute tel qu’il est monté",
        Key::QOtherMethod => "Utiliser une autre méthode",
        Key::QStopAndAsk => "Arrêter et demander",
        Key::QFootHolds => "Elle tient",
        Key::QFootSlides => "Son pied glisse",
        Key::QFootBack => "Elle bascule en arrière, loin du mur",
        Key::QFootSide => "Elle bascule de côté",
        Key::QWireKept => "Oui : d’ici elle garde la distance, maintenant que l’exploitant a dit la tension",
        Key::QWireAsk => "Non : arrêter et demander à l’exploitant",
        Key::QWireDry => "Oui, si elle est en bois sec ou en plastique",
        Key::WhyEndsStopped => {
            "Une corde n’arrête la chute que si chaque maillon tient et qu’il y a de la place dessous. Regardez cette chute."
        }
        Key::WhyEndsStrikes => {
            "La somme de la chute libre, de l’allongement et du déploiement donne autre chose ici. Regardez cette chute."
        }
        Key::WhyEndsLetGo => "Rien ne lâche dans cette chute. Qu’elle ait tenu une fois prouve peu.",
        Key::WhyHigherSame => "Le point qui diffère coûte de la hauteur. Regardez les deux chutes.",
        Key::WhyHigherOther => {
            "C’est l’inverse : ce qui laisse tomber plus bas avant que la liaison tienne arrête plus bas."
        }
        Key::WhyHigherDiffer => {
            "Ce qui diffère ici compte pour d’autres raisons, pas pour la longueur de cette chute."
        }
        Key::WhyPutGrab => {
            "À {height}, la chute libre est de {value}. Chaque pas vers le haut la raccourcit."
        }
        Key::WhyFaultMissed => "L’une d’elles ne peut pas servir : {part}.",
        Key::WhyFaultNone => "Ce que vous avez choisi est en ordre; les autres aussi.",
        Key::WhyFaultOther => "Ce que vous avez choisi est en ordre. Le défaut est ailleurs : {part}.",
        Key::WhySteps => "{share} des paires étaient en ordre. Dans l’ordre : {steps}.",
        Key::WhyAnchorNone => "Cela n’a jamais été fait pour porter une charge.",
        Key::WhyAnchorWeak => "Cela tient un peu, mais moins que ce que cet endroit demande.",
        Key::WhyRoom => {
            "Comptez la chute libre, le déploiement, l’allongement et le balancement, puis ce qui est dessous. Regardez cette chute."
        }
        Key::WhyAlongFar => "De là, la personne finit trop bas ou balance trop vite.",
        Key::WhyAlongNear => "C’est à portée, mais ce n’est pas la plus grande de ces distances.",
        Key::WhyMethodArrest => {
            "L’arrêt de chute vient en dernier parmi les méthodes, et quelque chose ici s’y oppose : {because}."
        }
        Key::WhyMethodOther => "Rien ici n’offre une autre méthode qui viendrait avant.",
        Key::WhyMethodAsk => {
            "Il ne reste rien à demander ici : le plan est écrit, l’ancrage a été choisi par une personne compétente, il y a du dégagement."
        }
        Key::WhyFooting => {
            "Son pied demande un frottement de {needed}, et ce sol donne environ {has} (supposé)."
        }
        Key::WhyFootingBack => {
            "L’échelle est si droite que le poids de la personne et de l’échelle tombe derrière son pied."
        }
        Key::WhyFootingSide => {
            "En se penchant, la personne porte le poids commun à {off} du milieu, au-delà du montant à {rail}."
        }
        Key::WhyWire => {
            "En tournant autour de son pied, l’échelle vient à {value} du fil. La distance d’approche minimale est ici de {limit}. Le bois et le plastique ne protègent pas : l’humidité et la peinture conduisent."
        }
        Key::AfterChoice(..) | Key::AfterWhy(..) => "",
        Key::QFrom => "{value} ou plus haut",
        Key::WhyMethodRank => {
            "Une méthode qui vient avant l’arrêt de chute convient ici; c’est elle qui décide : {because}."
        }
        Key::QuizHeading => "Quiz",
        Key::QuizLead => {
            "Douze questions, sans limite de temps, et de nouveau celles que vous avez manquées la dernière fois. Chaque corrigé est calculé par le même moteur que les chutes."
        }
        Key::QuizHalves => "Commencé et pas fini",
        Key::QuizHalf => "{who} : {done} sur {all}, commencé le {day}",
        Key::QuizResume => "Continuer",
        Key::QuizDrop => "Abandonner",
        Key::QuizMode => "Pour quoi faire?",
        Key::QuizPractice => "Exercice",
        Key::QuizAssessment => "Évaluation",
        Key::QuizPracticeHint => {
            "Après chaque réponse, vous savez si elle est juste, et pourquoi. Rien n’est enregistré."
        }
        Key::QuizAssessmentHint => "Vous le savez à la fin. Il en reste une fiche à imprimer et à classer.",
        Key::QuizWho => "Nom ou code",
        Key::QuizNameless => "Une fiche a besoin d’un nom ou d’un code.",
        Key::QuizTrainer => "Nom de la personne qui forme",
        Key::QuizCut => "Seuil de réussite",
        Key::QuizCutHint => {
            "Quatre sur cinq, sauf si vous changez ce seuil : deux étourderies sont permises, mais aucune erreur qui peut tuer."
        }
        Key::QuizSeed => "Numéro du questionnaire",
        Key::QuizSeedHint => "Le même numéro donne les mêmes questions à tout le monde.",
        Key::QuizPlace => "Règles de : {place}.",
        Key::QuizBegin => "Commencer",
        Key::QuizNotCertificate => {
            "Ceci prépare et accompagne une formation approuvée. Ce n’est pas une attestation de formation approuvée."
        }
        Key::QuizProgress => "Question {n} sur {all}",
        Key::QuizYourAnswer => "Votre réponse",
        Key::QuizLock => "Confirmer cette réponse",
        Key::QuizPickFirst => "Choisissez d’abord une réponse",
        Key::QuizOn => "Continuer",
        Key::QuizLeave => "Quitter : il vous attend ici",
        Key::QuizUp => "Monter : {what}",
        Key::QuizDown => "Descendre : {what}",
        Key::QuizRight => "Juste",
        Key::QuizPartly => "En partie juste",
        Key::QuizWrong => "Pas juste",
        Key::QuizCritical => "une erreur qui peut tuer",
        Key::QuizYours => "Votre réponse : {answer}",
        Key::QuizKey => "Juste : {answer}",
        Key::QuizSee => "Voir la chute",
        Key::QuizResult => "Le résultat",
        Key::QuizPassed => "{points} des points : réussi (à partir de {cut}).",
        Key::QuizFailed => {
            "{points} des points : non réussi (à partir de {cut}). Ce que vous avez manqué revient sous une autre forme."
        }
        Key::QuizFailedCritical => {
            "{points} des points, et erreurs qui peuvent tuer : {critical}. Non réussi, quels que soient les points. Ce que vous avez manqué revient sous une autre forme."
        }
        Key::QuizPracticeDone => "L’exercice est fini. Rien n’a été enregistré.",
        Key::QuizExport => "Garder la fiche",
        Key::QuizExportWhy => {
            "Un navigateur peut effacer ce qu’il garde. Enregistrez le fichier ou imprimez la page maintenant."
        }
        Key::QuizAnswers => "Les réponses",
        Key::QuizAgain => "Un autre questionnaire",
        Key::WriteRecord => "Enregistrer cette fiche",
        Key::Print => "Imprimer",
        Key::SheetTitle => "Fiche d’un quiz sur l’arrêt de chute",
        Key::SheetFinished => "Terminé",
        Key::SheetPoints => "Points",
        Key::SheetCritical => "Erreurs qui peuvent tuer",
        Key::SheetResult => "Résultat",
        Key::SheetPassed => "réussi",
        Key::SheetNotPassed => "non réussi",
        Key::SheetVersions => "Versions",
        Key::SheetSign => "Signature de la personne qui forme, et date",
        Key::SheetChain => {
            "Ce nombre change si la fiche est modifiée, mais qui le veut peut en faire un nouveau. Il ne prouve pas qui a répondu."
        }
        Key::NoteNotKept => {
            "Cet appareil ne garde pas ce que vous faites (navigation privée, ou mémoire pleine). Enregistrez un fichier avant de quitter."
        }
        Key::NoteOtherTab => "Ce questionnaire a été continué dans un autre onglet. Il reprend de là.",
        Key::NoteClockBack => {
            "L’horloge de l’appareil est en retard sur le questionnaire terminé avant sur cet appareil. La fiche le dit."
        }
        Key::NoteCleared => "Cet appareil est vidé.",
        Key::NoteGone => "J’ai lu",
        Key::CrewHeading => "Équipe et fiches",
        Key::CrewLead => {
            "Gardé sur cet appareil seulement. Enregistrez des fichiers pour les déplacer ou les conserver."
        }
        Key::CrewEmpty => "La liste est vide. Collez des noms, ou commencez une évaluation sous un nom.",
        Key::CrewNone => "pas encore de questionnaire",
        Key::CrewPassed => "réussi le {day} avec {points}",
        Key::CrewNotPassed => "non réussi le {day}, {points}",
        Key::CrewOpen => "Ouvrir et vérifier",
        Key::CrewRemove => "Retirer de la liste",
        Key::CrewPaste => "Noms, un par ligne",
        Key::CrewAdd => "Ajouter à l’équipe",
        Key::CrewCsv => "D’un fichier CSV",
        Key::CrewMid => "Milieu de la saison (un rappel est alors dû)",
        Key::CrewAnalysis => "Ce que l’équipe n’a pas compris",
        Key::CrewAnalysisHint => {
            "Le plus bas d’abord. « Distingue » près de 0 ou moins : ceux qui savent le reste n’y font pas mieux; revoyez la question ou enseignez le sujet de nouveau."
        }
        Key::ColKind => "Sujet",
        Key::ColAnswered => "Réponses",
        Key::ColRight => "Juste",
        Key::ColApart => "Distingue",
        Key::CrewFiles => "Fichiers",
        Key::CrewFilesHint => {
            "Quand vous ouvrez un fichier, ce qui est nouveau s’ajoute et rien de ce qui est ici ne change."
        }
        Key::WriteArchive => "Enregistrer toutes les fiches",
        Key::WriteCsv => "Pour un tableur (CSV)",
        Key::WriteXapi => "Énoncés xAPI",
        Key::CrewImport => "Ouvrir un fichier de fiches",
        Key::ImportDone => {
            "{fresh} conservées, {held} déjà ici, {edited} écartées parce qu’elles ont été modifiées."
        }
        Key::RefusedTooLarge => "Pas ouvert : le fichier dépasse 64 Mo. Rien n’a changé.",
        Key::RefusedBroken => "Pas ouvert : le fichier est abîmé ou incomplet. Rien n’a changé.",
        Key::RefusedForeign => "Pas ouvert : ce n’est pas un fichier de fiches. Rien n’a changé.",
        Key::RefusedNewer => "Pas ouvert : le fichier vient d’une version plus récente. Rien n’a changé.",
        Key::DoubtNone => {
            "Elle correspond à son sceau et, refaite, ses réponses correspondent à son questionnaire. Le sceau n’a pas de secret : qui le veut peut sceller de nouveau."
        }
        Key::DoubtEdited => {
            "Elle ne correspond pas à son sceau : elle a été modifiée après avoir été scellée."
        }
        Key::DoubtVersion => {
            "Elle correspond à son sceau, mais une autre version l’a faite : son questionnaire ne peut pas être refait ici."
        }
        Key::DoubtReplay => {
            "Elle correspond à son sceau mais, refaite, ses réponses ou ses notes ne correspondent pas à son questionnaire."
        }
        Key::DueNothing => "plus rien de dû",
        Key::DueFirst => "un premier questionnaire réussi",
        Key::DueRecheck => "rappel du jour {days}",
        Key::DueMid => "rappel de mi-saison",
        Key::DueNow => "Dû : {what} {day}",
        Key::DueLater => "Ensuite : {what}, à partir du {day}",
        Key::ClearHeading => "Vider cet appareil",
        Key::ClearHint => {
            "Efface les fiches, l’équipe, les questionnaires commencés, les réglages et le montage. Enregistrez d’abord les fichiers."
        }
        Key::ClearDevice => "Vider cet appareil",
        Key::ClearSure => "Oui, tout effacer",
        Key::ClearNot => "Non, garder",
        Key::RoomsComing => "Un instant, cette partie se charge…",
        Key::RoomsMissing => {
            "Cette partie n’a pas pu être chargée. La page réessaie dès qu’il y a un réseau; ensuite, elle fonctionne sans réseau."
        }
        Key::GroundSlope => "Pente du sol qui descend depuis le mur",
        Key::StateGroundFalls => "Le sol descend depuis le mur à {slope}.",
        Key::StateNotClipped => "Le cordon n’est pas accroché à l’anneau en D.",
        Key::Event(EventKind::NotClipped) => "pas accroché",
        Key::Title(FindingCode::NotClipped) => "Pas accroché",
        Key::Says(FindingCode::NotClipped) => {
            "Le cordon n’était pas accroché à l’anneau en D. Rien ne retient la personne, même si tout le reste est bon."
        }
        Key::Change(FindingCode::NotClipped) => {
            "Accrochez le cordon à l’anneau en D dorsal et regardez le cliquet du mousqueton se fermer, avant de quitter le sol."
        }
        Key::Lesson(Lesson::AlongTheWall) => "Se déplacer le long du mur",
        Key::Principle(Lesson::AlongTheWall) => {
            "Une corde penchée est un pendule : la chute finit sous l’ancrage, plus bas et de côté. Déplacez l’ancrage, ou descendez, avant que le travail vous éloigne trop."
        }
        Key::PrincipleSource(Lesson::AlongTheWall) => {
            "Forme exacte d’un pendule : chute L (1 − cos a), vitesse √(2 g × chute)."
        }
        Key::Lesson(Lesson::GrabBolt) => "Boulon serré ou desserré",
        Key::Principle(Lesson::GrabBolt) => {
            "Avec un boulon desserré, le coulisseau devient un frein qui glisse : l’arrêt est plus doux mais plus long, et la place peut manquer. Serrez-le à la clé à chaque changement de corde, et revérifiez dans la journée."
        }
        Key::PrincipleSource(Lesson::GrabBolt) => {
            "Pratique courante; ce que tient un boulon desserré est supposé."
        }
        Key::Lesson(Lesson::AnchorChimney) => "Autour d’une cheminée",
        Key::Principle(Lesson::AnchorChimney) => {
            "Briques et vieux mortier tiennent par leur poids, pas contre une traction de côté. Une élingue autour d’une cheminée ne vaut que ce qu’en dit une personne qualifiée."
        }
        Key::PrincipleSource(Lesson::AnchorChimney) => {
            "Statique d’un bloc sur son joint; le Règl. de l’Ont. 213/91, art. 26.7, demande ce que peut porter un support fixe (vérifié comme pour les limites)."
        }
        Key::FrontLegend => {
            "Vue de face. Points : le trajet de l’anneau en D. Tirets : le passage sous l’ancrage. Trait épais : là où la corde scie l’avant-toit."
        }
        Key::NavLabel => "Vues",
        Key::WhyMethodOtherAsk => {
            "Aucune autre méthode ne vient avant ici. Un point reste à régler par quelqu’un d’autre : {because}."
        }
        Key::NavLessons => "Leçons",
        Key::LessonsHeading => "Leçons",
        Key::LessonsLead => {
            "De courtes leçons, une idée chacune. Deux montages, un seul point différent : dites lequel s’en tire mieux, puis regardez les deux chutes."
        }
        Key::LessonDone => "faite",
        Key::LessonAsk => "Un seul point diffère. Dans lequel la personne s’en tire-t-elle mieux?",
        Key::LessonLock => "Confirmer et voir les deux chutes",
        Key::LessonRight => "Vous avez dit : {said}. C’est bien ce qui arrive.",
        Key::LessonOther => "Vous avez dit : {said}. Il en va autrement : {came}.",
        Key::LessonPrinciple => "Ce que cela montre",
        Key::LessonNext => "Leçon suivante",
        Key::LessonTry => "Essayer {letter} vous-même",
        Key::LessonPlay => "Lancer les deux, quatre fois plus lentement",
        Key::LessonTime => "Temps",
        Key::LessonGhost => "trait plein : A; tirets : B",
        Key::CmpEnd => "L’issue",
        Key::CmpForce => "Force maximale sur le corps",
        Key::CmpFree => "Chute libre",
        Key::CmpFall => "Chute totale",
        Key::CmpRoom => "Dégagement restant",
        Key::CmpGap => "Différence",
        Key::Lesson(Lesson::GrabHeight) => "Le coulisseau, haut ou bas",
        Key::Lesson(Lesson::GrabArrow) => "La flèche du coulisseau",
        Key::Lesson(Lesson::BoltAndLatch) => "Le loquet du coulisseau",
        Key::Lesson(Lesson::AbsorberOrNot) => "Avec et sans absorbeur",
        Key::Lesson(Lesson::AnchorGround) => "Ce qui tient l’ancrage",
        Key::Lesson(Lesson::RoomToStop) => "Le dégagement",
        Key::Lesson(Lesson::SlackOnTheRoof) => "Du mou sur le toit",
        Key::Principle(Lesson::GrabHeight) => {
            "Comptez comme chute libre la longueur du cordon, plus la hauteur dont le coulisseau pend sous l’anneau en D. Gardez le coulisseau à l’anneau ou plus haut."
        }
        Key::Principle(Lesson::GrabArrow) => {
            "Un coulisseau ne bloque que dans un sens. Si la flèche pointe à l’opposé de l’ancrage, il file le long de la corde comme une perle."
        }
        Key::Principle(Lesson::BoltAndLatch) => {
            "C’est le loquet qui garde la corde dans le coulisseau quand on tire fort. Fermez-le, tirez pour l’éprouver, et revérifiez-le toutes les 15 à 20 minutes."
        }
        Key::Principle(Lesson::AbsorberOrNot) => {
            "Un arrêt demande de la distance : plus il est court, plus il est dur. L’absorbeur se déchire pour la donner; sans lui, seule la corde s’allonge, et une corde courte s’allonge peu."
        }
        Key::Principle(Lesson::AnchorGround) => {
            "Un clou tient par la longueur qui est dans le bois massif. Dans le revêtement seul, c’est l’épaisseur d’un doigt."
        }
        Key::Principle(Lesson::RoomToStop) => {
            "La chute libre, la déchirure, l’allongement et la longueur du corps doivent tenir dessous. Près du sol, aucun équipement ne crée de dégagement : une autre méthode, oui."
        }
        Key::Principle(Lesson::SlackOnTheRoof) => {
            "Le mou de la corde, c’est de la chute libre qui attend. Reprenez-le et remontez le coulisseau avant de vous mettre au travail."
        }
        Key::PrincipleSource(Lesson::GrabHeight) => {
            "Chute libre = cordon moins la hauteur du coulisseau au-dessus de l’anneau (géométrie) : c’est le plus qu’elle peut être. Si la personne se tient à côté de la corde, elle est plus courte; avant de mordre, le coulisseau file encore un peu (0,15 m ici, supposé), et cela compte aussi (29 CFR 1926.500(b))."
        }
        Key::PrincipleSource(Lesson::GrabArrow) => {
            "Pratique courante; les fabricants marquent le sens sur le coulisseau."
        }
        Key::PrincipleSource(Lesson::BoltAndLatch) => "Pratique courante.",
        Key::PrincipleSource(Lesson::AbsorberOrNot) => {
            "Distance = poids × chute ÷ (force − poids); F = mg + √((mg)² + 2 mg M f) sur une corde (Wexler 1950)."
        }
        Key::PrincipleSource(Lesson::AnchorGround) => {
            "NDS et USDA Wood Handbook : la résistance à l’arrachement croît avec la longueur dans le bois."
        }
        Key::PrincipleSource(Lesson::RoomToStop) => {
            "OSHA Technical Manual, section V, chapitre 4; alerte ontarienne C8/0895 (1995) sur l’arrêt à 3 m."
        }
        Key::PrincipleSource(Lesson::SlackOnTheRoof) => "Pratique courante.",
        Key::EndingsHeading => "Se tromper exprès",
        Key::EndingsLead => {
            "Essayez des montages jusqu’à avoir vu chaque issue possible. Toutes viennent vraiment du moteur de calcul."
        }
        Key::EndingsCount => "{found} sur {all} trouvées",
        Key::EndingUnknown => "pas encore vue",
        Key::Ending(Ending::Stopped) => "arrêt dans le vide",
        Key::Ending(Ending::OnRoof) => "arrêt sur le toit",
        Key::Ending(Ending::Spent) => "l’absorbeur déchiré jusqu’au bout",
        Key::Ending(Ending::Swing) => "un choc dur contre le mur ou l’échelle",
        Key::Ending(Ending::Ground) => "jusqu’au sol",
        Key::Ending(Ending::Deck) => "sur une terrasse",
        Key::Ending(Ending::OffRope) => "la corde sortie du coulisseau",
        Key::Ending(Ending::Anchor) => "l’ancrage arraché",
        Key::Ending(Ending::Rope) => "la corde rompue",
        Key::Ending(Ending::Link) => "un connecteur, le cordon ou le harnais rompu",
        Key::Ending(Ending::Ladder) => "l’échelle partie d’abord",
        Key::Title(FindingCode::RopeSlack) => "Du mou au-dessus du coulisseau",
        Key::Says(FindingCode::RopeSlack) => {
            "Il y a {value} de mou entre l’ancrage et le coulisseau : c’est autant de chute libre avant que la corde commence à retenir."
        }
        Key::Change(FindingCode::RopeSlack) => {
            "Tirez la corde dans le coulisseau jusqu’à ce qu’elle soit droite vers l’ancrage; recommencez à chaque montée."
        }
        Key::Title(FindingCode::EdgeBare) => "Une arête nue sous la corde",
        Key::Says(FindingCode::EdgeBare) => {
            "La corde d’assurance travaille sur l’arête nue du toit : larmier, tôle et gravillons peuvent la couper. Le calcul ne compte l’arête que comme un frottement."
        }
        Key::Change(FindingCode::EdgeBare) => {
            "Posez une protection d’arête ou un rouleau là où la corde passe le bord, et regardez ce bout de corde chaque fois."
        }
        Key::Title(FindingCode::RopeEndOpen) => "Rien au bout de la corde",
        Key::Says(FindingCode::RopeEndOpen) => "Un coulisseau qui glisse sortirait au bout de la corde.",
        Key::Change(FindingCode::RopeEndOpen) => {
            "Prenez une corde munie de l’arrêt du fabricant, qui va jusqu’au sol. Des règlements interdisent les nœuds."
        }
        Key::Title(FindingCode::RopeEndKnot) => "Un nœud en guise d’arrêt",
        Key::Says(FindingCode::RopeEndKnot) => {
            "Au bout de la corde il y a un nœud, là où va l’arrêt du fabricant."
        }
        Key::Change(FindingCode::RopeEndKnot) => {
            "Prenez une corde munie de l’arrêt du fabricant et vérifiez si les nœuds sont permis là où vous travaillez."
        }
        Key::Title(FindingCode::RopeShort) => "La corde ne va pas jusqu’au sol",
        Key::Says(FindingCode::RopeShort) => {
            "La corde d’assurance s’arrête à {value} au-dessus de ce qui est dessous."
        }
        Key::Change(FindingCode::RopeShort) => {
            "Prenez une corde assez longue pour aller jusqu’au sol, ou jusqu’à un niveau d’où personne ne peut tomber."
        }
        Key::Title(FindingCode::GrabLink) => "Cordon trop long pour un coulisseau",
        Key::Says(FindingCode::GrabLink) => {
            "{value} entre le coulisseau et l’anneau en D dépassent les {limit} pour lesquels un coulisseau est fait."
        }
        Key::Change(FindingCode::GrabLink) => {
            "Prenez un cordon plus court, permis par le fabricant du coulisseau. Ne nouez ni n’enroulez jamais un cordon long."
        }
        Key::Title(FindingCode::LadderNotRequired) => "La protection est-elle exigée ici?",
        Key::Says(FindingCode::LadderNotRequired) => {
            "Elle n’est pas exigée sur une échelle portative ici; elle reste utile."
        }
        Key::Change(FindingCode::LadderNotRequired) => {
            "Demandez à votre employeur : plusieurs exigent plus que la règle."
        }
        Key::Title(FindingCode::LadderConditions) => "Sur une échelle portative",
        Key::Says(FindingCode::LadderConditions) => {
            "Ici, le travail sur une échelle portative a ses propres conditions : trois points d’appui, travail léger, courte durée ou main libre. Demandez lesquelles comptent."
        }
        Key::Change(FindingCode::LadderConditions) => {
            "Demandez à une personne compétente quelles conditions s’appliquent."
        }
        Key::Title(FindingCode::AnchorOpen) => "Point d’ancrage : à vérifier, demandez",
        Key::Says(FindingCode::AnchorOpen) => {
            "Selon ce qui est compté ici, {value}; le règlement demande {limit}. Laissés de côté : ferme ou chevron, fentes, pourriture, plaque, espacement, bords du bois; dans une cheminée, fissures, conduit et solins. Demandez."
        }
        Key::Change(FindingCode::AnchorOpen) => {
            "Arrêtez et demandez : la notice du point d’ancrage dit quelles attaches, combien, et dans quoi."
        }
        Key::Title(FindingCode::AnchorEngineered) => "Point d’ancrage : à charge nominale, conçu",
        Key::Says(FindingCode::AnchorEngineered) => {
            "Un point d’ancrage à charge nominale, posé selon le plan d’une personne qualifiée."
        }
        Key::Change(FindingCode::AnchorEngineered) => "Regardez son étiquette et le plan avant chaque usage.",
        Key::Title(FindingCode::WireUnknown) => "DANGER : un fil, et personne n’a demandé",
        Key::Says(FindingCode::WireUnknown) => {
            "Personne ne sait quelle distance suffit : l’exploitant n’a pas dit la tension du fil. D’ici, l’échelle ou la main en vient à {value}."
        }
        Key::Change(FindingCode::WireUnknown) => {
            "Arrêtez. Demandez à l’exploitant la tension et la distance à garder. D’ici là, rien ne monte."
        }
        Key::Title(FindingCode::WireCarried) => "AVERTISSEMENT : portez-la couchée",
        Key::Says(FindingCode::WireCarried) => "Portée debout sous le fil, cette échelle en vient à {value}.",
        Key::Change(FindingCode::WireCarried) => "Portez-la couchée, à deux, loin du fil.",
        Key::Title(FindingCode::ServiceDrop) => "AVERTISSEMENT : le branchement",
        Key::Says(FindingCode::ServiceDrop) => {
            "Le fil qui va à l’avant-toit est sous tension, moins de 750 V. Sa gaine le protège des intempéries; elle ne vous protège pas si vous y touchez. D’ici, l’échelle ou la main en vient à {value}."
        }
        Key::Change(FindingCode::ServiceDrop) => {
            "Ne touchez à rien près de lui. Demandez au distributeur de le couvrir ou de le couper avant d’y travailler."
        }
        Key::VerdictTooLow => {
            "Trop bas pour l’arrêt de chute : la somme usuelle demande {value} sous les pieds, il y a {other}. Cette chute-ci s’est arrêtée; la prochaine peut-être pas."
        }
        Key::Quarter => "un quart",
        Key::QuarterToThird => "un quart à un tiers",
        Key::CheckedGuide => "lu dans un guide officiel, {date}",
        Key::CheckedSecondary => "lu dans un compte rendu, {date}",
        Key::EndStop => "arrêt du fabricant",
        Key::RopeKindLabel => "Corde",
        Key::RopePolyBlend => "polyester mélangé 16 mm",
        Key::RopeKernmantle => "gainée 11 mm (EN 1891 A)",
        Key::RopePolyester => "polyester 12 mm",
        Key::RopeNylon => "nylon 12 mm",
        Key::RopeStated => "autre, par sa raideur",
        Key::VoltageLabel => "Que dit l’exploitant de sa tension?",
        Key::VoltUnknown => "personne n’a demandé",
        Key::VoltService => "branchement, moins de 750 V",
        Key::Volt50 => "750 V à 50 kV",
        Key::Volt75 => "jusqu’à 75 kV",
        Key::Volt150 => "jusqu’à 150 kV",
        Key::Volt250 => "jusqu’à 250 kV",
        Key::VoltMore => "plus",
        Key::OtherGround => "du sol, avec un manche",
        Key::OtherPlatform => "nacelle, ou échafaudage avec garde-corps",
        Key::Step(Step::FirstUp) => {
            "Protéger autrement la première personne qui pose l’ancrage : nacelle, échafaudage, ou corde par-dessus le faîte attachée de l’autre côté"
        }
        Key::WhyWireUnknown => {
            "Personne n’a demandé la tension du fil : personne ne sait quelle distance suffit. Commencez toujours par arrêter et demander à l’exploitant."
        }
        Key::Title(FindingCode::GrabLinkAsk) => "Le cordon est-il assez court?",
        Key::Says(FindingCode::GrabLinkAsk) => {
            "D’après un compte rendu, la norme canadienne permet 0,76 m (30 po) au plus sur un coulisseau. Ce que le vôtre peut porter est dans sa notice."
        }
        Key::Change(FindingCode::GrabLinkAsk) => "Cherchez dans la notice du coulisseau, ou demandez.",
        Key::SheetLaw => "Un registre de formation est exigé par",
        Key::ChClip => "Accrocher le cordon",
        Key::ChTie => "Attacher l’échelle en haut",
        Key::ChInLine => "Se tenir entre les montants",
        Key::StrengthJudgeStack => {
            "Compté par le poids et le mortier seuls; fissures intérieures, conduit et solins sont laissés de côté : à vérifier, demandez. Seule une personne qualifiée peut juger une vraie cheminée."
        }
        Key::StrengthJudgeAny => "Seule une personne qualifiée peut juger un vrai point d’ancrage.",
        Key::PlotTitleLetGo => {
            "La liaison a tiré {value} au plus avant de lâcher; la suite n’est pas dans ce graphique"
        }
        Key::PlotTitleStrikes => "Jusqu’au choc en bas, la liaison a tiré {value} au plus",
        // A code that needs no second sentence says the first.
        Key::SaysMet(code) => text(Key::Says(code)),
    }
}
