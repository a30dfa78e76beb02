import type { DxfDocument, DxfLayer } from './document.ts';
import { keyOf } from './document.ts';
import { numberOf, textOf, type DxfRecord } from './groups.ts';

/** How an entity is drawn, in drawing units where it is a length on the drawing. */
export interface DxfPaint {
  readonly stroke: string;
  readonly dash: readonly number[];
  readonly widthMm: number;
}

/** What a block's entities take where they say so. */
export const NO_BLOCK: DxfPaint = { stroke: '#000000', dash: [], widthMm: 0 };

/** An entity says it itself, or takes it from its layer or from the block it is in. */
export function paintOf(record: DxfRecord, layer: DxfLayer | undefined, block: DxfPaint, document: DxfDocument): DxfPaint {
  const own = record;
  const ofLayer = layer?.record;
  return { stroke: colourOf(own, ofLayer, block), dash: dashOf(own, ofLayer, block, document), widthMm: widthOf(own, ofLayer, block) };
}

const BY_BLOCK = 0;
const BY_LAYER = 256;

function colourOf(own: DxfRecord, layer: DxfRecord | undefined, block: DxfPaint): string {
  const exact = numberOf(own, 420);
  if (exact !== undefined) return hexadecimal([exact >> 16, exact >> 8, exact].map((value) => value & 255));
  const index = numberOf(own, 62) ?? BY_LAYER;
  if (index === BY_BLOCK) return block.stroke;
  if (index !== BY_LAYER) return colourOfIndex(Math.abs(index));
  const layerExact = layer && numberOf(layer, 420);
  if (layerExact !== undefined) return hexadecimal([layerExact >> 16, layerExact >> 8, layerExact].map((value) => value & 255));
  return colourOfIndex(Math.abs((layer && numberOf(layer, 62)) ?? WHITE_OR_BLACK));
}

const WHITE_OR_BLACK = 7;

/** Colour numbers of the DXF reference: nine by name, 24 hues in five lightnesses, whole or half strong, and six greys. 7 is black on paper. */
function colourOfIndex(index: number): string {
  const named = ['', '#ff0000', '#ffff00', '#00ff00', '#00ffff', '#0000ff', '#ff00ff', '#000000', '#808080', '#c0c0c0'];
  if (index < 10) return named[index] || '#000000';
  if (index >= 250) return hexadecimal(Array.from({ length: 3 }, () => Math.round(51 + Math.min(index - 250, 5) * 40.8)));
  const hue = (Math.floor(index / 10) - 1) / 4;
  const light = [255, 189, 129, 104, 79][Math.floor((index % 10) / 2)]!;
  const strength = index % 2 === 0 ? 1 : 0.5;
  const channel = (middle: number) => {
    const distance = Math.abs(((hue - middle + 9) % 6) - 3);
    return Math.round(light * (1 - strength * Math.max(0, Math.min(1, distance - 1))));
  };
  return hexadecimal([channel(0), channel(2), channel(4)]);
}

function hexadecimal(channels: readonly number[]): string {
  return `#${channels.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

function dashOf(own: DxfRecord, layer: DxfRecord | undefined, block: DxfPaint, { dashes, dashScale }: DxfDocument): readonly number[] {
  const named = keyOf(textOf(own, 6) ?? 'bylayer');
  if (named === 'byblock') return block.dash;
  const name = named === 'bylayer' ? keyOf(layer && textOf(layer, 6)) : named;
  const scale = dashScale * (numberOf(own, 48) ?? 1);
  const dash = (dashes.get(name) ?? []).map((length) => length * scale);
  return dash.every(Number.isFinite) ? dash : [];
}

/** Hundredths of a millimetre; below 0: by layer, by block, as usual. */
function widthOf(own: DxfRecord, layer: DxfRecord | undefined, block: DxfPaint): number {
  const weight = numberOf(own, 370) ?? -1;
  if (weight === -2) return block.widthMm;
  const known = weight >= 0 ? weight : ((layer && numberOf(layer, 370)) ?? -3);
  return known >= 0 ? known / 100 : 0;
}
