import type { NestFacts } from '../nest-facts.ts';
import { frenchCutting } from './french-cutting.ts';
import { sourceName } from './source-name.ts';
import type { ReportWords } from './words.ts';

const USE: Readonly<Record<NestFacts['product'], string>> = { carton: 'étuis', label: 'étiquettes', blank: 'flans' };
const USED: Readonly<Record<NestFacts['product'], string>> = { carton: 'devient étui', label: 'devient étiquette', blank: 'est utilisée' };

/** Pairs of stations named in a row before the rest is only counted. */
const NAMED_PAIRS = 4;

const SOURCES: Readonly<Record<string, string>> = {
  'plain rows': 'rangées droites', 'plain columns': 'colonnes droites', 'nested rows': 'rangées imbriquées', 'nested columns': 'colonnes imbriquées', 'shifted rows': 'rangées décalées', 'shifted columns': 'colonnes décalées',
  'every second row turned': 'une rangée sur deux retournée', 'every second column turned': 'une colonne sur deux retournée', 'rows of different rotations': 'rangées d’orientations différentes', 'columns of different rotations': 'colonnes d’orientations différentes',
  'head-to-tail rows': 'rangées tête-bêche', 'head-to-tail columns': 'colonnes tête-bêche', 'mixed rows': 'rangées mêlées', 'mixed columns': 'colonnes mêlées', 'blocks of rows and columns': 'blocs de rangées et de colonnes',
  and: 'et', 'repeating pattern': 'motif répété', 'blocks of turned rectangles': 'blocs de rectangles tournés', 'free search': 'recherche libre', 'common knife': 'filet commun',
};

export const frenchReport: ReportWords = {
  title: ({ design, ups, sheet }, format) => `${design.name} : ${ups} poses sur ${format.size(sheet.width, sheet.height)}`,
  answer: (facts, format) => {
    const size = format.size(facts.sheet.width, facts.sheet.height);
    const used = `${format.percent(facts.yield)} de la feuille ${USED[facts.product]}`;
    return facts.cutting ? frenchCutting.answer(facts.ups, size, facts.cutting, used) : `${facts.ups} poses sur ${size} ; ${limitWords(facts)} ; ${used}.`;
  },
  headings: {
    why: (ups) => `Pourquoi ${ups}`, board: 'Où va le carton', bleed: 'Fond perdu gardé par chaque bord', assumed: 'Ce qui a été supposé', caution: 'Avant de commander une forme', history: 'Le déroulement de la recherche', picture: 'La feuille',
  },
  labels: {
    source: 'implantation trouvée par', limit: 'limite', difference: 'écart à la limite', stopped: 'arrêt de la recherche', time: 'durée', gap: 'écart', bleed: 'fond perdu', rotations: 'orientations', blank: 'flan', yield: 'rendement',
    cell: 'motif le plus dense', sheet: 'feuille', seed: 'graine', atMost: 'au plus', design: 'modèle',
  },
  bounds: {
    area: { name: 'surface', meaning: 'connue par la surface seule : chaque flan prend du carton avec sa part de l’écart, et la feuille n’en a pas davantage' },
    ovals: { name: 'ovales', meaning: 'des flans ronds, ovales ou bombés ne se serrent pas plus que dans leur réseau le plus dense, bords de feuille compris' },
    hexagon: { name: 'hexagone', meaning: 'chaque flan prend au moins le plus petit hexagone autour de lui et sa part de l’écart, quelle que soit son orientation' },
    pockets: { name: 'poches', meaning: 'chaque place possible d’un flan a été rangée dans des poches qui en contiennent un seul ; on ne peut remplir plus de poches' },
    rectangles: { name: 'rectangles', meaning: 'chaque flan contient un rectangle, et la feuille ne peut porter plus de rectangles pareils' },
  },
  noLimit: 'non prouvée',
  stopped: {
    'limit-met': 'la limite est atteinte : aucune implantation n’en porte davantage', effort: 'l’effort est épuisé ; plus d’effort peut trouver mieux', seconds: 'le temps est épuisé ; plus de temps peut trouver mieux', interrupted: 'interrompue ; la meilleure implantation trouvée est gardée',
  },
  sources: SOURCES,
  causes: (product) => ({
    blanks: USE[product], gripper: 'prise de pinces', tail: 'marge de queue', 'side-margins': 'marges latérales', 'colour-bar': 'barre de contrôle', 'keep-outs': 'zones réservées', gaps: 'écarts entre filets', between: 'chutes entre les poses', edges: 'chutes aux bords',
  }),
  difference: (ups, limit, format) => (limit === ups ? 'aucun : on ne peut faire plus' : `${limit - ups} poses (${format.percent((limit - ups) / ups)}) restent ouvertes`),
  gap: ({ gap, ruleSavedMm }, format) => `${format.length(gap)} de filet à filet${ruleSavedMm === undefined ? '' : `, ou un filet pour deux poses : ${format.length(ruleSavedMm)} de filet gagnés`}`,
  bleed: ({ bleed, bleedMeeting }, format) => `${format.length(bleed)}${bleedMeeting === 'cut' ? ', coupé au milieu de l’écart' : ''}`,
  facing: (pairs) => `entre les poses ${pairs.slice(0, NAMED_PAIRS).map(([a, b]) => `${a} et ${b}`).join(', ')}${pairs.length > NAMED_PAIRS ? ` et ${pairs.length - NAMED_PAIRS} autres paires` : ''}`,
  otherEdges: 'tous les autres bords',
  improvement: ({ ups, source, work, seconds }, raised, format) => `${raised ? `${ups} poses` : `${ups} poses, mieux rangées,`} par ${sourceName(SOURCES, source)} après ${seconds === undefined ? `${format.number(work, 0)} pas` : format.duration(seconds)}`,
  leastSheet: ({ ups, least, sheet, stepMm, impossibleBelowMm }, format) => {
    const steps = `par pas de ${format.length(stepMm)}`;
    if (least === 'area') return `La plus petite feuille trouvée pour ${ups} poses, les deux côtés ${steps} : ${format.size(sheet.width, sheet.height)}.`;
    const side = format.length(least === 'depth' ? sheet.height : sheet.width);
    const known = impossibleBelowMm === undefined ? '' : ` ; sous ${format.length(impossibleBelowMm)} elles sont impossibles, c’est prouvé`;
    return `La feuille la plus ${least === 'depth' ? 'courte' : 'étroite'} trouvée pour ${ups} poses, ${steps} : ${side} de ${least === 'depth' ? 'profondeur' : 'largeur'}${known}.`;
  },
  axes: { ups: 'poses', seconds: 'secondes', work: 'pas de calcul' },
  caution:
    'Ceci est un plan. Filets, écarts et prise de pinces sont confirmés avec le manuel de la machine et le fabricant de formes avant toute commande. Presses, massicots et platines de découpe sont conduits par des personnes formées, selon les règles locales. ' +
    'Pour les emballages alimentaires, la personne responsable choisit encres, vernis et carton selon la loi.',
};

function limitWords({ ups, limit }: NestFacts): string {
  if (!limit) return 'on n’a pas prouvé combien d’autres tiendraient';
  const { name } = frenchReport.bounds[limit.by];
  if (limit.ups === ups) return `il n’en tient pas davantage (${name})`;
  return limit.by === 'area' ? `au plus ${limit.ups} peuvent tenir, limite connue par la surface seule` : `au plus ${limit.ups} peuvent tenir (${name})`;
}
