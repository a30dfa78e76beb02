/** Names of figures and of what goes into them, as formulas write them, and names of records of our own. */
export const FIGURE_NAMES = [
  'quantity', 'sheets', 'ups', 'sheet area', 'grammage', 'caliper', 'blank area',
  'board', 'board weight', 'board price', 'board per thousand', 'board yield', 'price per tonne', 'pile height',
  'plates', 'number of plates', 'plate price', 'die', 'die price',
  'ink', 'ink a colour', 'coverage', 'ink coverage', 'ink film', 'ink price', 'inked area', 'price',
  'varnish', 'varnish on board', 'varnish film', 'varnish price', 'coated area', 'film',
  'makeready', 'through', 'speed', 'hours', 'hourly rate',
  'cartons per case', 'count given', 'case length', 'case length or cartons per case', 'rows', 'cases', 'cases per pallet', 'cases per layer', 'layers', 'layers on a pallet', 'pallets', 'pallet height', 'deck', 'case height',
  'thickness', 'thickness glued flat', 'thickness at the seam', 'thickness measured', 'layers of board',
  'weight of one', 'weight given', 'net weight', 'gross weight', 'case weight', 'pallet weight',
  'packing material', 'packing per thousand', 'case price', 'pallets bought', 'pallet price', 'freight', 'freight rate', 'freight per tonne', 'freight per pallet',
  'carbon of the board', 'carbon of the waste', 'factor', 'cost', 'cost per thousand', 'margin', 'price per thousand', 'form', 'version', 'design',
  'published German table', 'invented demonstration rates',
] as const;
export type FigureName = (typeof FIGURE_NAMES)[number];

/** Machines that cost time, by their nouns in formulas. */
export const MACHINE_NOUNS = ['press', 'coater', 'foil press', 'embosser', 'die-cutter', 'stripper', 'gluer', 'packer'] as const;
export type MachineNoun = (typeof MACHINE_NOUNS)[number];

/** What is said of a machine: `press hours`, `gluer speed`. */
export type MachineFigure = 'hours' | 'rate' | 'speed' | 'makeready';

export interface FigureWords {
  /** `{products}` stands for what is made, in the plural. */
  readonly names: Readonly<Record<FigureName, string>>;
  readonly machines: Readonly<Record<MachineNoun, string>>;
  readonly machineFigures: Readonly<Record<MachineFigure, (machine: string) => string>>;
  readonly rowOfCase: (thickness: string) => string;
}

const NUMBERED = /^(ink|price|form|version|design|blank area) (\d+)$/;
const OF_MACHINE = /^(.+) (hours|rate|speed|makeready)$/;
const ROW_OF_CASE = /^row of a case, by (.+)$/;

/** The name of a figure in a language; one that no table has stands as it is, as does the name of a shop's own record. */
export function figureName(name: string, words: FigureWords, products: string): string {
  const { names, machines, machineFigures } = words;
  if (Object.hasOwn(names, name)) return names[name as FigureName].replace('{products}', products);
  if (Object.hasOwn(machines, name)) return machines[name as MachineNoun];
  const numbered = NUMBERED.exec(name);
  if (numbered) return `${names[numbered[1] as 'ink' | 'price']} ${numbered[2]}`;
  const ofMachine = OF_MACHINE.exec(name);
  if (ofMachine && Object.hasOwn(machines, ofMachine[1]!)) return machineFigures[ofMachine[2] as MachineFigure](machines[ofMachine[1] as MachineNoun]);
  const row = ROW_OF_CASE.exec(name);
  return row ? words.rowOfCase(figureName(row[1]!, words, products)) : name;
}
