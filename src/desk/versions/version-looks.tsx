import { letterOf } from '../job/versions.ts';

/** Tints of versions in versions.css, and hatches: the first eight versions differ in both, later ones in the pair. */
const LOOKS = 8;

export function tintOf(row: number): string {
  return `version-tint-${row % LOOKS}`;
}

function hatchOf(row: number): number {
  return (row + Math.floor(row / LOOKS)) % LOOKS;
}

/** Lines and dots on a tile of 10 by 10; the plain tint is the first. */
const HATCHES: readonly string[] = ['', 'M0 0L10 10M-5 5L5 15M5 -5L15 5', 'M0 5H10', 'M10 0L0 10M5 15L15 5M-5 5L5 -5', 'M5 0V10', 'M0 5H10M5 0V10', 'M0 0L10 10M10 0L0 10', 'M5 4.2V5.8'];
/** The last hatch is one of dots. */
const DOTS = 7;

/** Hatches of the versions for one picture; `tile` is the side of a tile in the units of what is filled, whose y runs up or down. */
export function VersionHatches({ prefix, tile, yAxis }: { readonly prefix: string; readonly tile: number; readonly yAxis: 'up' | 'down' }) {
  const scale = tile / 10;
  return (
    <defs>
      {HATCHES.map((d, i) => d !== '' && (
        <pattern key={i} id={`${prefix}${i}`} width={10} height={10} patternUnits="userSpaceOnUse" patternTransform={`scale(${scale} ${yAxis === 'up' ? -scale : scale})`}>
          <path d={d} class="version-hatch" stroke-width={i === DOTS ? 1.8 : 0.9} stroke-linecap={i === DOTS ? 'round' : 'butt'} />
        </pattern>
      ))}
    </defs>
  );
}

/** Fill of a version's hatch; undefined for the plain one. */
export function hatchFill(prefix: string, row: number): string | undefined {
  const hatch = hatchOf(row);
  return hatch === 0 ? undefined : `url(#${prefix}${hatch})`;
}

const [WIDE, HIGH] = [26, 20];

/** How a version looks on the sheet: tint, hatch, letter. */
export function Swatch({ row, prefix }: { readonly row: number; readonly prefix: string }) {
  const own = `${prefix}-${row}-`;
  const fill = hatchFill(own, row);
  return (
    <svg class="version-swatch" viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      {fill !== undefined && <VersionHatches prefix={own} tile={6} yAxis="down" />}
      <rect width={WIDE} height={HIGH} class={tintOf(row)} />
      {fill !== undefined && <rect width={WIDE} height={HIGH} fill={fill} />}
      <text x={WIDE / 2} y={HIGH / 2 + 4.5} class="version-letter">{letterOf(row)}</text>
    </svg>
  );
}
