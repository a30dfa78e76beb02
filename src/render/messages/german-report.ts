import type { NestFacts } from '../nest-facts.ts';
import { germanCutting } from './german-cutting.ts';
import { sourceName } from './source-name.ts';
import type { ReportWords } from './words.ts';

const USE: Readonly<Record<NestFacts['product'], string>> = { carton: 'Schachtel', label: 'Etikett', blank: 'Zuschnitte' };
const USED: Readonly<Record<NestFacts['product'], string>> = { carton: 'werden Schachtel', label: 'werden Etikett', blank: 'werden genutzt' };

/** Pairs of stations named in a row before the rest is only counted. */
const NAMED_PAIRS = 4;

const SOURCES: Readonly<Record<string, string>> = {
  'plain rows': 'gerade Reihen', 'plain columns': 'gerade Spalten', 'nested rows': 'verzahnte Reihen', 'nested columns': 'verzahnte Spalten', 'shifted rows': 'versetzte Reihen', 'shifted columns': 'versetzte Spalten',
  'every second row turned': 'jede zweite Reihe gedreht', 'every second column turned': 'jede zweite Spalte gedreht', 'rows of different rotations': 'Reihen verschiedener Drehung', 'columns of different rotations': 'Spalten verschiedener Drehung',
  'head-to-tail rows': 'Kopf-an-Fuß-Reihen', 'head-to-tail columns': 'Kopf-an-Fuß-Spalten', 'mixed rows': 'gemischte Reihen', 'mixed columns': 'gemischte Spalten', 'blocks of rows and columns': 'Blöcke aus Reihen und Spalten',
  and: 'und', 'repeating pattern': 'wiederholtes Muster', 'blocks of turned rectangles': 'Blöcke gedrehter Rechtecke', 'free search': 'freie Suche', 'common knife': 'gemeinsames Messer',
};

