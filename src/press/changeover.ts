import { z } from 'zod';

const LONGEST = 24 * 60;
const wanted = `minutes from 0 to ${LONGEST} are wanted`;
const minutes = z.number(wanted).min(0, wanted).max(LONGEST, wanted);

const caliperClass = z.strictObject({
  name: z.string().min(1),
  /** Thickest stock of the class, mm; the last class may leave it open. */
  upTo: z.number().positive().optional(),
  /** Sheets an hour that planning counts with for this stock; else the press record's. */
  speed: z.number().positive().max(1e6).optional(),
});

/** What it takes to go from one form to the next on one press, minutes by cause. The shop's own figures. */
export const changeoverSchema = z.strictObject({
  name: z.string().optional(),
  /** A unit washed because its ink is not in the next form. */
  washUp: minutes,
  /** A unit filled with an ink that was not in the form before. */
  inkingUp: minutes,
  /** From one ink family to another; every unit is washed as well. */
  inkFamily: minutes,
  /** Another coating, coating begun or coating ended. */
  coating: minutes,
  /** Another sheet size: feeder, side lay and delivery are set. */
  sheetSize: minutes,
  /** From one class of thickness to the next; two classes apart take twice as long. */
  caliperClass: minutes,
  /** Another die, where the press or the line behind it changes the die with the form. */
  die: minutes,
  /** Thinnest first. */
  caliperClasses: z
    .array(caliperClass)
    .min(1)
    .refine((classes) => classes.every(({ upTo }, i) => (upTo === undefined ? i === classes.length - 1 : upTo > (classes[i - 1]?.upTo ?? 0))), 'classes go from thin to thick, each with "upTo" in mm; only the last may leave it out'),
});
export type ChangeoverTable = z.infer<typeof changeoverSchema>;

/** Invented, for trying out; named so in every report. */
export const INVENTED_CHANGEOVER: ChangeoverTable = {
  name: 'invented demonstration minutes',
  washUp: 8,
  inkingUp: 3,
  inkFamily: 25,
  coating: 12,
  sheetSize: 10,
  caliperClass: 6,
  die: 0,
  caliperClasses: [{ name: 'label paper', upTo: 0.15, speed: 11_000 }, { name: 'light board', upTo: 0.35, speed: 10_000 }, { name: 'board', upTo: 0.6, speed: 9000 }, { name: 'heavy board', speed: 7500 }],
};

/** Index of the class that a thickness falls into; undefined when it is thicker than the thickest class. */
export function caliperClassOf(table: ChangeoverTable, caliper: number): number | undefined {
  const index = table.caliperClasses.findIndex(({ upTo }) => upTo === undefined || caliper <= upTo);
  return index < 0 ? undefined : index;
}
