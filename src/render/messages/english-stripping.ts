import type { LongScrap, Stripping } from '../../estimate/stripping.ts';
import { narrowFrame } from '../../estimate/stripping-conditions.ts';
import { LEAST_FRAME_MM, LEAST_GRID_MM } from '../../press/stripping.ts';
import type { Format } from '../format.ts';
import { englishStrippingChoice, type StrippingChoiceWords } from './english-stripping-choice.ts';

/** Words of the stripping report. */
export interface StrippingWords {
  readonly title: string;
  readonly answer: (stripping: Stripping, format: Format) => string;
  readonly modes: string;
  /** One sentence for stripping by hand, with tools, and with blanking. */
  readonly verdicts: (stripping: Stripping, format: Format) => readonly string[];
  readonly frame: string;
  readonly edges: Readonly<Record<keyof Stripping['frame'], string>>;
  readonly pieces: string;
  readonly piece: string;
  readonly island: (number: number) => string;
  readonly web: (number: number) => string;
  readonly place: string;
  readonly area: string;
  readonly width: string;
  readonly length: string;
  readonly atLeast: (length: string) => string;
  readonly under: (length: string) => string;
  readonly slivers: (limit: string) => string;
  readonly corridors: string;
  readonly grid: (stripping: Stripping, format: Format) => readonly string[];
  readonly scrap: string;
  readonly scrapAt: (scrap: LongScrap, format: Format) => string;
  readonly chopping: string;
  readonly more: (count: number) => string;
  /** Slots of the blanks themselves, counted among the strips. */
  readonly slots: (count: number) => string;
  /** A way of stripping that was wished for. */
  readonly choice: StrippingChoiceWords;
  /** In the key of the picture. */
  readonly marked: { readonly strip: (limit: string) => string; readonly island: string; readonly way: string };
  /** In its title block. */
  readonly islands: string;
  readonly ways: string;
}

export const islandsOf = ({ pieces }: Stripping) => pieces.filter(({ island }) => island).length;

/** What stands in the way of each mode; nothing where it goes. The same in every language. */
export function strippingHindrances(stripping: Stripping) {
  const { slivers, corridors, blanksInCell } = stripping;
  const narrowGrid = [...corridors.x, ...corridors.y].filter(({ width }) => width < LEAST_GRID_MM).length;
  return { slivers: slivers.length, islands: islandsOf(stripping), narrowFrame: narrowFrame(stripping), blanksInCell, narrowGrid };
}

const count = (number: number, one: string, many: string) => `${number === 0 ? 'no' : number} ${number === 1 ? one : many}`;

export const englishStripping: StrippingWords = {
  title: 'Stripping',
  answer: (stripping, format) => `Loose islands: ${islandsOf(stripping) || 'none'}. Strips narrower than ${format.length(stripping.leastWidth)}: ${stripping.slivers.length || 'none'}.`,
  modes: 'How it can be stripped',
  verdicts: (stripping, format) => {
    const { slivers, islands, narrowFrame, blanksInCell, narrowGrid } = strippingHindrances(stripping);
    const strips = `${count(slivers, 'strip', 'strips')} under ${format.length(stripping.leastWidth)}`;
    const tools = [...(slivers > 0 ? [`${strips} may tear`] : []), ...(narrowFrame.length > 0 ? [`less than ${LEAST_FRAME_MM} mm of frame at ${narrowFrame.map((edge) => englishStripping.edges[edge]).join(' and ')}`] : [])];
    const blanking = [...tools, ...(blanksInCell > 1 ? [`no straight way parts every blank from the next: up to ${blanksInCell} stand in one cell of the grid`] : []), ...(narrowGrid > 0 ? [`${count(narrowGrid, 'way is', 'ways are')} narrower than ${LEAST_GRID_MM} mm`] : [])];
    return [
      `By hand: possible${slivers > 0 ? `; ${strips} may stay behind` : ''}${islands > 0 ? `; ${count(islands, 'island', 'islands')} to push out` : ''}.`,
      `With stripping tools: ${tools.length === 0 ? 'nothing is in the way' : tools.join('; ')}${islands > 0 ? `; pins for ${count(islands, 'island', 'islands')}` : ''}.`,
      `With blanking: ${blanking.length === 0 ? 'nothing is in the way' : blanking.join('; ')}.`,
    ];
  },
  frame: 'Frame left to hold the sheet by',
  edges: { gripper: 'gripper edge', tail: 'tail', left: 'left side', right: 'right side' },
  pieces: 'Pieces of waste',
  piece: 'piece',
  island: (number) => `island ${number}`,
  web: (number) => `web ${number}, hangs at the edge`,
  place: 'place, mm from the lower left corner',
  area: 'area',
  width: 'least width',
  length: 'length',
  atLeast: (length) => `${length} or more`,
  under: (length) => `under ${length}`,
  slivers: (limit) => `Strips narrower than ${limit}`,
  corridors: 'Straight ways and long scrap',
  grid: ({ corridors, blanksInCell }) => [`Straight ways: ${corridors.x.length} away from the gripper edge, ${corridors.y.length} along it; ${blanksInCell === 1 ? 'each blank stands in a cell of its own' : `up to ${blanksInCell} blanks stand in one cell`}.`],
  scrap: 'straight scrap',
  scrapAt: ({ where, from }, format) => {
    if (where === 'corridor x') return `way at ${format.length(from)} from the left`;
    return where === 'corridor y' ? `way at ${format.length(from)} from the gripper edge` : englishStripping.edges[where];
  },
  chopping: 'chopping rules',
  more: (number) => `${number} more are not listed.`,
  slots: (number) => `${number === 1 ? 'One of the strips is a slot of a blank itself and is' : `${number} of the strips are slots of the blanks themselves and are`} there in every layout.`,
  choice: englishStrippingChoice,
  marked: { strip: (limit) => `strip narrower than ${limit}`, island: 'island, numbered', way: 'straight way' },
  islands: 'islands',
  ways: 'straight ways away from the gripper + along it',
};
