import type { Role } from '../../dieline/dieline.ts';
import type { DieRows, Sequence } from '../../estimate/die-rows.ts';
import type { DieSteps } from '../../estimate/die-steps.ts';
import { isTumbled, WORK_STYLES, type WorkStyle } from '../../layout/back-up.ts';
import type { Format } from '../format.ts';
import type { HandoverFacts } from '../handover-facts.ts';
import type { Nicks } from '../nicks.ts';
import { englishPicture } from './english-picture.ts';
import { englishReport } from './english-report.ts';
import { englishStripping, type StrippingWords } from './english-stripping.ts';
import type { MessageTable } from './catalogue.ts';

/** Why a handover is not written. */
export const handoverMessages: MessageTable = {
  'handover-faulty': '{where}: the layout is faulty ({faults} faults), so nothing is handed over. `judge` lists them; mend the layout first.',
  'handover-unknown-rules': 'Design {design}: what {lines} of its lines are ({metres} m on the sheet) is not known, and a die must not be made from a guess. Say it when the drawing is read, such as --role Creasing=stroke:#0000ff, and lay out again.',
  'handover-drawing-changed': '{where}: this is not the drawing that the layout was made from (its fingerprint is {found}). Lay out again from the drawing as it is now, or give the old drawing.',
  'handover-no-fingerprint': '{where}: the layout keeps no fingerprint of its drawing, so it cannot be compared. Lay out again from the drawing.',
  'handover-folder-taken': '{where}: this is a file, or a folder that holds something already. Name a folder that does not stand yet.',
};

