import { z } from 'zod';

const positive = z.number().positive();
const seconds = z.number().min(0).max(3600);

/** A guillotine as planning counts with it. Millimetres. */
export const guillotineSchema = z.looseObject({
  name: z.string().optional(),
  /** Of the cut: no pile is longer along the knife. */
  width: positive.max(10_000),
  /** Height of a lift, what is cut at one go. */
  liftHeight: positive.max(500),
  secondsPerCut: seconds,
  /** A quarter turn of one pile. */
  secondsPerTurn: seconds,
  /** To jog a lift, load it and take it away. */
  secondsPerLift: seconds,
  setUpMinutes: z.number().min(0).max(1440),
  hourlyRate: z.number().min(0).optional(),
});
export type Guillotine = z.infer<typeof guillotineSchema>;

/** Invented, for trying out; named so in every report. The lift is common practice for label stock, no source. */
export const INVENTED_GUILLOTINE: Guillotine = {
  name: 'invented demonstration guillotine',
  width: 1370,
  liftHeight: 100,
  secondsPerCut: 9,
  secondsPerTurn: 10,
  secondsPerLift: 75,
  setUpMinutes: 12,
};
