import type { Sequence } from '../../estimate/die-rows.ts';
import { isTumbled } from '../../layout/back-up.ts';
import type { Format } from '../format.ts';
import type { HandoverWords } from './english-handover.ts';
import { germanPicture } from './german-picture.ts';
import { germanReport } from './german-report.ts';
import { germanStripping } from './german-stripping.ts';

/** Deviations listed before the rest is only counted. */
const LISTED = 8;

function sequence(lifts: Sequence, format: Format): string {
  if (lifts.kind === 'same') return format.length(lifts.value);
  if (lifts.kind === 'turns') return `${format.bareLength(lifts.values[0])} und ${format.length(lifts.values[1])} im Wechsel`;
  return `${lifts.values.map(format.bareLength).join('; ')} mm`;
}

const SIDES: Readonly<Record<string, string>> = { left: 'linken', right: 'rechten', upper: 'oberen', lower: 'unteren' };

export const germanHandover: HandoverWords = {
  gripperEdge: germanPicture.gripperEdge,
  lay: germanPicture.sideLay,
  lays: { left: 'links', right: 'rechts' },
  figures: {
    'crease rule height': 'Höhe der Rilllinie', 'channel width, fibres along the crease': 'Kanalbreite, Fasern längs der Rillung', 'channel width, fibres across the crease': 'Kanalbreite, Fasern quer zur Rillung', 'cutting force': 'Stanzkraft',
  },
  keepOut: (kind) => germanPicture.keepOuts[kind] ?? kind,
  role: (role) => germanPicture.roles[role] ?? role,
  sides: {
    printed: { title: 'DRUCKSEITE', meaning: 'gesehen, wie der Bogen bedruckt wird; nicht die Seite, auf der die Linien stehen' },
    rule: { title: 'LINIENSEITE', meaning: 'spiegelbildlich: die Linien zeigen zum Betrachter' },
  },
  notice: ({ layoutNumber, revision, fingerprint, layout }, format) =>
    [`Standbogen ${layoutNumber ?? fingerprint.slice(0, 12)}`, ...(revision ? [`Stanzriss ${revision}`] : []), `${layout.placements.length} Nutzen auf ${format.size(layout.sheet.width, layout.sheet.height)}`].join('  ·  '),
  notGiven: '____________ (nicht angegeben)',
  labels: {
    layout: 'Nummer des Standbogens', fingerprint: 'Fingerabdruck des Inhalts', revision: 'Ausgabe des Stanzrisses', approvedBy: 'freigegeben von', date: 'Datum', sheet: 'Bogen', lay: 'Seitenanlage', centre: 'Bogenmitte', board: 'Karton',
    gap: 'Messer zu Messer, mindestens', bleed: 'Beschnitt', nicks: 'Haltepunkte', stepX: 'üblicher Schritt in einer Reihe (X)', stepY: 'üblicher Schritt in einer Spalte (Y)', otherX: 'andere Schritte X', otherY: 'andere Schritte Y',
    creaseAlong: 'Rillungen längs der Fasern', creaseAcross: 'Rillungen quer zu den Fasern', quantity: 'Auflage', sheets: 'zu drucken, Bogen', back: 'Rückseite', food: 'Lebensmittel-Vermerk', ups: 'Nutzen', gripper: 'Greiferrand', grain: 'Laufrichtung', station: 'Nutzen', blank: 'Zuschnitt',
  },
  headings: {
    who: 'Welcher Standbogen', sheet: 'Der Bogen', rules: 'Linien in der Form', stations: 'Linien je Nutzen', steps: 'Schritte', creases: 'Rillungen und Kanäle', force: 'Stanzkraft', views: 'Die zwei Ansichten', job: 'Der Auftrag', caution: 'Bevor es verwendet wird', checks: 'Am ersten Bogen prüfen',
  },
  titles: { die: 'Bestellung der Stanzform', crew: 'Laufzettel', customer: 'Für den Kunden' },
  dieAnswer: ({ layout, cuttingMm, ruleMm }, format) => `Stanzform für ${layout.placements.length} Nutzen auf ${format.size(layout.sheet.width, layout.sheet.height)}: ${metres(ruleMm.reduce((sum, [, mm]) => sum + mm, 0), format)} Linie, davon ${metres(cuttingMm, format)} Messer.`,
  crewAnswer: ({ layout, sheets }, format) => `${layout.placements.length} Nutzen auf ${format.size(layout.sheet.width, layout.sheet.height)}${sheets === undefined ? '' : `, ${format.number(sheets, 0)} Bogen`}; Seitenanlage ${layout.lay === 'left' ? 'links' : 'rechts'}.`,
  customerAnswer: ({ layout, product, designs }, format) => `${product ?? designs.map(({ id }) => id).join(', ')}: ${layout.placements.length} Nutzen auf einem Bogen von ${format.size(layout.sheet.width, layout.sheet.height)}.`,
  designLine: ({ ups, widthMm, heightMm }, format) => `${ups} Nutzen, Zuschnitt ${format.size(widthMm, heightMm)}`,
  centreLine: ({ layout }, format) => `${format.length(layout.sheet.width / 2)} von jeder Seitenkante`,
  rows: ({ along, rows, lifts, stagger, step }, format) => {
    const [row, many] = along === 'x' ? ['Reihe', 'Reihen'] : ['Spalte', 'Spalten'];
    if (rows.length > 1 && rows.every(({ count }) => count === 1)) return 'Keine zwei Nutzen stehen in einer Flucht; placements.csv nennt jeden Ort.';
    const counts = rows.map(({ count }) => count);
    const alike = counts.every((count) => count === counts[0]);
    const head = rows.length === 1 ? `Eine ${row} zu ${counts[0]}` : alike ? `${rows.length} ${many} zu ${counts[0]}` : `${rows.length} ${many}, zu ${counts.join(', ')}`;
    const stepped = Math.max(...counts) === 1 ? '' : step === undefined ? `, verschiedene Schritte in den ${many}` : `, Schritt ${format.length(step)}`;
    if (!lifts) return `${head}${stepped}.`;
    const by = (mm: number) => `${format.length(Math.abs(mm))} ${along === 'x' ? (mm > 0 ? 'nach rechts' : 'nach links') : mm > 0 ? 'zum Bogenende' : 'zum Greifer'}`;
    const shifts = { none: () => 'nicht versetzt', second: (mm: number) => `jede zweite ${row} um ${by(mm)} versetzt`, each: (mm: number) => `jede ${row} um ${by(mm)} gegen die vorige versetzt` };
    const shift = stagger.kind === 'listed' ? `${many} gegen die erste versetzt: ${stagger.mm.slice(1).map((mm) => (mm === 0 ? 'gar nicht' : by(mm))).join('; ')}` : stagger.kind === 'none' ? shifts.none() : shifts[stagger.kind](stagger.mm);
    return `${head}${stepped}; ${sequence(lifts, format)} von ${row} zu ${row}; ${shift}.`;
  },
  usualStep: ({ usual, count }, format) => (usual === undefined ? 'keine zwei Nutzen in einer Flucht' : `${format.length(usual)}, ${count}-mal`),
  deviations: ({ usual, deviations }, format) => {
    if (usual === undefined || deviations.length === 0) return 'keine';
    const named = deviations.slice(0, LISTED).map(({ stations: [a, b], mm }) => `${a + 1} zu ${b + 1}: ${format.length(mm)} (${mm > usual ? '+' : ''}${format.bareLength(mm - usual)})`);
    return named.join('; ') + (deviations.length > LISTED ? `; und ${deviations.length - LISTED} weitere, siehe placements.csv` : '');
  },
  nicks: ({ count, widthMm, clearOf }) => `${count} an jedem Nutzen, ${widthMm} mm breit${clearOf.length > 0 ? `, keine an der ${clearOf.map((side) => SIDES[side] ?? side).join(' und ')} Kante der Zeichnung` : ''}; Ebene Nicks`,
  back: {
    sheetwise: 'Schön- und Widerdruck mit zwei Formen: gleiche Greiferkante, die Seitenanlage wechselt, zweiter Plattensatz',
    'work-and-turn': 'zum Umschlagen: gleiche Greiferkante, die Seitenanlage wechselt, dieselben Platten',
    'work-and-tumble': 'zum Umstülpen: das Bogenende wird Greiferkante, dieselben Platten',
    perfecting: 'Schön- und Widerdruck in einem Gang: das Bogenende wird in der Maschine Greiferkante',
  },
  backSide: 'RÜCKSEITE',
  backGripper: (style) => (isTumbled(style) ? 'Greiferkante der Rückseite (Bogenende der Vorderseite)' : 'Greiferkante (dieselbe wie vorn)'),
  views: 'die-printed-side.dxf zeigt den Bogen, wie er bedruckt wird; die-rule-side.dxf ist das Spiegelbild, die Linien zeigen zum Betrachter. Jede trägt ihren Namen in Buchstaben neben dem Bogen. Kreisbogen sind Kreisbogen, andere Kurven Sehnen auf 0,005 mm.',
  merged: 'Linien, die aufeinander liegen, sind eine Linie; eine Linie, die sich zwei Nutzen teilen, zählt beim ersten.',
  confirm: 'Ausgangswerte: Messer 23,8 mm, Linie 0,71 mm (2 pt), 70 N je Millimeter Messer ohne den Gummi. Der Stanzformenbauer bestätigt sie.',
  byHand: 'Nutzenzahl, Greiferkante, Seitenanlage und Nummern am Bogen in der Hand; Stand von Messer zu Druck an vier Ecken; Rillungen nicht gebrochen; Nutzen halten an ihren Haltepunkten.',
  stripping: germanStripping,
  coating: { title: 'LACKFORM', coated: 'lackiert', free: 'ausgespart', heading: 'Lackform', stationFree: (areas, area) => (areas === 0 ? 'nichts ausgespart' : `${areas} ${areas === 1 ? 'Fläche' : 'Flächen'}, ${area}`) },
  caution: germanReport.caution,
  crewCaution:
    'Druckmaschinen, Schneidemaschinen und Stanzen sind gefährlich: nur ausgebildete Leute arbeiten daran, nach den örtlichen Vorschriften, mit geschlossenen Schutzvorrichtungen und gegen Einschalten gesichert, wenn im Inneren gearbeitet wird. Greiferrand und Abstände richten sich nach der Anleitung der Maschine. Bei Lebensmittelpackungen gelten Farben, Lacke und Karton, die die verantwortliche Person gewählt hat.',
  customerCaution: 'Ein Bild des Standbogens, kein Farbproof. Bei Lebensmittelpackungen wählt die verantwortliche Person Farben, Lacke und Karton nach dem geltenden Recht.',
};

function metres(mm: number, format: Format): string {
  return `${format.number(mm / 1000, 2, true)} m`;
}