export const germanReport: ReportWords = {
  title: ({ design, ups, sheet }, format) => `${design.name}: ${ups} Nutzen auf ${format.size(sheet.width, sheet.height)}`,
  answer: (facts, format) => {
    const size = format.size(facts.sheet.width, facts.sheet.height);
    const used = `${format.percent(facts.yield)} des Bogens ${USED[facts.product]}`;
    return facts.cutting ? germanCutting.answer(facts.ups, size, facts.cutting, used) : `${facts.ups} Nutzen auf ${size}; ${limitWords(facts)}; ${used}.`;
  },
  headings: {
    why: (ups) => `Warum ${ups}`, board: 'Wohin der Karton geht', bleed: 'Beschnitt, den jede Kante behält', assumed: 'Was angenommen wurde', caution: 'Bevor eine Stanzform bestellt wird', history: 'Wie die Suche verlief', picture: 'Der Bogen',
  },
  labels: {
    source: 'Standbogen gefunden durch', limit: 'Obergrenze', difference: 'Unterschied zur Obergrenze', stopped: 'warum die Suche endete', time: 'Zeit', gap: 'Abstand', bleed: 'Beschnitt', rotations: 'Drehungen', blank: 'Zuschnitt', yield: 'Ausnutzung',
    cell: 'dichtestes Muster', sheet: 'Bogen', seed: 'Startzahl', atMost: 'höchstens', design: 'Entwurf',
  },
  bounds: {
    area: { name: 'Fläche', meaning: 'nur aus der Fläche bekannt: jeder Zuschnitt nimmt mit seinem Teil des Abstands Karton, und mehr hat der Bogen nicht' },
    ovals: { name: 'Ovale', meaning: 'runde, ovale und andere bauchige Zuschnitte liegen nie dichter als in ihrem dichtesten Gitter, die Ränder des Bogens mitgerechnet' },
    hexagon: { name: 'Sechseck', meaning: 'jeder Zuschnitt nimmt wenigstens das kleinste Sechseck um ihn mit seinem Teil des Abstands, wie er auch gedreht ist' },
    pockets: { name: 'Taschen', meaning: 'jeder mögliche Platz eines Zuschnitts wurde in Taschen geordnet, die je einen Zuschnitt fassen; mehr als so viele Taschen lassen sich nicht füllen' },
    rectangles: { name: 'Rechtecke', meaning: 'jeder Zuschnitt enthält ein Rechteck, und mehr solche Rechtecke haben auf dem Bogen keinen Platz' },
  },
  noLimit: 'nicht bewiesen',
  stopped: {
    'limit-met': 'die Obergrenze ist erreicht: keine Anordnung fasst mehr', effort: 'der Aufwand ist verbraucht; mehr Aufwand kann mehr finden', seconds: 'die Zeit ist verbraucht; mehr Zeit kann mehr finden', interrupted: 'unterbrochen; die beste Anordnung bis dahin gilt',
  },
  sources: SOURCES,
  causes: (product) => ({
    blanks: USE[product], gripper: 'Greiferrand', tail: 'Rand am Bogenende', 'side-margins': 'Seitenränder', 'colour-bar': 'Kontrollstreifen', 'keep-outs': 'freigehaltene Flächen', gaps: 'Abstände der Messer', between: 'Abfall zwischen den Nutzen', edges: 'Abfall an den Rändern',
  }),
  difference: (ups, limit, format) => (limit === ups ? 'keiner: mehr ist nicht möglich' : `${limit - ups} Nutzen (${format.percent((limit - ups) / ups)}) offen`),
  gap: ({ gap, ruleSavedMm }, format) => `${format.length(gap)} von Messer zu Messer${ruleSavedMm === undefined ? '' : `, oder ein Messer für zwei Nutzen: ${format.length(ruleSavedMm)} Linie gespart`}`,
  bleed: ({ bleed, bleedMeeting }, format) => `${format.length(bleed)}${bleedMeeting === 'cut' ? ', in der Mitte des Abstands getrennt' : ''}`,
  facing: (pairs) => `zwischen den Nutzen ${pairs.slice(0, NAMED_PAIRS).map(([a, b]) => `${a} und ${b}`).join(', ')}${pairs.length > NAMED_PAIRS ? ` und ${pairs.length - NAMED_PAIRS} weiteren Paaren` : ''}`,
  otherEdges: 'alle anderen Kanten',
  improvement: ({ ups, source, work, seconds }, raised, format) => `${raised ? `${ups} Nutzen` : `${ups} Nutzen, besser angeordnet,`} durch ${sourceName(SOURCES, source)} nach ${seconds === undefined ? `${format.number(work, 0)} Schritten` : format.duration(seconds)}`,
  leastSheet: ({ ups, least, sheet, stepMm, impossibleBelowMm }, format) => {
    const steps = `in Schritten von ${format.length(stepMm)}`;
    if (least === 'area') return `Der kleinste gefundene Bogen für ${ups} Nutzen, beide Seiten ${steps}: ${format.size(sheet.width, sheet.height)}.`;
    const side = format.length(least === 'depth' ? sheet.height : sheet.width);
    const known = impossibleBelowMm === undefined ? '' : `; unter ${format.length(impossibleBelowMm)} sind sie bewiesen unmöglich`;
    return `Der ${least === 'depth' ? 'kürzeste' : 'schmalste'} gefundene Bogen für ${ups} Nutzen, ${steps}: ${side} ${least === 'depth' ? 'tief' : 'breit'}${known}.`;
  },
  axes: { ups: 'Nutzen', seconds: 'Sekunden', work: 'Rechenschritte' },
  caution:
    'Dies ist ein Plan. Messer, Abstände und Greiferrand werden mit der Anleitung der Maschine und dem Stanzformenbauer abgestimmt, bevor eine Form bestellt wird. An Druckmaschinen, Schneidemaschinen und Stanzen arbeiten ausgebildete Leute nach den örtlichen Vorschriften. ' +
    'Bei Lebensmittelpackungen wählt die verantwortliche Person Farben, Lacke und Karton nach dem geltenden Recht.',
};

function limitWords({ ups, limit }: NestFacts): string {
  if (!limit) return 'wie viele mehr passen könnten, ist nicht bewiesen';
  const { name } = germanReport.bounds[limit.by];
  if (limit.ups === ups) return `mehr passen nicht (${name})`;
  return limit.by === 'area' ? `höchstens ${limit.ups} passen, was nur aus der Fläche bekannt ist` : `höchstens ${limit.ups} passen (${name})`;
}