/** Artwork on the stations; sizes are in the blank's own axes. */
export const artworkMessages: MessageTable = {
  'artwork-kind': '{where}: artwork is placed from PDF and SVG. Save it as one of them, colours and text as they are.',
  'artwork-cut-off': '{where}: the file ends too early, part of it is missing. Save or copy it again.',
  'artwork-without-size': '{where}: the drawing says no size. Give its outermost element a width and a height in mm, or a view box.',
  'artwork-image-outside': '{where}: the image lies outside the file ({link}), and nothing outside is fetched. Embed it in the SVG as PNG or JPEG.',
  'artwork-image-kind': '{where}: an image of the kind {kind} cannot be kept as it is. Embed it as PNG or JPEG, drawings as paths.',
  'artwork-image-broken': '{where}: the {kind} image cannot be read. Embed it again.',
  'artwork-part-not-kept': '{where} cannot be kept as it is and is left out; what carries it is drawn without. Turn it into plain paths and fills.',
  'artwork-font-not-in-svg': '{where}: an SVG does not hold its fonts. The text "{text}" asks for {font} and stands in a plain font instead. Turn texts into outlines.',
  'artwork-rgb': '{where}: {count} of its colours are RGB and will change when they are made into inks. Write device-cmyk(…) or icc-color(…), name inks by data-ink="…", or say which colour is which ink: --ink "Name=#rrggbb".',
  'artwork-steps-left-out': '{where}: {count} {count|line or area named as a processing step|lines and areas named as processing steps} ({steps}) {count|is|are} left out of the print.',
  'artwork-for-no-design': '{where}: no station prints {design}. Stations print: {designs}. Write --artwork name=file.pdf.',
  'artwork-twice': '{where}: {design} has artwork already. Name what each file is for: --artwork name=file.pdf.',
  'artwork-size': '{where}: the page ({foundWidthMm} × {foundHeightMm} mm) is neither the blank ({widthMm} × {heightMm} mm) nor the blank with the same bleed all round, and it holds no die line of that size. Give the place of its lower left corner with --artwork-at.',
  'artwork-turned': '{where}: the page ({foundWidthMm} × {foundHeightMm} mm) lies across the blank ({widthMm} × {heightMm} mm). Turn it by a quarter in the artwork program.',
  'artwork-other-die-line': '{where}: the die line in the artwork is {foundWidthMm} × {foundHeightMm} mm, that of the layout {widthMm} × {heightMm} mm. The artwork was made for another die line.',
  'artwork-bleed-missing': '{where}: on the {edge} edge, over {lengthMm} mm from ({fromX:mm}, {fromY:mm}) to ({toX:mm}, {toY:mm}) of the blank, {missingMm} mm of the {bleedMm} mm bleed are missing. Draw the print on to there.',
  'artwork-text-near-knife': '{where}: the text "{text}" at ({x:mm}, {y:mm}) of the blank stands {mm} mm from a knife; {leastMm} mm is the least that print and cut hold.',
  'artwork-unread-text-near-knife': '{where}: a text at ({x:mm}, {y:mm}) of the blank stands {mm} mm from a knife; {leastMm} mm is the least that print and cut hold.',
  'artwork-area-near-knife': '{where}: what is printed at ({x:mm}, {y:mm}) of the blank ends {mm} mm from a knife. Keep it {leastMm} mm away, or draw it on through the bleed.',
  'artwork-font-missing': '{where}: the font {font} is not in the file. The text is kept as it is, and another program may set it in another font. Embed the font or turn texts into outlines.',
  'bar-code-of-no-design': '{where}: the layout has no design "{design}". It has: {designs}. Write name=x,y,width,height.',
  'bar-code-outside': '{where}: the box lies outside of {design} ({widthMm} × {heightMm} mm). Give x, y of its lower left corner and its size, in mm of the blank.',
  'bar-code-along': 'Bar code of {design} at ({x:mm}, {y:mm}), {widthMm} × {heightMm} mm: its bars run with the press on stations {stations} (direction {by}).',
  'bar-code-across': 'Bar code of {design} at ({x:mm}, {y:mm}), {widthMm} × {heightMm} mm: its bars lie across the press direction on stations {stations}, where slur and stretched plates make them thicker (direction {by}). Turn the code in the artwork by a quarter, or lay out with other rotations.',
  'bar-code-turned': 'Bar code of {design} at ({x:mm}, {y:mm}), {widthMm} × {heightMm} mm: the stations turn it by quarters. Its bars run with the press on stations {along} and across it on stations {across}, so the two print differently (direction {by}). Lay out with rotations 0 and 180 only.',
  'artwork-holds-die-line': '{where} holds the die line. Layers of it that say so are switched off; a spot colour of it is left out by the plate room.',
  'artwork-not-looked-at': '{where} holds more than is read of a drawing: bleed and texts were checked by the page alone.',
  'artwork-missing': '{design} is laid out but has no artwork; its stations stay empty.',
  'mark-without-room-register': 'Register marks: the {side} has no room for one on each side, clear of blanks, bleed and bar. Widen the side margins to 8 mm or more.',
  'mark-without-room-side-lay': 'Side lay mark: the {side} has no room of 2 × 8 mm for it at the edge of the lay.',
  'mark-without-room-centre-gripper': 'Centre mark at the gripper edge: the {side} has no room for it between the ink limit and the first bleed.',
  'mark-without-room-centre-tail': 'Centre mark at the tail: the {side} has no room for it between the last bleed and the ink limit.',
  'mark-without-room-print-to-cut': 'Print-to-cut marks: no straight knife of the {side} has room in the waste beyond its bleed.',
  'mark-without-room-sheet-id': 'Sheet id: the {side} has no room for its letters in the waste.',
  'gang-no-such-form': '{where}: there is no form {number}; the plan has {count}. Choose one with --form.',
  'gang-other-stations': '{where}: form {number} prints {wanted} blanks, the layout has {found} stations. Lay out as many as the plan has stations.',
  'artwork-back-without-style': '--artwork-back: how the back is printed is not said. Give --back.',
  'second-gripper-narrow': 'The tail of the front is gripped while the back is printed, but only {foundMm} mm of it stay free of ink; the gripper edge keeps {wantedMm:mm}. Lay out with --ink-tail {wantedMm:mm}, and --tail to match.',
  'coating-without-free': 'Design {design} names no glue, code or varnish-free area: all of it is coated. If a flap is glued, name its area Gluing in the drawing.',
  'back-not-on-stations': '--back {style}: the same plate prints both sides, but the backs of {count} stations ({stations}) lie on no front. Lay out symmetrically, or print sheetwise.',
};

