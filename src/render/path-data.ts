import type { ArcCurve, CurvePath } from '../geometry/curve.ts';

/** A number of millimetres with at most three decimals and nothing superfluous. */
export function plain(value: number): string {
  const text = value.toFixed(3).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** SVG path data, absolute commands, millimetres as they are (y up if the curves' is). */
export function pathData(path: CurvePath, closed: boolean): string {
  const first = path[0];
  if (!first) return '';
  let text = `M${plain(first.from.x)} ${plain(first.from.y)}`;
  path.forEach((curve, i) => {
    const end = `${plain(curve.to.x)} ${plain(curve.to.y)}`;
    if (curve.kind === 'cubic') text += `C${plain(curve.control1.x)} ${plain(curve.control1.y)} ${plain(curve.control2.x)} ${plain(curve.control2.y)} ${end}`;
    else if (curve.kind === 'arc') text += arcData(curve, end);
    else if (!(closed && i === path.length - 1)) text += `L${end}`;
  });
  return closed ? `${text}Z` : text;
}

/** Arcs of half a turn or more in two, because the command cannot say a full turn. */
function arcData(arc: ArcCurve, end: string): string {
  const { radiusX, radiusY, tilt, start, sweep, centre } = arc;
  const radii = `${plain(radiusX)} ${plain(radiusY)} ${plain((tilt * 180) / Math.PI)}`;
  const direction = sweep > 0 ? 1 : 0;
  if (Math.abs(sweep) < Math.PI * 0.999) return `A${radii} 0 ${direction} ${end}`;
  const middle = start + sweep / 2;
  const [u, v] = [radiusX * Math.cos(middle), radiusY * Math.sin(middle)];
  const x = centre.x + u * Math.cos(tilt) - v * Math.sin(tilt);
  const y = centre.y + u * Math.sin(tilt) + v * Math.cos(tilt);
  return `A${radii} 0 ${direction} ${plain(x)} ${plain(y)}A${radii} 0 ${direction} ${end}`;
}
