import type { ComparedSheetFacts } from '../compare-facts.ts';
import type { Format } from '../format.ts';
import { comparedSize as size, relationOf, routeWord, verdictOf, type Verdict } from './compare-figures.ts';
import type { CompareWords } from './english-compare.ts';
import { figureName } from './figure-names.ts';
import { frenchCounted } from './french-counted.ts';
import { frenchFigures } from './french-figures.ts';
import { frenchQuantities } from './french-quote.ts';
import { FRENCH_STAGES } from './french-stages.ts';

const whole = (value: number, format: Format) => format.number(value, 0);
const poses = (count: number) => frenchCounted(count, 'pose');
const die = ({ die: standing }: ComparedSheetFacts) => (standing ? ` sur la forme existante${standing.number === undefined ? '' : ` (${standing.number})`}` : '');
const named = (sheet: ComparedSheetFacts, format: Format) => `${size(sheet, format)} ${format.unit} à ${poses(sheet.ups)}${die(sheet)}`;
const figure = (name: string) => figureName(name, frenchFigures, 'étuis');

export const frenchCompare: CompareWords = {
  size,
  ups: poses,
  title: ({ name, sheets }) => `${name} : ${frenchCounted(sheets.length, 'feuille comparée', 'feuilles comparées')}`,
  sentence: (facts, format) => {
    const verdict = verdictOf(facts);
    const { quantity } = verdict;
    const inMoney = facts.measure === 'money';
    if (verdict.kind === 'none') return `Aucune feuille ne peut être obtenue pour un tirage de ${whole(quantity!, format)}.`;
    const winner = `La feuille ${named(verdict.winner, format)}`;
    const { where, turns } = placeOf(verdict, format);
    if (verdict.kind === 'only') return `${winner} est la seule comparée.`;
    if (verdict.kind === 'usual') return `${winner}, l’habituelle, ${inMoney ? 'coûte' : 'prend'}${where} le moins${inMoney ? '' : ' de carton'} des ${facts.sheets.length} comparées${turns}.`;
    if (verdict.kind === 'usual-unknown') return `${winner} coûte${where} le moins${turns} ; le coût de l’habituelle n’est pas connu.`;
    const at = quantity === undefined ? '' : ` pour un tirage de ${whole(quantity, format)}`;
    const saving = format.percent(verdict.share);
    if (inMoney) return `${winner} économise ${saving} (${format.money(verdict.perThousand, facts.currency)} le mille)${at} face à l’habituelle ${named(verdict.usual, format)}, et coûte${where} le moins${turns}.`;
    return `${winner} prend${at}, gâche ${at === '' ? 'non comprise' : 'comprise'}, ${saving} de carton en moins que l’habituelle ${named(verdict.usual, format)}${where === '' ? '' : `, et${where} le moins de toutes`}${turns}.`;
  },
  brief: (facts, format) => {
    const verdict = verdictOf(facts);
    const { quantity } = verdict;
    const { where, turns } = placeOf(verdict, format);
    const inMoney = facts.measure === 'money';
    if (verdict.kind === 'usual') return `L’habituelle ${inMoney ? 'coûte' : 'prend'}${where} le moins${inMoney ? '' : ' de carton'}.`;
    if (verdict.kind !== 'saves') return frenchCompare.sentence(facts, format);
    const sheet = { die: 'La forme existante', larger: 'La feuille plus grande', smaller: 'La feuille plus petite', turned: 'La feuille à l’autre sens de fibres', other: 'L’autre feuille' }[relationOf(verdict.winner, verdict.usual)];
    const at = quantity === undefined ? '' : ` pour un tirage de ${whole(quantity, format)}`;
    return `${sheet} économise ${format.percent(verdict.share)} ${inMoney ? 'du coût' : 'de carton'}${at}${where === '' || turns !== '' ? '' : ` ; devant${where}`}.`;
  },
  headings: {
    winners: 'Quelle feuille, à partir de quel tirage', costs: 'Le coût du mille', sheets: 'Toutes les feuilles', pictures: 'Les feuilles à la même échelle', board: 'Carton pour mille étuis', missing: 'Tarifs manquants', assumed: 'Ce qui a été supposé', caution: 'Avant de commander le carton',
  },
  winner: (facts, index, format) => {
    const { candidate, turns = [candidate] } = facts.winners[index]!;
    const each = turns.map((one) => facts.sheets[one]!).map((sheet) => `${size(sheet, format)} ${format.unit}, ${poses(sheet.ups)}${die(sheet)}, ${frenchCompare.origin(sheet, format)}`);
    return { label: frenchQuantities(facts.winners, index, format), value: turns.length > 1 ? `tour à tour, feuille par feuille : ${each.join(' ; ')}` : each[0]! };
  },
  origin: ({ origin, die: standing }, format) => {
    if (standing) return `forme ${standing.number ?? 'existante'}`;
    switch (origin.kind) {
      case 'parent':
        return `${format.bareLength(origin.parent.width)} × ${format.bareLength(origin.parent.height)} en ${origin.parts}`;
      case 'reel':
        return `bobine ${format.bareLength(origin.width)}`;
      case 'made-to-order':
        return 'sur mesure';
      case 'stock':
        return 'du stock';
    }
  },
  searched: { 'few-rows': 'quelques rangées seulement', rows: 'rangées seulement', patterns: 'coup d’œil', full: 'fouillée', die: 'comme sur la forme' },
  limitReached: 'limite atteinte',
  madeFrom: (cartons, format) => `dès ${whole(cartons, format)}`,
  head: { sheet: ({ unit }) => `feuille, ${unit}`, origin: 'achetée comme', ups: 'poses', limit: 'limite', board: ({ boardUnit }) => `${boardUnit.name}/1000`, toOrder: ({ unit }) => `au moins, ${unit}`, search: 'recherche', quantity: (quantity, format) => `à ${whole(quantity, format)}` },
  costUnit: (currency) => `${currency} le mille`,
  limit: (bound) => `≤ ${bound}`,
  open: 'ouvert',
  notMade: '–',
  usual: 'habituelle',
  tooTight: (sheet, { toleranceMm }, format) => `La feuille ${named(sheet, format)} n’a pas de place pour des feuilles plus courtes de ${format.length(toleranceMm)} : exigez le format plein du marchand, ou prévoyez des marges plus larges.`,
  missing: (name) => `${figure(name)} : non donné ; les coûts qui en dépendent restent ouverts.`,
  skipped: (count) => (count === 1 ? '1 feuille ne porte aucune pose et a été écartée.' : `${count} feuilles ne portent aucune pose et ont été écartées.`),
  looks: 'Recherche : à « limite atteinte », il n’en tient pas plus ; l’habituelle et la meilleure sont « fouillées » comme le fait nest ; pour les autres, seuls des motifs réguliers ont été essayés plus vite : il peut en tenir davantage.',
  route: ({ route, wasteTable, notes }) => {
    const assumed = routeWord(notes, ' (supposé)');
    const stages = route.stages.length === 0 ? 'sans autre étape' : route.stages.map((stage) => FRENCH_STAGES[stage][1]).join(', ');
    return `Compté avec ${frenchCounted(route.colours, 'couleur')}${assumed('colours')}, ${frenchCounted(route.varnishUnits, 'groupe vernis', 'groupes vernis')}, ${stages}${assumed('stages')} ; gâche : ${figure(wasteTable)}.`;
  },
  rates: ({ ratesName }) => (ratesName === undefined ? undefined : `Tarifs : ${figure(ratesName)}.`),
  breakEven: 'On achète des feuilles entières : près du seuil, des formats se relaient : à quelques étuis près, c’est l’un ou l’autre qui coûte le moins. Hors de ces plages, celui qui est nommé coûte le moins à chaque tirage.',
  leastToOrder: ({ toleranceMm }, format) =>
    toleranceMm > 0 ? `« Au moins » est ce que demande l’implantation trouvée, avec ${format.length(toleranceMm)} pour des feuilles livrées trop petites.` : '« Au moins » est ce que demande l’implantation trouvée ; aucune tolérance des feuilles n’était donnée.',
  chart: {
    cost: (currency) => `${currency} le mille`, costTitle: 'Coût du mille selon le tirage', against: 'face à la feuille habituelle', cartons: 'tirage', board: ({ boardUnit }) => `${boardUnit.name} de carton pour mille étuis, sans gâche`, leastBoard: 'le moins de carton', boardTitle: 'Carton du mille par feuille', pictures: 'Les feuilles à la même échelle',
  },
  thumbnail: (sheet, format) => [size(sheet, format), `${poses(sheet.ups)}, ${format.board(sheet.boardM2PerThousand, 2)}/1000`],
  caution: 'Chiffres prévisionnels. Prix, tolérances et ce que fabrique la cartonnerie sont confirmés par le marchand, marges et filets par les manuels des machines et le fabricant de formes, avant de commander du carton ou une forme.',
};

/** Là où elle coûte le moins ; là où elle se relaie avec d’autres, seul le tirage lui-même, et avec lesquelles. */
function placeOf({ quantity, range }: Verdict, format: Format): { where: string; turns: string } {
  if (!range || range.turns.length === 0) return { where: rangeText(range, format), turns: '' };
  const others = range.turns.map((sheet) => `la feuille ${named(sheet, format)}`).join(' et ');
  return { where: ` pour un tirage de ${whole(quantity!, format)}`, turns: ` ;${rangeText(range, format)} elle se relaie, feuille par feuille, avec ${others}` };
}

/** ` pour des tirages de 14 000 à 50 000`. */
function rangeText(range: Verdict['range'], format: Format): string {
  if (range === undefined) return '';
  const { from, to } = range;
  if (from === 0) return to === undefined ? ' à tout tirage' : ` jusqu’à un tirage de ${whole(to, format)}`;
  return to === undefined ? ` à partir d’un tirage de ${whole(from, format)}` : ` pour des tirages de ${whole(from, format)} à ${whole(to, format)}`;
}
