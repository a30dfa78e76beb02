import type { Design, LayoutFile, MmRing, PlacedBlank } from '../../src/layout/layout-file.ts';

/** A plain rectangle as a design without a drawing. */
export function rectangle(id: string, width: number, height: number): Design {
  return { id, outline: [[0, 0], [width, 0], [width, height], [0, height]], openings: [], rotations: [0, 90, 180, 270] };
}

export function polygonDesign(id: string, outline: MmRing): Design {
  return { id, outline, openings: [], rotations: [0, 90, 180, 270] };
}

/** A layout on a wide sheet: gap 6, bleed 3, all else as the file's defaults. */
export function layoutWith(designs: readonly Design[], placements: readonly PlacedBlank[], changes: Partial<LayoutFile> = {}): LayoutFile {
  const whole = { x: 0, y: 0, width: 1000, height: 700 };
  return {
    sheet: { width: 1000, height: 700 },
    usable: whole,
    printable: whole,
    lay: 'left',
    keepOut: [],
    rules: { gap: 6, bleed: 3, bleedMeeting: 'apart', commonKnife: false },
    designs,
    placements,
    ...changes,
  };
}

export function at(design: string, x: number, y: number, rotation = 0): PlacedBlank {
  return { design, rotation, x, y };
}

/** `columns` × `rows` blanks of one design, `step` apart, alternate columns turned head down about the blank's own box. */
export function grid(design: Design, { columns, rows, step, from, headToTail = false }: {
  columns: number;
  rows: number;
  step: readonly [number, number];
  from: readonly [number, number];
  headToTail?: boolean;
}): PlacedBlank[] {
  const width = Math.max(...design.outline.map(([x]) => x));
  const height = Math.max(...design.outline.map(([, y]) => y));
  return Array.from({ length: columns * rows }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const [x, y] = [from[0] + column * step[0], from[1] + row * step[1]];
    return headToTail && column % 2 === 1 ? at(design.id, x + width, y + height, 180) : at(design.id, x, y);
  });
}
