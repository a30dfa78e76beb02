import type { WorkStyle } from '../layout/back-up.ts';
import { boxOf, ringArea, type Box } from '../geometry/point.ts';
import type { HandoverFacts } from './handover-facts.ts';
import { POINTS_PER_MM } from './pdf-operators.ts';
import type { SheetView } from './sheet-view.ts';
import { placedBoxes } from './step-runs.ts';
import { element } from './xml.ts';

/** How sides are printed, in the words of XJDF. */
const WORK_STYLE: Readonly<Record<WorkStyle, string>> = { sheetwise: 'WorkAndBack', 'work-and-turn': 'WorkAndTurn', 'work-and-tumble': 'WorkAndTumble', perfecting: 'Perfecting' };

/** The only cut type code of DDES that is known here: a plain cut. */
const DDES_CUT = 101;

/**
 * The die layout as XJDF job data: lengths in points, board thickness in µm, areas in m². The form is that of the public
 * XJDF schema, namespace http://www.CIP4.org/JDFSchema_2_0.
 */
export function layoutXjdf(facts: HandoverFacts, view: SheetView): string {
  const { layout, fingerprint, layoutNumber } = facts;
  const boxes = placedBoxes(view);
  const content = [
    resourceSet('NodeInfo', 'Input', [resource({}, element('NodeInfo', {}))]),
    resourceSet('Media', 'Input', [resource({ ID: 'Media1' }, media(facts))]),
    resourceSet('ShapeDef', 'Input', view.designs.map(({ ring, openingRings }, i) => {
      const { maxX, maxY } = boxOf(ring);
      const area = (ringArea(ring) - openingRings.reduce((sum, opening) => sum + ringArea(opening), 0)) / 1e6;
      return resource({ ID: shape(i), DescriptiveName: layout.designs[i]!.id }, element('ShapeDef', { Area: area.toFixed(6), CutBox: points(0, 0, maxX, maxY), FlatDimensions: points(maxX, maxY, 0), MediaRef: 'Media1' }));
    })),
    resourceSet('DieLayoutProductionParams', 'Input', [resource({}, productionParams(facts))]),
    resourceSet('DieLayout', 'Output', [resource({ ID: 'DieLayout1' }, dieLayout(facts, view, boxes))]),
    resourceSet('BinderySignature', undefined, view.placements.map((_, station) =>
      resource({}, element('Part', { BinderySignatureID: stationId(station) }) + element('BinderySignature', { BinderySignatureType: 'Die', DieLayoutRef: 'DieLayout1' })),
    )),
    resourceSet('Layout', 'Output', [resource({}, element('Part', { SheetName: 'Sheet1' }) + sheetLayout(facts, boxes))]),
  ];
  const root = { xmlns: 'http://www.CIP4.org/JDFSchema_2_0', JobID: layoutNumber ?? fingerprint.slice(0, 12), Types: 'DieLayoutProduction' };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element('XJDF', root, `\n${content.join('\n')}\n`)}\n`;
}

function resourceSet(name: string, usage: string | undefined, resources: readonly string[]): string {
  return element('ResourceSet', { Name: name, Usage: usage }, `\n${resources.join('\n')}\n`);
}

function resource(attributes: Readonly<Record<string, string>>, content: string): string {
  return element('Resource', attributes, content);
}

function media({ layout: { sheet }, board, grain }: HandoverFacts): string {
  return element('Media', {
    MediaType: 'Paper',
    MediaUnit: 'Sheet',
    Dimension: points(sheet.width, sheet.height),
    GrainDirection: grain && (grain === 'x' ? 'XDirection' : 'YDirection'),
    Thickness: board?.caliper === undefined ? undefined : Math.round(board.caliper * 1000),
    Weight: board?.grammage,
  });
}

function productionParams({ layout, quantity }: HandoverFacts): string {
  const { sheet, usable, rules, designs } = layout;
  const margins = { MarginBottom: points(usable.y), MarginTop: points(sheet.height - usable.y - usable.height), MarginLeft: points(usable.x), MarginRight: points(sheet.width - usable.x - usable.width) };
  const sizes = { SheetWidthMin: points(sheet.width), SheetWidthMax: points(sheet.width), SheetHeightMin: points(sheet.height), SheetHeightMax: points(sheet.height) };
  const repeats = designs.map(({ rotations }, i) =>
    element('RepeatDesc', {
      ShapeDefRef: shape(i),
      AllowedRotate: rotations.some((degrees) => degrees % 180 !== 0) ? 'CrossGrain' : rotations.some((degrees) => degrees % 360 !== 0) ? 'Grain' : 'None',
      GutterX: points(rules.gap),
      GutterY: points(rules.gap),
      OrderQuantity: designs.length === 1 ? quantity : undefined,
      UseBleed: String(rules.bleed > 0),
    }),
  );
  return element('DieLayoutProductionParams', {}, element('ConvertingConfig', { ...margins, ...sizes }) + repeats.join(''));
}

function dieLayout({ layout, cuttingMm }: HandoverFacts, { designs, placements }: SheetView, boxes: readonly Box[]): string {
  const { sheet } = layout;
  const used = placements.reduce((sum, { design }) => sum + ringArea(designs[design]!.ring), 0);
  const stations = placements.map(({ design }, station) => element('Station', { StationName: String(station + 1), ShapeDefRef: shape(design), BinderySignatureIDs: stationId(station) }));
  const { minX, minY, maxX, maxY } = boxOf(boxes.flatMap((box) => [{ x: box.minX, y: box.minY }, { x: box.maxX, y: box.maxY }]));
  return element(
    'DieLayout',
    {
      CutBox: points(minX, minY, maxX, maxY),
      MediaSide: 'Front',
      Rotated: String(placements.some(({ turn }) => turn % 2 === 1)),
      Waste: (100 * (1 - used / (sheet.width * sheet.height))).toFixed(2),
    },
    element('RuleLength', { DDESCutType: DDES_CUT, Length: points(cuttingMm) }) + stations.join(''),
  );
}

function sheetLayout({ layout, back }: HandoverFacts, boxes: readonly Box[]): string {
  const { sheet, lay, placements } = layout;
  const positions = boxes.map(({ minX, minY, maxX, maxY }, station) =>
    element('Position', { BinderySignatureID: stationId(station), AbsoluteBox: points(minX, minY, maxX, maxY), Orientation: `Rotate${((placements[station]!.rotation % 360) + 360) % 360}` }),
  );
  const attributes = { WorkStyle: back ? WORK_STYLE[back] : 'Simplex', SheetLay: lay === 'left' ? 'Left' : 'Right', PaperRef: 'Media1', SurfaceContentsBox: points(0, 0, sheet.width, sheet.height) };
  return element('Layout', attributes, `\n${positions.join('\n')}\n`);
}

function shape(design: number): string {
  return `Shape${design + 1}`;
}

function stationId(station: number): string {
  return `Station${station + 1}`;
}

/** Millimetres to points with four decimals, a list with spaces. */
function points(...mm: readonly number[]): string {
  return mm.map((value) => String(Number((value * POINTS_PER_MM).toFixed(4)) + 0)).join(' ');
}
