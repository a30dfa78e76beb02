import { toMillimetres } from '../base/units.ts';
import type { Stripping, WastePiece } from '../estimate/stripping.ts';
import type { BrokenCondition } from '../estimate/stripping-conditions.ts';
import type { StrippingWish } from '../press/stripping.ts';
import type { StrippingFacts } from './nest-facts.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { boxOf, type Point, type Polygon } from '../geometry/point.ts';
import { polygonPaths } from './polygon-paths.ts';
import type { HandoverFacts } from './handover-facts.ts';
import type { Marks } from './marked-sheet.ts';
import type { HandoverLanguage } from './handover-pages.ts';
import type { Report } from './report.ts';
import { scaleFor } from './scale.ts';
import type { Look, SceneItem } from './scene.ts';
import { circle, drawn, label, rectangle } from './shapes.ts';

/** Rows of a table before the rest is only counted. */
const LISTED = 12;

/** The way of stripping that is known, and how the layout stands to it. */
export interface StrippingChoice {
  /** Absent: none is known, and `broken` is that of stripping tools. */
  readonly wish: Omit<StrippingWish, 'rule'> | undefined;
  readonly broken: readonly BrokenCondition[];
  /** What the search that made the layout said of others. */
  readonly price: StrippingFacts | undefined;
}

/** What comes off the sheet, and whether it comes off well: for whoever plans stripping and blanking. */
export function strippingReport(stripping: Stripping, choice: StrippingChoice, { layout, layoutNumber, fingerprint }: HandoverFacts, { locale, words: { stripping: words, caution, headings, labels }, format }: HandoverLanguage): Report {
  const { frame, pieces, slivers, longScrap, leastWidth } = stripping;
  const place = ({ x, y }: Point) => `${format.bareLength(toMillimetres(x))}, ${format.length(toMillimetres(y))}`;
  const width = (mm: number | undefined) => (mm === undefined ? words.atLeast(format.length(leastWidth)) : words.under(format.length(mm)));
  const islands = pieces.filter(({ island }) => island);
  const more = (all: readonly unknown[]) => (all.length > LISTED ? [words.more(all.length - LISTED)] : []);
  return {
    language: locale,
    title: words.title,
    answer: words.answer(stripping, format),
    caution: { heading: headings.caution, text: caution },
    sections: [
      { id: 'choice', heading: words.choice.heading, sentences: choiceSentences(), figures: [] },
      { id: 'modes', heading: words.modes, sentences: [...words.verdicts(stripping, format), ...slotSentences()], figures: [] },
      {
        id: 'frame', heading: words.frame, sentences: [],
        figures: (['gripper', 'tail', 'left', 'right'] as const).map((edge) => ({ label: words.edges[edge], value: format.length(frame[edge]) })),
      },
      {
        id: 'pieces', heading: words.pieces, sentences: more(pieces), figures: [],
        table: {
          head: [words.piece, words.place, words.area, words.width], wordColumns: 2,
          rows: pieces.slice(0, LISTED).map((piece, i) => [piece.island ? words.island(islands.indexOf(piece) + 1) : words.web(i + 1), pieceBox(piece, format.bareLength), format.area(piece.areaMm2), width(piece.narrowerThan)]),
        },
      },
      ...(slivers.length === 0 ? [] : [{
        id: 'slivers', heading: words.slivers(format.length(leastWidth)), sentences: more(slivers), figures: [],
        table: { head: [words.place, words.area, words.width], wordColumns: 1, rows: slivers.slice(0, LISTED).map((sliver) => [place(sliver.place), format.area(sliver.areaMm2), width(sliver.narrowerThan)]) },
      }]),
      {
        id: 'corridors', heading: words.corridors, sentences: words.grid(stripping, format), figures: [],
        ...(longScrap.length > 0 && {
          table: {
            head: [words.scrap, words.width, words.length, words.chopping], wordColumns: 1,
            rows: longScrap.map((scrap) => [words.scrapAt(scrap, format), format.length(scrap.width), format.length(scrap.length), String(scrap.choppingRules)]),
          },
        }),
      },
      { id: 'who', heading: headings.who, sentences: [], figures: [{ label: labels.layout, value: layoutNumber ?? fingerprint.slice(0, 12) }, { label: labels.sheet, value: format.size(layout.sheet.width, layout.sheet.height) }] },
    ].filter(({ sentences, figures, ...rest }) => sentences.length + figures.length > 0 || 'table' in rest),
  };

  function choiceSentences(): readonly string[] {
    const { wish, broken, price } = choice;
    const remedy = broken.length > 0 && price === undefined ? [words.choice.remedy(wish ?? { mode: 'with-tools', leastStrip: leastWidth })] : [];
    if (!wish) return remedy;
    return [words.choice.asks(wish, format), words.choice.verdict(broken, wish, format), ...(price ? words.choice.price(price, layout.placements.length, format) : remedy)];
  }

  function slotSentences(): readonly string[] {
    const slots = slivers.filter(({ inBlank }) => inBlank).length;
    return slots > 0 ? [words.slots(slots)] : [];
  }

  function pieceBox({ box: { minX, minY, maxX, maxY } }: WastePiece, bare: (mm: number) => string): string {
    return `${bare(toMillimetres(minX))} – ${bare(toMillimetres(maxX))} × ${bare(toMillimetres(minY))} – ${bare(toMillimetres(maxY))}`;
  }
}