/** From where a die is seen: the sheet's printed side, or the side the rules stand on, its mirror image. */
export type DieSide = 'printed' | 'rule';

/** Words of the pages and files of a handover. Sentences are functions: languages differ in more than words. */
export interface HandoverWords {
  readonly gripperEdge: string;
  readonly lay: string;
  readonly lays: Readonly<Record<'left' | 'right', string>>;
  /** Names of the die maker's figures, by `Figure.name`; a figure without a word is shown under its own name. */
  readonly figures: Readonly<Record<string, string>>;
  readonly keepOut: (kind: string) => string;
  readonly role: (role: Role) => string;
  readonly sides: Readonly<Record<DieSide, { readonly title: string; readonly meaning: string }>>;
  /** One line that names the layout on every file. */
  readonly notice: (facts: HandoverFacts, format: Format) => string;
  readonly notGiven: string;
  readonly labels: Readonly<Record<HandoverLabel, string>>;
  readonly headings: Readonly<Record<HandoverHeading, string>>;
  readonly titles: Readonly<Record<'die' | 'crew' | 'customer', string>>;
  readonly dieAnswer: (facts: HandoverFacts, format: Format) => string;
  readonly crewAnswer: (facts: HandoverFacts, format: Format) => string;
  readonly customerAnswer: (facts: HandoverFacts, format: Format) => string;
  readonly designLine: (design: HandoverFacts['designs'][number], format: Format) => string;
  readonly centreLine: (facts: HandoverFacts, format: Format) => string;
  /** Rows or columns, their step, distance and stagger, in a sentence. */
  readonly rows: (rows: DieRows, format: Format) => string;
  readonly usualStep: (steps: DieSteps, format: Format) => string;
  readonly deviations: (steps: DieSteps, format: Format) => string;
  readonly nicks: (nicks: Nicks) => string;
  readonly back: Readonly<Record<WorkStyle, string>>;
  /** Name of the side, on its files. */
  readonly backSide: string;
  /** The edge that is gripped while the back is printed. */
  readonly backGripper: (style: WorkStyle) => string;
  readonly views: string;
  readonly merged: string;
  readonly confirm: string;
  readonly byHand: string;
  readonly stripping: StrippingWords;
  /** Names of the coating form and its figures. */
  readonly coating: { readonly title: string; readonly coated: string; readonly free: string; readonly stationFree: (areas: number, area: string) => string; readonly heading: string };
  readonly caution: typeof englishReport.caution;
  readonly crewCaution: string;
  readonly customerCaution: string;
}

export type HandoverLabel =
  | 'layout' | 'fingerprint' | 'revision' | 'approvedBy' | 'date' | 'sheet' | 'lay' | 'centre' | 'board' | 'gap' | 'bleed' | 'nicks' | 'stepX' | 'stepY' | 'otherX' | 'otherY'
  | 'creaseAlong' | 'creaseAcross' | 'quantity' | 'sheets' | 'back' | 'food' | 'ups' | 'gripper' | 'grain' | 'station' | 'blank';
export type HandoverHeading = 'who' | 'sheet' | 'rules' | 'stations' | 'steps' | 'creases' | 'force' | 'views' | 'job' | 'caution' | 'checks';

/** Deviations listed before the rest is only counted. */
const LISTED = 8;

function sequence(lifts: Sequence, format: Format): string {
  if (lifts.kind === 'same') return format.length(lifts.value);
  if (lifts.kind === 'turns') return `${format.bareLength(lifts.values[0])} and ${format.length(lifts.values[1])} by turns`;
  return `${lifts.values.map(format.bareLength).join(', ')} mm`;
}

