import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Scene } from '../../render/scene.ts';
import type { StationSheet } from '../engine/protocol.ts';
import { letterOf } from '../job/versions.ts';
import { sceneNodes } from '../picture/scene-nodes.ts';
import { viewBoxText, whole } from '../picture/view-box.ts';
import { isArrow, stationTowards } from './station-walk.ts';
import { hatchFill, tintOf, VersionHatches } from './version-looks.tsx';

interface Props {
  readonly sheet: StationSheet;
  /** Row of the version that each station prints. */
  readonly printed: readonly (number | undefined)[];
  readonly label: string;
  readonly nameOf: (station: number) => string;
  readonly versions: number;
  readonly onGive: (station: number, row: number | undefined) => void;
  /** A click, or Enter: whatever is chosen to be given. */
  readonly onPress: (station: number) => void;
}

/** Height of a version's letter and of the station's number below it, as parts of a number's height; they may cross creases. */
const LETTER = 2;
const NUMBER = 0.9;

/**
 * The sheet, every station tinted, hatched and lettered by what it prints: under the creases the fill, over them letter and
 * number. Each station is a button; one of them at a time is reached by Tab, the others by arrows.
 */
export function StationPicture({ sheet: { scene, stations }, printed, label, nameOf, versions, onGive, onPress }: Props) {
  const [entry, setEntry] = useState(0);
  const buttons = useRef<(SVGPathElement | null)[]>([]);
  const tile = Math.max(scene.sheet.width, scene.sheet.height) / 80;
  const onKeyDown = (event: KeyboardEvent, station: number) => {
    const { key } = event;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (isArrow(key)) {
      const next = stationTowards(stations.map(({ at }) => at), station, key);
      setEntry(next);
      buttons.current[next]?.focus();
    } else if (key === 'Enter' || key === ' ') onPress(station);
    else if (key === 'Delete' || key === 'Backspace') onGive(station, undefined);
    else {
      const row = rowOfLetter(key, versions);
      if (row === undefined) return;
      onGive(station, row);
    }
    event.preventDefault();
  };
  return (
    <svg class="picture station-picture" role="group" aria-label={label} viewBox={viewBoxText(whole(scene.box))}>
      <VersionHatches prefix="form-" tile={tile} yAxis="up" />
      <Part scene={scene} name="form-below" from={0} to={afterBlanks(scene)} />
      <g transform="scale(1 -1)" aria-hidden="true">
        {stations.map(({ outline }, i) => <Filled key={i} outline={outline} row={printed[i]} />)}
      </g>
      <Part scene={scene} name="form-above" from={afterBlanks(scene)} to={scene.layers.length} />
      <g transform="scale(1 -1)" aria-hidden="true">
        {stations.map(({ at, size }, i) => (
          <g key={i} transform={`translate(${at.x} ${at.y}) scale(1 -1)`}>
            <text class="version-letter" y={size * 0.5} font-size={size * LETTER}>{printed[i] === undefined ? '–' : letterOf(printed[i])}</text>
            <text class="station-number" y={size * 1.5} font-size={size * NUMBER}>{i + 1}</text>
          </g>
        ))}
      </g>
      <g transform="scale(1 -1)">
        {stations.map(({ outline }, i) => (
          <path key={i} ref={(element) => { buttons.current[i] = element; }} d={outline} class="station" role="button" tabindex={i === Math.min(entry, stations.length - 1) ? 0 : -1} aria-label={nameOf(i)}
            onClick={() => { setEntry(i); onPress(i); }} onKeyDown={(event) => onKeyDown(event, i)} />
        ))}
      </g>
    </svg>
  );
}

function Filled({ outline, row }: { readonly outline: string; readonly row: number | undefined }) {
  if (row === undefined) return null;
  const fill = hatchFill('form-', row);
  return (
    <>
      <path d={outline} class={tintOf(row)} />
      {fill !== undefined && <path d={outline} fill={fill} />}
    </>
  );
}

/** A single letter stands for its version; those beyond Z are given by click. */
function rowOfLetter(key: string, versions: number): number | undefined {
  const row = key.length === 1 ? key.toUpperCase().charCodeAt(0) - 65 : -1;
  return row >= 0 && row < Math.min(versions, 26) ? row : undefined;
}

function afterBlanks({ layers }: Scene): number {
  return layers.findIndex(({ name }) => name === 'Blanks') + 1;
}

/** Some layers of a scene. */
function Part({ scene, name, from, to }: { readonly scene: Scene; readonly name: string; readonly from: number; readonly to: number }) {
  const group = useRef<SVGGElement>(null);
  useLayoutEffect(() => group.current?.replaceChildren(...sceneNodes({ ...scene, layers: scene.layers.slice(from, to) }, `${name}-`)), [scene]);
  return <g ref={group} aria-hidden="true" />;
}
