import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Scene } from '../../render/scene.ts';
import { writePathData } from '../../geometry/path-data.ts';
import { hatchPatterns } from '../picture/hatches.ts';
import { node } from '../picture/scene-nodes.ts';
import { useWords } from '../words/words.ts';

/** The sheet, each part hatched by what becomes of it, with the key to the hatches. */
export function WastePicture({ scene }: { readonly scene: Scene }) {
  const { say } = useWords();
  const svg = useRef<SVGSVGElement>(null);
  const { width, height } = scene.sheet;
  useLayoutEffect(() => svg.current?.replaceChildren(...wasteNodes(scene, 'waste-', width / 1000)), [scene]);
  return (
    <figure>
      <svg ref={svg} class="picture waste" role="img" aria-label={say('picture-of-waste')} viewBox={`0 ${-height} ${width} ${height}`} />
      <ul class="key" aria-label={say('key')}>
        {scene.layers.map(({ name }) => <KeyEntry key={name} cause={name} />)}
      </ul>
    </figure>
  );
}

function wasteNodes({ layers, sheet }: Scene, prefix: string, scale: number): SVGElement[] {
  const defs = node('defs', {});
  defs.append(...hatchPatterns(prefix, scale, 'up'));
  const picture = node('g', { transform: 'scale(1 -1)', 'fill-rule': 'evenodd' });
  for (const { name, items } of layers) {
    for (const item of items) {
      if (item.kind !== 'path') continue;
      const d = item.paths.map((path) => writePathData(path, 3)).join(' ');
      picture.append(node('path', { d, ...(name === 'blanks' ? { class: 'fill-blank stroke-ink', 'stroke-width': String(scale) } : { fill: `url(#${prefix}${name})` }) }));
    }
  }
  picture.append(node('rect', { x: '0', y: '0', width: String(sheet.width), height: String(sheet.height), class: 'sheet-edge', 'stroke-width': String(2 * scale) }));
  return [defs, picture];
}

const SWATCH = 26;

function KeyEntry({ cause }: { readonly cause: string }) {
  const { say } = useWords();
  const svg = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => {
    const defs = node('defs', {});
    defs.append(...hatchPatterns(`key-${cause}-`, 1, 'down'));
    const look = cause === 'blanks' ? { class: 'fill-blank' } : { fill: `url(#key-${cause}-${cause})` };
    svg.current?.replaceChildren(defs, node('rect', { width: String(SWATCH), height: String(SWATCH), ...look }));
  }, [cause]);
  return (
    <li>
      <svg ref={svg} class="swatch" viewBox={`0 0 ${SWATCH} ${SWATCH / 1.6}`} aria-hidden="true" /> {say(`cause-${cause}` as 'cause-blanks')}
    </li>
  );
}
