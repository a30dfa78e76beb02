import { LEAST_FRAME_MM, LEAST_GRID_MM } from '../../press/stripping.ts';
import { islandsOf, strippingHindrances, type StrippingWords } from './english-stripping.ts';
import { frenchStrippingChoice } from './french-stripping-choice.ts';

const count = (number: number, one: string, many: string) => `${number === 0 ? 'aucun' : number} ${number > 1 ? many : one}`;

export const frenchStripping: StrippingWords = {
  title: 'Décorticage',
  answer: (stripping, format) => `Îlots libres : ${islandsOf(stripping) || 'aucun'}. Filaments de moins de ${format.length(stripping.leastWidth)} : ${stripping.slivers.length || 'aucun'}.`,
  modes: 'Comment décortiquer',
  verdicts: (stripping, format) => {
    const { slivers, islands, narrowFrame, blanksInCell, narrowGrid } = strippingHindrances(stripping);
    const strips = `${count(slivers, 'filament', 'filaments')} de moins de ${format.length(stripping.leastWidth)}`;
    const tools = [...(slivers > 0 ? [`${strips} peuvent se déchirer`] : []), ...(narrowFrame.length > 0 ? [`moins de ${LEAST_FRAME_MM} mm de cadre : ${narrowFrame.map((edge) => frenchStripping.edges[edge]).join(' et ')}`] : [])];
    const blanking = [...tools, ...(blanksInCell > 1 ? [`aucun passage droit ne sépare toutes les poses : jusqu’à ${blanksInCell} dans une case de la grille`] : []), ...(narrowGrid > 0 ? [`${count(narrowGrid, 'passage', 'passages')} de moins de ${LEAST_GRID_MM} mm`] : [])];
    return [
      `À la main : possible${slivers > 0 ? ` ; ${strips} peuvent rester` : ''}${islands > 0 ? ` ; ${count(islands, 'îlot', 'îlots')} à pousser` : ''}.`,
      `Avec outils de décorticage : ${tools.length === 0 ? 'rien ne s’y oppose' : tools.join(' ; ')}${islands > 0 ? ` ; aiguilles pour ${count(islands, 'îlot', 'îlots')}` : ''}.`,
      `Avec séparation des poses : ${blanking.length === 0 ? 'rien ne s’y oppose' : blanking.join(' ; ')}.`,
    ];
  },
  frame: 'Cadre qui tient la feuille',
  edges: { gripper: 'côté pinces', tail: 'queue de feuille', left: 'côté gauche', right: 'côté droit' },
  pieces: 'Morceaux de déchet',
  piece: 'morceau',
  island: (number) => `îlot ${number}`,
  web: (number) => `squelette ${number}, tient au bord`,
  place: 'place, mm depuis le coin inférieur gauche',
  area: 'surface',
  width: 'largeur minimale',
  length: 'longueur',
  atLeast: (length) => `${length} ou plus`,
  under: (length) => `moins de ${length}`,
  slivers: (limit) => `Filaments de moins de ${limit}`,
  corridors: 'Passages droits et longues chutes',
  grid: ({ corridors, blanksInCell }) => [`Passages droits : ${corridors.x.length} depuis les pinces, ${corridors.y.length} le long d’elles ; ${blanksInCell === 1 ? 'chaque pose est seule dans sa case' : `jusqu’à ${blanksInCell} poses dans une case`}.`],
  scrap: 'chute droite',
  scrapAt: ({ where, from }, format) => {
    if (where === 'corridor x') return `passage à ${format.length(from)} de la gauche`;
    return where === 'corridor y' ? `passage à ${format.length(from)} du côté pinces` : frenchStripping.edges[where];
  },
  chopping: 'filets de tronçonnage',
  more: (number) => `${number} autres ne sont pas listés.`,
  slots: (number) => `${number === 1 ? 'Un des filaments est une fente de la pose elle-même, présente' : `${number} des filaments sont des fentes des poses elles-mêmes, présentes`} dans toute implantation.`,
  choice: frenchStrippingChoice,
  marked: { strip: (limit) => `filament de moins de ${limit}`, island: 'îlot, numéroté', way: 'passage droit' },
  islands: 'îlots',
  ways: 'passages droits depuis les pinces + le long',
};
