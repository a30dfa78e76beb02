import { toMillimetres } from '../../../base/units.ts';
import { mmArea, mmRing } from '../../../layout/rings.ts';
import { prepareSheet } from '../../../pipeline/laying.ts';
import type { Host } from '../host.ts';
import type { DeskLaying, FrameAnswer } from '../protocol.ts';
import { machinesOf } from './machines-of.ts';
import { picture } from './picture.ts';

/** The sheet before anything lies on it. */
export function frame(laying: DeskLaying, host: Pick<Host<'frame'>, 'locale' | 'unit'>): FrameAnswer {
  const { frame: prepared, sheetGrain, notes } = prepareSheet({ ...laying, machines: machinesOf(laying.machines) });
  const usable = mmArea(prepared.usable);
  const printable = mmArea(prepared.printable);
  const { rules } = prepared;
  const [gap, bleed] = [toMillimetres(rules.gap), toMillimetres(rules.bleed)];
  const file = {
    sheet: laying.sheet,
    usable,
    printable,
    lay: prepared.lay,
    keepOut: prepared.keepOuts.map(({ kind, ring }) => ({ kind, ring: mmRing(ring) })),
    rules: { gap, bleed, bleedMeeting: rules.bleedMeeting, commonKnife: rules.commonKnife },
    designs: [],
    placements: [],
  };
  return { usable, printable, gap, bleed, notes, scene: picture({ file, grain: sheetGrain, small: true }, host) };
}
