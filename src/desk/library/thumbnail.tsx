import type { LibraryPicture } from '../../wire/library.ts';

/** Room round a small picture, as a share of its longer side. */
const ROOM = 0.03;

/** An outline or a sheet of them, drawn from numbers alone. Beside it stands what it is, so it says nothing by itself. */
export function Thumbnail({ picture }: { readonly picture: LibraryPicture | undefined }) {
  if (!picture) return null;
  const { width, height, sheet, rings } = picture;
  const room = Math.max(width, height) * ROOM;
  const path = (ring: readonly (readonly [number, number])[]) => `M${ring.map(([x, y]) => `${x} ${-y}`).join('L')}Z`;
  return (
    <svg class="library-thumb scene" viewBox={`${-room} ${-height - room} ${width + 2 * room} ${height + 2 * room}`} aria-hidden="true">
      {sheet && <rect class="fill-paper stroke-ink" x={0} y={-height} width={width} height={height} vector-effect="non-scaling-stroke" />}
      {rings.map((ring, i) => <path key={i} class="fill-blank stroke-ink" d={path(ring)} vector-effect="non-scaling-stroke" />)}
    </svg>
  );
}
