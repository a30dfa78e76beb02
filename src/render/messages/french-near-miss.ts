import type { Format } from '../format.ts';
import type { NearMiss } from '../near-miss-facts.ts';
import type { NearMissWords } from './english-near-miss.ts';
import { changePhrase, triedPhrase, type ChangeWords, type Changed } from './near-miss-phrases.ts';

/** Flaps and dimensions of styles. */
const PARTS: Readonly<Record<string, string>> = {
  glueFlap: 'patte de collage', tuckFlap: 'patte rentrante', dustFlap: 'patte anti-poussière', cornerFlap: 'patte d’angle', endFlap: 'patte d’extrémité', length: 'longueur', width: 'largeur', depth: 'profondeur', height: 'hauteur', side: 'côté', diameter: 'diamètre', top: 'diamètre en haut', bottom: 'diamètre en bas',
};

const WORDS: ChangeWords = {
  open: { rotations: 'quarts de tour permis aussi', 'common-knife': 'filet commun entre voisines', 'bar-tail': 'barre de contrôle en queue de feuille', 'bar-gripper': 'barre de contrôle côté pinces', 'bar-centre': 'barre de contrôle au milieu', 'bar-none': 'pas de barre de contrôle' },
  measured: {
    gap: ['écart', 'en moins'], gripper: ['prise de pinces', 'en moins'], tail: ['marge de queue', 'en moins'], sides: ['marges latérales', 'en moins chacune'], 'bar-height': ['barre de contrôle', 'en moins'],
    'sheet-width': ['feuille', 'de plus en largeur', true], 'sheet-height': ['feuille', 'de plus en profondeur', true],
    'edge-top': ['flan', 'de moins au bord supérieur', true], 'edge-bottom': ['flan', 'de moins au bord inférieur', true], 'edge-left': ['flan', 'de moins au bord gauche', true], 'edge-right': ['flan', 'de moins au bord droit', true],
  },
  flap: (name) => PARTS[name] ?? name,
  less: 'en moins',
  bleedsCut: (bleed) => `fonds perdus coupés au milieu (${bleed} chacun)`,
  upTo: (length) => `jusqu’à ${length}`,
};

const change = (one: Changed, format: Format) => changePhrase(one, WORDS, format);

export const frenchNearMiss: NearMissWords = {
  heading: 'Gains à portée',
  change,
  head: { change: 'un seul changement', ups: 'poses', board: ({ boardUnit }) => `${boardUnit.name}/1000 gagnés`, m2: ({ boardUnit }) => `${boardUnit.name} par an`, kg: 'kg par an', money: (currency) => `${currency} par an` },
  none: ({ ups }) => `Aucun changement essayé seul n’apporte plus de ${ups} poses.`,
  best: (facts, format) => {
    const [best] = facts.found;
    if (!best) return frenchNearMiss.none(facts);
    const worth = best.saved.moneyPerYear === undefined || facts.yearly === undefined ? '' : `, ${format.number(best.saved.moneyPerYear, 0)} ${facts.currency} par an pour ${format.number(facts.yearly, 0)} pièces`;
    return `${change(best, format).replace(/^./, (letter) => letter.toUpperCase())} : ${best.ups} poses au lieu de ${facts.ups}, ${format.board(best.saved.m2PerThousand, 2)} de carton en moins par mille${worth}.`;
  },
  stopped: ({ tried, changes }) => `Arrêté avant que tout soit essayé : ${tried} modifications sur ${changes}.`,
  searched: ({ stepMm }, format) => `Cherché par pas de ${format.length(stepMm)}, par recherches rapides sur le contour vrai ; chaque affirmation a son implantation contrôlée. Une recherche plus longue peut trouver que moins suffit.`,
  notFound: ({ notFound }, format) => `Essayé sans effet à lui seul : ${notFound.map((one) => triedPhrase(one, WORDS, format)).join(', ')}.`,
  counts: ({ counts, yearly, found }, format) => (yearly === undefined || !found.some(({ saved }) => saved.moneyPerYear !== undefined) ? undefined : `Une année fait ${format.number(yearly, 0)} pièces ; l’argent compte ${counts === 'board' ? 'le carton seul' : 'le carton et les heures de presse et de platine'}, sans calage ni forme neuve.`),
  caution: 'Écarts et marges plus étroits, filets communs et fibres tournées : au fabricant de formes, au manuel de la machine et au client de les permettre.',
  thumbnail: (miss: NearMiss, format) => [`${miss.ups} poses`, change(miss, format)],
  picture: 'Gains à portée : les implantations',
};
