import type { NestFacts } from '../nest-facts.ts';
import { englishCutting } from './english-cutting.ts';
import type { ReportWords } from './words.ts';

const USED: Readonly<Record<NestFacts['product'], string>> = { carton: 'is carton', label: 'is label', blank: 'is used' };
const USE: Readonly<Record<NestFacts['product'], string>> = { carton: 'carton', label: 'label', blank: 'blanks' };

/** Pairs of stations named in a row before the rest is only counted. */
const NAMED_PAIRS = 4;

export const englishReport: ReportWords = {
  title: ({ design, ups, sheet }, format) => `${design.name}: ${ups} ups on ${format.size(sheet.width, sheet.height)}`,
  answer: (facts, format) => {
    const { ups, sheet, product } = facts;
    const used = `${format.percent(facts.yield)} of the sheet ${USED[product]}`;
    if (facts.cutting) return englishCutting.answer(ups, format.size(sheet.width, sheet.height), facts.cutting, used);
    return `${ups} ups on ${format.size(sheet.width, sheet.height)}; ${limitWords(facts)}; ${used}.`;
  },
  headings: {
    why: (ups) => `Why ${ups}`,
    board: 'Where the board goes',
    bleed: 'Bleed that each edge keeps',
    assumed: 'What was assumed',
    caution: 'Before a die is ordered',
    history: 'How the search went',
    picture: 'The sheet',
  },
  labels: {
    source: 'layout found by',
    limit: 'limit',
    difference: 'best to limit',
    stopped: 'why the search stopped',
    time: 'time',
    gap: 'gap',
    bleed: 'bleed',
    rotations: 'rotations',
    blank: 'blank',
    yield: 'yield',
    cell: 'densest repeat met',
    sheet: 'sheet',
    seed: 'seed',
    atMost: 'at most',
    design: 'design',
  },
  bounds: {
    area: { name: 'area', meaning: 'limit known only from area: each blank with its share of the gap takes board, and the sheet has only so much' },
    ovals: { name: 'ovals', meaning: 'round, oval and other bulging blanks cannot lie closer than in their densest lattice, the edges of the sheet counted' },
    hexagon: { name: 'hexagon', meaning: 'each blank takes at least the smallest hexagon around it and its share of the gap, however they are turned' },
    pockets: { name: 'pockets', meaning: 'every place a blank could take was sorted into pockets that hold one blank each; so many pockets at most can be filled' },
    rectangles: { name: 'rectangles', meaning: 'every blank holds a rectangle, and no more such rectangles can lie on the sheet' },
  },
  noLimit: 'not proved',
  stopped: {
    'limit-met': 'the limit was met: no layout can hold more',
    effort: 'the effort was used up; more effort may find more',
    seconds: 'the time given was used up; more time may find more',
    interrupted: 'interrupted; the best layout so far is kept',
  },
  sources: {},
  causes: (product) => ({
    blanks: USE[product],
    gripper: 'gripper margin',
    tail: 'tail margin',
    'side-margins': 'side margins',
    'colour-bar': 'colour bar',
    'keep-outs': 'areas kept free',
    gaps: 'gaps between knives',
    between: 'offcuts between blanks',
    edges: 'offcuts at the edges',
  }),
  difference: (ups, limit, format) => (limit === ups ? 'none: this is the most possible' : `${limit - ups} ${limit - ups === 1 ? 'up' : 'ups'} (${format.percent((limit - ups) / ups)}) not settled`),
  gap: ({ gap, ruleSavedMm }, format) => `${format.length(gap)} knife to knife${ruleSavedMm === undefined ? '' : `, or one knife for two blanks: ${format.length(ruleSavedMm)} of rule saved`}`,
  bleed: ({ bleed, bleedMeeting }, format) => `${format.length(bleed)}${bleedMeeting === 'cut' ? ', cut at the middle of the gap' : ''}`,
  facing: (pairs) => {
    const named = pairs.slice(0, NAMED_PAIRS).map(([a, b]) => `${a} and ${b}`).join(', ');
    const more = pairs.length > NAMED_PAIRS ? ` and ${pairs.length - NAMED_PAIRS} more pairs` : '';
    return `between stations ${named}${more}`;
  },
  otherEdges: 'all other edges',
  improvement: ({ ups, source, work, seconds }, raised, format) => `${raised ? `${ups} ups` : `${ups} ups, better arranged,`} by ${source} after ${seconds === undefined ? `${format.number(work, 0)} steps` : format.duration(seconds)}`,
  leastSheet: ({ ups, least, sheet, stepMm, impossibleBelowMm }, format) => {
    const steps = `in steps of ${format.length(stepMm)}`;
    if (least === 'area') return `The least board found for ${ups} ups, sides ${steps}: ${format.size(sheet.width, sheet.height)}.`;
    const side = format.length(least === 'depth' ? sheet.height : sheet.width);
    const known = impossibleBelowMm === undefined ? '' : `; under ${format.length(impossibleBelowMm)} they are proved impossible`;
    return `The ${least === 'depth' ? 'shortest' : 'narrowest'} sheet found for ${ups} ups, ${steps}: ${side} ${least === 'depth' ? 'deep' : 'wide'}${known}.`;
  },
  axes: { ups: 'ups', seconds: 'seconds', work: 'steps of work' },
  caution:
    'This is a plan. Knives, clearances and gripper margins are confirmed with the machine’s own manual and the die maker before a die is ordered. Presses, guillotines and die-cutters are worked by trained people under local rules. ' +
    'For food packs the responsible person chooses inks, varnishes and board under local law.',
};

function limitWords({ ups, limit }: NestFacts): string {
  if (!limit) return 'how many more could fit is not proved';
  if (limit.ups === ups) return `no more can fit (${englishReport.bounds[limit.by].name})`;
  return limit.by === 'area' ? `at most ${limit.ups} can fit, a limit known only from area` : `at most ${limit.ups} can fit (${englishReport.bounds[limit.by].name})`;
}
