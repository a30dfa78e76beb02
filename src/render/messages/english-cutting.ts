import type { CutStep } from '../../estimate/guillotine/cut-sequence.ts';
import type { CuttingFacts } from '../cutting-facts.ts';
import type { Format } from '../format.ts';
import { counted } from './english-counted.ts';


/** Words of a cut list. */
export const englishCutting = {
  answer: (ups: number, size: string, { exact, dieCut }: CuttingFacts, used: string) => {
    const known = exact ? 'no pattern of straight cuts holds more' : 'whether another pattern of straight cuts holds more is not proved';
    const compared = dieCut.ups > ups ? `die-cut, ${dieCut.ups} go on` : 'die-cutting was found to hold no more';
    return `${ups} ups on ${size} by straight cuts; ${known}; ${compared}; ${used}.`;
  },
  headings: { list: 'Cut list', time: 'Cutting time', picture: 'The cuts' },
  pattern: { label: 'straight cuts', exact: 'best proved', open: 'best found', meaning: 'every division of the sheet by cuts from edge to edge that can matter was weighed' },
  dieCut: { label: 'die-cut', value: ({ ups, limit }: CuttingFacts['dieCut']) => (ups === limit ? `${ups} ups, the most possible` : `${ups} ups found, at most ${limit}`) },
  step: (number: number) => `cut ${number}`,
  places: ({ places }: CutStep, format: Format) => `${places.map((mm) => format.bareLength(mm)).join(', ')} ${format.unit}`,
  pile: ({ axis, piles, turned, width, height }: CutStep, format: Format) =>
    `${turned ? 'turn a quarter, ' : ''}${piles === 1 ? 'pile' : `${piles} piles alike, each`} ${format.size(width, height)}, from its ${axis === 'x' ? 'lay' : 'gripper'} side`,
  labels: { machine: 'guillotine', strokes: 'strokes a lift', turns: 'piles turned a lift', lift: 'a lift', minutes: 'minutes a lift', perThousand: 'minutes per 1000 sheets', perLabels: 'minutes per 1000 labels', setUp: 'set-up' },
  lift: ({ liftHeight, caliper, time }: CuttingFacts, format: Format) =>
    time.sheetsPerLift === undefined ? `${format.length(liftHeight)}; sheets are open, the thickness is not given (--board)` : `${format.number(time.sheetsPerLift, 0)} sheets, ${format.length(liftHeight)} at ${format.number(caliper!, 3)} mm`,
  minutes: (value: number, format: Format, decimals = 1) => `${format.number(value, decimals)} min`,
  alikeNote: 'Piles alike lie side by side under the knife as far as its width allows.',
  picture: (strokes: number, ups: number) => `${counted(strokes, 'stroke')} for ${ups} labels; the numbers are those of the cut list`,
  caution:
    'This is a plan. Guillotines are dangerous: they are worked by trained people only, with guards and two-hand control in order, under the machine’s own manual and local rules. Cut places are checked on a first sheet before a lift is cut. For food packs the responsible person chooses inks, varnishes and board under local law.',
};

export type CuttingWords = typeof englishCutting;