/**
 * Islands numbered as in the table, slivers, and corridors as bands between the outermost knives; the key names only what
 * is there. Lengths of the sheet in mm.
 */
export function strippingMarks(stripping: Stripping, sheet: { readonly width: number; readonly height: number }, { words: { stripping: words }, format }: HandoverLanguage): Marks {
  const { pieces, slivers, corridors, frame } = stripping;
  const { unit, thin } = scaleFor(sheet);
  const islands = pieces.filter(({ island }) => island);
  const [right, top] = [sheet.width - frame.right, sheet.height - frame.tail];
  const bands = [
    ...corridors.x.map(({ from, width }) => [rectangle(from, frame.gripper, from + width, top)]),
    ...corridors.y.map(({ from, width }) => [rectangle(frame.left, from, right, from + width)]),
  ];
  const marked = [
    { there: bands, look: { fill: 'light', stroke: 'grey', width: thin, dash: [unit * 0.5, unit * 0.4] }, text: words.marked.way },
    { there: areas(islands), look: { fill: 'grey' }, text: words.marked.island },
    { there: areas(slivers), look: { fill: 'accent' }, text: words.marked.strip(format.length(stripping.leastWidth)) },
  ].filter(({ there }) => there.length > 0) as readonly { readonly there: CurvePath[][]; readonly look: Look; readonly text: string }[];
  return {
    name: 'Stripping',
    items: [...marked.flatMap(({ there, look }) => there.map((paths) => drawn(paths, look))), ...islands.flatMap(({ polygon }, i) => numbered(polygon, i + 1, unit, thin))],
    key: marked.map(({ look, text }) => ({ look, text, area: true })),
  };
}

/** Each with its holes. */
function areas(some: readonly { readonly polygon: Polygon }[]): CurvePath[][] {
  return some.map(({ polygon }) => polygonPaths([polygon]));
}

function numbered(polygon: Polygon, number: number, unit: number, thin: number): SceneItem[] {
  const { minX, minY, maxX, maxY } = boxOf(polygon.outer);
  const middle = { x: toMillimetres((minX + maxX) / 2), y: toMillimetres((minY + maxY) / 2) };
  return [drawn([circle(middle, unit * 0.8)], { fill: 'paper', stroke: 'ink', width: thin }), label(String(number), { x: middle.x, y: middle.y - unit * 0.32 }, unit * 0.9, { anchor: 'middle', bold: true })];
}

/** Cells of the picture's title block: how many of what is marked. */
export function strippingFigures({ pieces, slivers, leastWidth, corridors }: Stripping, { words: { stripping: words }, format }: HandoverLanguage) {
  return [
    { label: words.slivers(format.length(leastWidth)), value: String(slivers.length) },
    { label: words.islands, value: String(pieces.filter(({ island }) => island).length) },
    { label: words.ways, value: `${corridors.x.length} + ${corridors.y.length}` },
  ];
}
