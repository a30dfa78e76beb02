import type { ComparedSheetFacts } from '../compare-facts.ts';
import type { Format } from '../format.ts';
import { comparedSize as size, relationOf, routeWord, verdictOf, type Verdict } from './compare-figures.ts';
import type { CompareWords } from './english-compare.ts';
import { germanCounted } from './german-counted.ts';
import { figureName } from './figure-names.ts';
import { germanFigures } from './german-figures.ts';
import { germanQuantities } from './german-quote.ts';
import { GERMAN_STAGES } from './german-stages.ts';

const whole = (value: number, format: Format) => format.number(value, 0);
const die = ({ die: standing }: ComparedSheetFacts) => (standing ? ` auf der vorhandenen Stanzform${standing.number === undefined ? '' : ` (${standing.number})`}` : '');
const named = (sheet: ComparedSheetFacts, format: Format) => `Bogen ${size(sheet, format)} ${format.unit} mit ${sheet.ups} Nutzen${die(sheet)}`;
const figure = (name: string) => figureName(name, germanFigures, 'Faltschachteln');

export const germanCompare: CompareWords = {
  size,
  ups: (count) => `${count} Nutzen`,
  title: ({ name, sheets }) => `${name}: ${germanCounted(sheets.length, 'Bogen', 'Bogen')} verglichen`,
  sentence: (facts, format) => {
    const verdict = verdictOf(facts);
    const { quantity } = verdict;
    const inMoney = facts.measure === 'money';
    if (verdict.kind === 'none') return `Kein Bogen ist für eine Auflage von ${whole(quantity!, format)} zu haben.`;
    const winner = `Der ${named(verdict.winner, format)}`;
    const { where, turns } = placeOf(verdict, format);
    if (verdict.kind === 'only') return `${winner} ist der einzige verglichene.`;
    if (verdict.kind === 'usual') return `${winner}, der übliche, ${inMoney ? 'kostet' : 'braucht'}${where} am wenigsten${inMoney ? '' : ' Karton'} der ${facts.sheets.length} verglichenen${turns}.`;
    if (verdict.kind === 'usual-unknown') return `${winner} kostet${where} am wenigsten${turns}; was der übliche kostet, ist nicht bekannt.`;
    const at = quantity === undefined ? '' : ` bei einer Auflage von ${whole(quantity, format)}`;
    const saving = format.percent(verdict.share);
    if (inMoney) return `${winner} spart ${saving} (${format.money(verdict.perThousand, facts.currency)} je 1000)${at} gegen den üblichen ${named(verdict.usual, format)} und kostet${where} am wenigsten${turns}.`;
    return `${winner} braucht${at} ${at === '' ? 'ohne' : 'mit'} Zuschuss ${saving} weniger Karton als der übliche ${named(verdict.usual, format)}${where === '' ? '' : `, und${where} am wenigsten von allen`}${turns}.`;
  },
  brief: (facts, format) => {
    const verdict = verdictOf(facts);
    const { quantity } = verdict;
    const { where, turns } = placeOf(verdict, format);
    const inMoney = facts.measure === 'money';
    if (verdict.kind === 'usual') return `Der übliche Bogen ${inMoney ? 'kostet' : 'braucht'}${where} am wenigsten${inMoney ? '' : ' Karton'}.`;
    if (verdict.kind !== 'saves') return germanCompare.sentence(facts, format);
    const sheet = { die: 'Die vorhandene Stanzform', larger: 'Der größere Bogen', smaller: 'Der kleinere Bogen', turned: 'Der Bogen mit der anderen Laufrichtung', other: 'Der andere Bogen' }[relationOf(verdict.winner, verdict.usual)];
    const at = quantity === undefined ? '' : ` bei einer Auflage von ${whole(quantity, format)}`;
    return `${sheet} spart ${format.percent(verdict.share)} ${inMoney ? 'der Kosten' : 'Karton'}${at}${where === '' || turns !== '' ? '' : `; vorn${where}`}.`;
  },
  headings: {
    winners: 'Welcher Bogen, ab welcher Auflage', costs: 'Was tausend kosten', sheets: 'Alle Bogen', pictures: 'Die Bogen in einem Maßstab', board: 'Karton für tausend Faltschachteln', missing: 'Sätze, die fehlen', assumed: 'Was angenommen wurde', caution: 'Bevor Karton bestellt wird',
  },
  winner: (facts, index, format) => {
    const { candidate, turns = [candidate] } = facts.winners[index]!;
    const each = turns.map((one) => facts.sheets[one]!).map((sheet) => `${size(sheet, format)} ${format.unit}, ${sheet.ups} Nutzen${die(sheet)}, ${germanCompare.origin(sheet, format)}`);
    return { label: germanQuantities(facts.winners, index, format), value: turns.length > 1 ? `abwechselnd, Bogen um Bogen: ${each.join('; ')}` : each[0]! };
  },
  origin: ({ origin, die: standing }, format) => {
    if (standing) return standing.number === undefined ? 'vorhandene Stanzform' : `Stanzform ${standing.number}`;
    switch (origin.kind) {
      case 'parent':
        return `aus ${format.bareLength(origin.parent.width)} × ${format.bareLength(origin.parent.height)}, ${origin.parts} Teile`;
      case 'reel':
        return `Rolle ${format.bareLength(origin.width)}`;
      case 'made-to-order':
        return 'Anfertigung';
      case 'stock':
        return 'Lager';
    }
  },
  searched: { 'few-rows': 'nur wenige Reihen', rows: 'nur Reihen', patterns: 'kurzer Blick', full: 'durchsucht', die: 'wie auf der Form' },
  limitReached: 'Grenze erreicht',
  madeFrom: (cartons, format) => `ab ${whole(cartons, format)}`,
  head: { sheet: ({ unit }) => `Bogen, ${unit}`, origin: 'bezogen als', ups: 'Nutzen', limit: 'Obergrenze', board: ({ boardUnit }) => `${boardUnit.name}/1000`, toOrder: ({ unit }) => `mindestens, ${unit}`, search: 'Suche', quantity: (quantity, format) => `bei ${whole(quantity, format)}` },
  costUnit: (currency) => `${currency} je 1000`,
  limit: (bound) => `≤ ${bound}`,
  open: 'offen',
  notMade: '–',
  usual: 'üblich',
  tooTight: (sheet, { toleranceMm }, format) => `Der ${named(sheet, format)} hat keinen Platz für Bogen, die ${format.length(toleranceMm)} kürzer kommen: Verlangen Sie volles Maß vom Händler, oder planen Sie größere Ränder.`,
  missing: (name) => `${figure(name)}: nicht angegeben; die Kosten, die davon abhängen, bleiben offen.`,
  skipped: (count) => (count === 1 ? '1 Bogen fasst keinen Nutzen und ist weggelassen.' : `${count} Bogen fassen keinen Nutzen und sind weggelassen.`),
  looks: 'Suche: Bei „Grenze erreicht“ ist nicht mehr möglich; der übliche Bogen und der beste sind „durchsucht“, wie es nest tut; bei den anderen sind nur regelmäßige Muster kürzer versucht, dort kann mehr passen.',
  route: ({ route, wasteTable, notes }) => {
    const assumed = routeWord(notes, ' (angenommen)');
    const stages = route.stages.length === 0 ? 'keinen weiteren Arbeitsgängen' : route.stages.map((stage) => GERMAN_STAGES[stage]).join(', ');
    return `Gerechnet mit ${germanCounted(route.colours, 'Farbe', 'Farben')}${assumed('colours')}, ${germanCounted(route.varnishUnits, 'Lackwerk', 'Lackwerken')}, ${stages}${assumed('stages')}; Zuschuss: ${figure(wasteTable)}.`;
  },
  rates: ({ ratesName }) => (ratesName === undefined ? undefined : `Sätze: ${figure(ratesName)}.`),
  breakEven: 'Gekauft werden ganze Bogen, darum wechseln sich nahe der Grenzauflage Bogenformate ab: Wenige Stück mehr oder weniger, und ein anderes kostet am wenigsten. Außerhalb solcher Strecken kostet das genannte bei jeder Auflage am wenigsten.',
  leastToOrder: ({ toleranceMm }, format) =>
    toleranceMm > 0 ? `„Mindestens“ ist, was die gefundene Anordnung braucht, mit ${format.length(toleranceMm)} für Bogen, die zu klein kommen.` : '„Mindestens“ ist, was die gefundene Anordnung braucht; eine Toleranz der Bogen war nicht angegeben.',
  chart: {
    cost: (currency) => `${currency} je 1000`, costTitle: 'Kosten je tausend nach Auflage', against: 'gegen den üblichen Bogen', cartons: 'Auflage', board: ({ boardUnit }) => `${boardUnit.name} Karton je tausend Faltschachteln, ohne Zuschuss`, leastBoard: 'am wenigsten Karton', boardTitle: 'Karton je tausend nach Bogen', pictures: 'Die Bogen in einem Maßstab',
  },
  thumbnail: (sheet, format) => [size(sheet, format), `${sheet.ups} Nutzen, ${format.board(sheet.boardM2PerThousand, 2)}/1000`],
  caution: 'Planzahlen. Preise, Toleranzen und was die Kartonfabrik anfertigt, bestätigt der Händler; Ränder und Messer richten sich nach der Anleitung der Maschinen und dem Stanzformenbauer. Das alles, bevor Karton oder eine Stanzform bestellt wird.',
};

/** Wo er am wenigsten kostet; wo er sich mit anderen abwechselt, nur die Auflage selbst und mit wem. */
function placeOf({ quantity, range }: Verdict, format: Format): { where: string; turns: string } {
  if (!range || range.turns.length === 0) return { where: rangeText(range, format), turns: '' };
  const others = range.turns.map((sheet) => `dem ${named(sheet, format)}`).join(' und ');
  return { where: ` bei einer Auflage von ${whole(quantity!, format)}`, turns: `;${rangeText(range, format)} wechselt er sich Bogen um Bogen mit ${others} ab` };
}

/** ` bei Auflagen von 14 000 bis 50 000`. */
function rangeText(range: Verdict['range'], format: Format): string {
  if (range === undefined) return '';
  const { from, to } = range;
  if (from === 0) return to === undefined ? ' bei jeder Auflage' : ` bis zu einer Auflage von ${whole(to, format)}`;
  return to === undefined ? ` ab einer Auflage von ${whole(from, format)}` : ` bei Auflagen von ${whole(from, format)} bis ${whole(to, format)}`;
}
