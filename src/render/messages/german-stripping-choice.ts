import type { BrokenCondition } from '../../estimate/stripping-conditions.ts';
import { LEAST_FRAME_MM, LEAST_GRID_MM, type StrippingMode, type StrippingWish } from '../../press/stripping.ts';
import type { Format } from '../format.ts';
import { PRICED_BLANKS, priceOfUps, type StrippingChoiceWords } from './english-stripping-choice.ts';

const phrases = (broken: readonly BrokenCondition[], { leastStrip }: Omit<StrippingWish, 'rule'>, format: Format) => broken.map(({ condition, count }) => ({
  strips: `${count} ${count === 1 ? 'Steg ist' : 'Stege sind'} schmaler als ${format.length(leastStrip)}`,
  islands: `${count} ${count === 1 ? 'Insel ist' : 'Inseln sind'} zwischen Nutzen eingeschlossen`,
  pins: `${count} ${count === 1 ? 'Insel hat' : 'Inseln haben'} keinen Platz für einen Stift von ${format.length(leastStrip)}`,
  frame: `weniger als ${LEAST_FRAME_MM} mm Rahmen an ${count} von Bogenende und Seiten`,
  ways: `keine geraden Wege von ${LEAST_GRID_MM} mm trennen alle Nutzen`,
})[condition]).join(', ');

const MODES: Readonly<Record<StrippingMode, string>> = { 'by-hand': 'von Hand', 'with-tools': 'mit Ausbrechwerkzeug', 'with-blanking': 'mit Nutzentrennung' };

const sheetsText = (more: number, fewer: number, format: Format) => {
  const { least, most, share } = priceOfUps(more, fewer);
  return `${format.percent(share)} mehr Bogen (${format.number(most, 0)} statt ${format.number(least, 0)} für ${format.number(PRICED_BLANKS, 0)} Zuschnitte)`;
};

export const germanStrippingChoice: StrippingChoiceWords = {
  heading: 'Ausbrechen',
  modes: MODES,
  asks: ({ mode, leastStrip }, format) => {
    const strips = `Abfall zwischen zwei Nutzen von mindestens ${format.length(leastStrip)} Breite`;
    const frame = `mindestens ${LEAST_FRAME_MM} mm Rahmen an Bogenende und Seiten, Platz für einen Stift in jeder Insel zwischen Nutzen`;
    const asked = { 'by-hand': `${strips}, keine zwischen Nutzen eingeschlossenen Inseln`, 'with-tools': `${strips}, ${frame}`, 'with-blanking': `${strips}, ${frame}, jeden Nutzen in einem eigenen Feld zwischen geraden Wegen von mindestens ${LEAST_GRID_MM} mm` }[mode];
    return `Ausbrechen ${MODES[mode]} verlangt ${asked} (Breiten: übliche Praxis, ohne Quelle).`;
  },
  verdict: (broken, wish, format) => (broken.length === 0 ? 'Diese Anordnung hält das ein: getrennt von der Suche an den wahren Kurven geprüft.' : `Diese Anordnung hält das nicht ein: ${phrases(broken, wish, format)}.`),
  lead: ({ wish, broken, other }, ups, format) => {
    if (wish.rule === 'must' && other) return `${other.ups} Nutzen sind möglich, aber ${phrases(other.broken, wish, format)}: ${ups} halten die Regel für das Ausbrechen ${MODES[wish.mode]} ein.`;
    return broken.length === 0 ? `Sie bricht sich ${MODES[wish.mode]} sauber aus.` : `Sie bricht sich ${MODES[wish.mode]} nicht sauber aus: ${phrases(broken, wish, format)}.`;
  },
  price: ({ wish, broken, other, limit }, ups, format) => [
    ...(other && wish.rule === 'must' ? [`Der Preis des sauberen Ausbrechens: ${ups} Nutzen brauchen ${sheetsText(other.ups, ups, format)} als ${other.ups}.`] : []),
    ...(other && wish.rule === 'prefer' ? [`${other.ups} Nutzen würden es einhalten (--stripping-rule must), für ${sheetsText(ups, other.ups, format)}.`] : []),
    ...(broken.length > 0 && !other ? ['Keine Anordnung wurde gefunden, die es einhält.'] : []),
    ...(limit === undefined ? [] : [limit === (broken.length === 0 ? ups : other?.ups) ? `Keine Anordnung, die es einhält, fasst mehr als ${limit}: bewiesen.` : `Höchstens ${limit} können es einhalten; ob es mehr sind als gefunden, ist offen.`]),
  ],
  limitStays: 'Die Obergrenze oben gilt für den Bogen ohne diese Regel, und mit ihr erst recht.',
  limitMet: 'die Obergrenze unter der Regel für das Ausbrechen ist erreicht: keine Anordnung, die sie einhält, fasst mehr',
  other: (ups, kept) => `${ups} Nutzen, ${kept ? 'sauber auszubrechen' : 'nicht sauber auszubrechen'}`,
  remedy: ({ mode, leastStrip }) => `nest --stripping ${mode} --stripping-rule must --least-strip ${leastStrip} sucht die beste Anordnung, die es einhält.`,
};
