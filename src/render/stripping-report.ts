import { toMillimetres } from '../base/units.ts';
import type { Stripping, WastePiece } from '../estimate/stripping.ts';
import type { BrokenCondition } from '../estimate/stripping-conditions.ts';
import type { StrippingWish } from '../press/stripping.ts';
import type { StrippingFacts } from './nest-facts.ts';
import { boxOf, type Point } from '../geometry/point.ts';
import { polygonPaths } from './polygon-paths.ts';
import type { HandoverFacts } from './handover-facts.ts';
import type { HandoverLanguage } from './handover-pages.ts';
import type { Report } from './report.ts';
import { scaleFor } from './scale.ts';
import type { SceneItem } from './scene.ts';
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

/** Islands numbered as in the table, slivers, and corridors as bands from edge to edge. */
export function strippingMarks({ pieces, slivers, corridors }: Stripping, sheet: { readonly width: number; readonly height: number }): SceneItem[] {
  const { unit, thin } = scaleFor(sheet);
  const islands = pieces.filter(({ island }) => island);
  const bands = [
    ...corridors.x.map(({ from, width }) => rectangle(from, 0, from + width, sheet.height)),
    ...corridors.y.map(({ from, width }) => rectangle(0, from, sheet.width, from + width)),
  ];
  return [
    ...(bands.length > 0 ? [drawn(bands, { stroke: 'grey', width: thin, dash: [unit * 0.5, unit * 0.4] })] : []),
    ...(islands.length > 0 ? [drawn(polygonPaths(islands.map(({ polygon }) => polygon)), { fill: 'grey' })] : []),
    ...(slivers.length > 0 ? [drawn(polygonPaths(slivers.map(({ polygon }) => polygon)), { fill: 'accent' })] : []),
    ...islands.flatMap(({ polygon }, i): SceneItem[] => {
      const { minX, minY, maxX, maxY } = boxOf(polygon.outer);
      const middle = { x: toMillimetres((minX + maxX) / 2), y: toMillimetres((minY + maxY) / 2) };
      return [drawn([circle(middle, unit * 0.8)], { fill: 'paper', stroke: 'ink', width: thin }), label(String(i + 1), { x: middle.x, y: middle.y - unit * 0.32 }, unit * 0.9, { anchor: 'middle', bold: true })];
    }),
  ];
}
