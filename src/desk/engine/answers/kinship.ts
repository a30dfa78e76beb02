import { kinship, type Kinship } from '../../../layout/kinship.ts';
import { preparePart } from '../../../layout/part.ts';
import type { KinshipAsk } from '../protocol.ts';

export function kinshipOf({ designs, blank, name, fingerprint }: KinshipAsk): Kinship[] {
  const { design } = preparePart(blank, { id: name, turns: [0], fingerprint });
  return designs.map((own) => kinship(own, design));
}