export const englishHandover: HandoverWords = {
  gripperEdge: englishPicture.gripperEdge,
  lay: englishPicture.sideLay,
  lays: { left: 'left', right: 'right' },
  figures: {},
  keepOut: (kind) => englishPicture.keepOuts[kind] ?? kind,
  role: (role) => englishPicture.roles[role] ?? role,
  sides: {
    printed: { title: 'PRINTED SIDE', meaning: 'seen as the sheet is printed; not the side the rules stand on' },
    rule: { title: 'RULE SIDE', meaning: 'mirror image: seen with the rules pointing at you' },
  },
  notice: ({ layoutNumber, revision, fingerprint, layout }, format) =>
    [layoutNumber ? `layout ${layoutNumber}` : `layout ${fingerprint.slice(0, 12)}`, ...(revision ? [`dieline ${revision}`] : []), `${layout.placements.length} ups on ${format.size(layout.sheet.width, layout.sheet.height)}`].join('  ·  '),
  notGiven: '____________ (not given)',
  labels: {
    layout: 'layout number', fingerprint: 'content fingerprint', revision: 'dieline revision', approvedBy: 'approved by', date: 'date', sheet: 'sheet', lay: 'side lay', centre: 'sheet centre line', board: 'board',
    gap: 'knife to knife, at least', bleed: 'bleed', nicks: 'nicks', stepX: 'usual step within a row (X)', stepY: 'usual step within a column (Y)', otherX: 'other steps X', otherY: 'other steps Y',
    creaseAlong: 'creases along the fibres', creaseAcross: 'creases across the fibres', quantity: 'quantity', sheets: 'sheets to print', back: 'second side', food: 'food record', ups: 'ups', gripper: 'gripper margin', grain: 'grain', station: 'station', blank: 'blank',
  },
  headings: { who: 'Which layout', sheet: 'The sheet', rules: 'Rules in the form', stations: 'Rules per station', steps: 'Steps', creases: 'Creases and channels', force: 'Cutting force', views: 'The two views', job: 'The job', caution: 'Before it is used', checks: 'Check with the first sheet' },
  titles: { die: 'Die order', crew: 'Crew ticket', customer: 'For the customer' },
  dieAnswer: ({ layout, cuttingMm, ruleMm }, format) => {
    const all = ruleMm.reduce((sum, [, mm]) => sum + mm, 0);
    return `Die for ${layout.placements.length} ups on ${format.size(layout.sheet.width, layout.sheet.height)}: ${metres(all, format)} of rule, ${metres(cuttingMm, format)} of it knife.`;
  },
  crewAnswer: ({ layout, sheets }, format) => `${layout.placements.length} ups on ${format.size(layout.sheet.width, layout.sheet.height)}${sheets === undefined ? '' : `, ${format.number(sheets, 0)} sheets`}; side lay ${layout.lay}.`,
  customerAnswer: ({ layout, product, designs }, format) => `${product ?? designs.map(({ id }) => id).join(', ')}: ${layout.placements.length} at a time on a sheet of ${format.size(layout.sheet.width, layout.sheet.height)}.`,
  designLine: ({ ups, widthMm, heightMm }, format) => `${ups} ups, blank ${format.size(widthMm, heightMm)}`,
  centreLine: ({ layout }, format) => `${format.length(layout.sheet.width / 2)} from either side edge`,
  rows: ({ along, rows, lifts, stagger, step }, format) => {
    const [row, many] = along === 'x' ? ['row', 'rows'] : ['column', 'columns'];
    if (rows.length > 1 && rows.every(({ count }) => count === 1)) return 'No two blanks stand in line; placements.csv holds every place.';
    const counts = rows.map(({ count }) => count);
    const alike = counts.every((count) => count === counts[0]);
    const head = rows.length === 1 ? `One ${row} of ${counts[0]}` : alike ? `${rows.length} ${many} of ${counts[0]}` : `${rows.length} ${many}, of ${counts.join(', ')}`;
    const stepped = Math.max(...counts) === 1 ? '' : step === undefined ? `, steps differ within the ${many}` : `, step ${format.length(step)}`;
    if (!lifts) return `${head}${stepped}.`;
    const by = (mm: number) => `${format.length(Math.abs(mm))} ${along === 'x' ? (mm > 0 ? 'to the right' : 'to the left') : mm > 0 ? 'to the tail' : 'to the gripper'}`;
    const shifts = { none: () => 'none shifted', second: (mm: number) => `every second ${row} shifted ${by(mm)}`, each: (mm: number) => `each ${row} shifted ${by(mm)} against the one before` };
    const shift = stagger.kind === 'listed' ? `${many} shifted against the first ${stagger.mm.slice(1).map((mm) => (mm === 0 ? 'not at all' : by(mm))).join(', ')}` : stagger.kind === 'none' ? shifts.none() : shifts[stagger.kind](stagger.mm);
    return `${head}${stepped}; ${sequence(lifts, format)} from ${row} to ${row}; ${shift}.`;
  },
  usualStep: ({ usual, count }, format) => (usual === undefined ? 'no two blanks in line' : `${format.length(usual)}, ${count} times`),
  deviations: ({ usual, deviations }, format) => {
    if (usual === undefined || deviations.length === 0) return 'none';
    const named = deviations.slice(0, LISTED).map(({ stations: [a, b], mm }) => `${a + 1} to ${b + 1}: ${format.length(mm)} (${mm > usual ? '+' : ''}${format.bareLength(mm - usual)})`);
    return named.join('; ') + (deviations.length > LISTED ? `; and ${deviations.length - LISTED} more, see placements.csv` : '');
  },
  nicks: ({ count, widthMm, clearOf }) => `${count} on every blank, ${widthMm} mm wide${clearOf.length > 0 ? `, none on the ${clearOf.join(' and ')} edge of the drawing` : ''}; layer Nicks`,
  back: {
    sheetwise: 'sheetwise: same gripper edge, the side lay swaps, a second set of plates',
    'work-and-turn': 'work-and-turn: same gripper edge, the side lay swaps, the same plates',
    'work-and-tumble': 'work-and-tumble: the tail becomes the gripper edge, the same plates',
    perfecting: 'perfecting: the tail becomes the gripper edge within the press',
  },
  backSide: 'BACK',
  backGripper: (style) => (isTumbled(style) ? 'gripper edge of the back (tail of the front)' : 'gripper edge (the same as of the front)'),
  views: 'die-printed-side.dxf shows the sheet as it is printed; die-rule-side.dxf is its mirror image, rules pointing at you. Each carries its name in letters beside the sheet. Arcs of circles are arcs; other curves are chords within 0.005 mm.',
  merged: 'Rules that run on one another are one rule; a rule that two stations share is counted with the first.',
  confirm: 'Starting values: knife 23.8 mm, rule 0.71 mm (2 pt), 400 lb of force an inch of knife without the rubber. The die maker confirms them.',
  byHand: 'Ups, gripper edge, side lay and station numbers against the sheet in hand; knife against print at the four corners; creases not cracked; blanks held by their nicks.',
  stripping: englishStripping,
  coating: {
    title: 'COATING', coated: 'coated', free: 'left free', heading: 'Coating form',
    stationFree: (areas, area) => (areas === 0 ? 'nothing is left free' : `${areas} ${areas === 1 ? 'area' : 'areas'}, ${area}`),
  },
  caution: englishReport.caution,
  crewCaution:
    'Presses, guillotines and die-cutters are dangerous: work on them is for trained people under local rules, with guards closed and power locked off for work inside. Gripper margins and clearances follow the machine’s own manual. For food packs the inks, varnishes and board are those that the responsible person has chosen.',
  customerCaution: 'A picture of how the job is laid out, not a colour proof. For food packs the responsible person chooses inks, varnishes and board under local law.',
};

function metres(mm: number, format: Format): string {
  return `${format.number(mm / 1000, 2, true)} m`;
}

export const WORK_STYLES_WANTED = `${WORK_STYLES.join(', ')} is wanted`;
