import { chooseBlank } from '../../../dieline/choose-blank.ts';
import { mirrorBlank } from '../../../dieline/mirror-blank.ts';
import { kinship, type Kinship } from '../../../layout/kinship.ts';
import { preparePart } from '../../../layout/part.ts';
import type { Host } from '../host.ts';
import type { DrawnBlank, DrawnSource, KinshipAsk } from '../protocol.ts';
import { dielineOf } from './read.ts';

export async function kinshipOf({ designs, drawing }: KinshipAsk, { goesOn }: Pick<Host<'kinship'>, 'goesOn'>): Promise<Kinship[]> {
  const { blank, name, fingerprint } = 'blank' in drawing ? drawing : await drawn(drawing, goesOn);
  const { design } = preparePart(blank, { id: name, turns: [0], fingerprint });
  return designs.map((own) => kinship(own, design));
}

async function drawn({ source, remembered, drawnFrom, name }: DrawnSource, goesOn: () => void): Promise<DrawnBlank> {
  const dieline = await dielineOf(source, remembered, goesOn);
  const blank = chooseBlank(dieline, source.kind === 'file' ? source.options.blank : undefined);
  return { blank: drawnFrom === 'inside' ? mirrorBlank(blank) : blank, name, fingerprint: dieline.fingerprint };
}
