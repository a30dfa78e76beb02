import { InputError } from '../../base/issue.ts';
import { chooseBlank } from '../../dieline/choose-blank.ts';
import type { Blank } from '../../dieline/dieline.ts';
import { mirrorBlank } from '../../dieline/mirror-blank.ts';
import { readDrawing } from '../../dieline/read-drawing.ts';
import { flattenLoop } from '../../geometry/flatten.ts';
import { boxOf, type Ring } from '../../geometry/point.ts';
import { readLayoutFile } from '../../layout/layout-file.ts';
import { micronRing } from '../../layout/rings.ts';
import { creaseDistances, type CreaseDistances } from './crease-distances.ts';
import { drawingNamed } from './drawings.ts';
import type { Kind } from './kinds.ts';
import type { Library } from './open-library.ts';
import { readingOf } from './reading.ts';
import { entryNamed, type Entry } from './records.ts';

/** What a search by shape or size asks of a carton or die. */
export interface Shape {
  /** Whole µm, vertices on the true outline. */
  readonly outline: Ring;
  readonly creases: CreaseDistances;
}

export interface KnownShape extends Shape {
  readonly kind: Kind;
  readonly id: string;
}

/** How far the outline may leave the true one, mm: a twentieth of the finest tolerance that is asked for. */
const FLATTENING_MM = 0.02;

export function shapeOf(blank: Blank): Shape {
  return { outline: flattenLoop(blank.outline, { toleranceMm: FLATTENING_MM, side: 'near' }).ring, creases: creaseDistances(blank) };
}

/** Sides of the box, longer one first, mm. */
export function sidesOf(outline: Ring): readonly [long: number, short: number] {
  const { minX, minY, maxX, maxY } = boxOf(outline);
  const [width, height] = [(maxX - minX) / 1000, (maxY - minY) / 1000];
  return [Math.max(width, height), Math.min(width, height)];
}

/**
 * Makes the shapes of cartons and dies that are new or changed since the last time. Nothing is kept for one without a
 * drawing that can be read.
 */
export async function bringShapesUp(library: Library): Promise<void> {
  const open = library.rows<{ kind: Kind; id: string }>(
    `SELECT p.kind, p.id FROM present AS p LEFT JOIN shape AS s ON s.kind = p.kind AND s.id = p.id
     WHERE p.kind IN ('carton', 'die') AND (s.revision IS NULL OR s.revision <> p.revision)`,
  );
  for (const { kind, id } of open) {
    const entry = entryNamed(library, kind, id);
    if (entry) keepShape(library, entry, await shapeOfEntry(library, entry));
  }
}

function keepShape(library: Library, { kind, id, revision }: Entry, shape: Shape | undefined): void {
  const [long, short] = shape ? sidesOf(shape.outline) : [null, null];
  const text = shape ? JSON.stringify({ outline: shape.outline.map(({ x, y }) => [x, y]), creases: shape.creases }) : null;
  library.run('INSERT INTO shape VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (kind, id) DO UPDATE SET revision = excluded.revision, long_mm = excluded.long_mm, short_mm = excluded.short_mm, shape = excluded.shape', kind, id, revision, long, short, text);
}

/** Of its own drawing, else of the first design of the layout it names. */
async function shapeOfEntry(library: Library, { content }: Entry): Promise<Shape | undefined> {
  const { drawing, drawnFrom, layout } = content as { drawing?: string; drawnFrom?: string; layout?: string };
  try {
    const bytes = drawing === undefined ? undefined : drawingNamed(library, drawing);
    if (bytes) {
      const options = readingOf(library, content);
      const blank = chooseBlank(await readDrawing(bytes, options), options.blank);
      return shapeOf(drawnFrom === 'inside' ? mirrorBlank(blank) : blank);
    }
    const laid = layout === undefined ? undefined : entryNamed(library, 'layout', layout);
    return laid && { outline: micronRing(readLayoutFile(laid.content, layout!).designs[0].outline), creases: { across: [], up: [] } };
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

interface Row {
  readonly kind: Kind;
  readonly id: string;
  readonly shape: string;
}

function known({ kind, id, shape }: Row): KnownShape {
  const { outline, creases } = JSON.parse(shape) as { outline: [number, number][]; creases: CreaseDistances };
  return { kind, id, outline: outline.map(([x, y]) => ({ x, y })), creases };
}

/** Shapes whose box differs from the given sides by at most `slack` on each, mm. */
export function shapesOfSize(library: Library, [long, short]: readonly [number, number], slack: number): KnownShape[] {
  return library
    .rows<Row>('SELECT kind, id, shape FROM shape JOIN present USING (kind, id, revision) WHERE long_mm BETWEEN ? AND ? AND short_mm BETWEEN ? AND ? ORDER BY kind, id', long - slack, long + slack, short - slack, short + slack)
    .map(known);
}

export function allShapes(library: Library): KnownShape[] {
  return library.rows<Row>('SELECT kind, id, shape FROM shape JOIN present USING (kind, id, revision) WHERE shape IS NOT NULL ORDER BY kind, id').map(known);
}

/** The shape of one carton or die, as far as it has been made; undefined where its drawing gives none. */
export function shapeNamed(library: Library, kind: Kind, id: string): KnownShape | undefined {
  return library.rows<Row>('SELECT kind, id, shape FROM shape JOIN present USING (kind, id, revision) WHERE kind = ? AND id = ? AND shape IS NOT NULL', kind, id).map(known)[0];
}
