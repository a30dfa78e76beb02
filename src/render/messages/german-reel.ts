import { upsOf } from '../reel-facts.ts';
import type { ReelWords } from './english-reel.ts';
import { germanCounted } from './german-counted.ts';

const zuschnitte = (count: number, format?: Parameters<ReelWords['answer']>[1]) => germanCounted(count, 'Nutzen', 'Nutzen', format);

/** Ein Abschnitt ist, was auf einmal von der Rolle geschnitten wird. */
export const germanReel: ReelWords = {
  title: (facts, format) => `${facts.name}: ${zuschnitte(upsOf(facts))} auf einer Rolle, ${format.length(facts.reelWidth)} breit`,
  answer: (facts, format) => {
    const { cutOff, leastCutOff, reelWidth } = facts;
    const known = cutOff > leastCutOff ? `kein Abschnitt unter ${format.length(leastCutOff)} ist möglich` : 'kürzer geht es nicht';
    return `${zuschnitte(upsOf(facts))} auf einer Rolle von ${format.length(reelWidth)}: Abschnitt ${format.length(cutOff)}; ${known}; ${format.percent(facts.yield)} davon sind Zuschnitte.`;
  },
  headings: { length: 'Wie lang', blanks: 'Was darauf liegt', assumed: 'Was angenommen wurde', caution: 'Bevor eine Stanzform bestellt wird' },
  labels: {
    cutOff: 'Abschnitt', least: 'kürzer nicht möglich als', difference: 'Abstand dazu', yield: 'Ausnutzung', reelPerThousand: 'Rolle für 1000 Abschnitte', areaPerThousand: 'Fläche von 1000 Abschnitten', stopped: 'warum die Suche endete', time: 'Zeit',
    reelWidth: 'Breite der Rolle', ups: 'Nutzen', gap: 'Abstand',
  },
  columns: ['Entwurf', 'Nutzen', 'Zuschnitt', 'Drehungen'],
  alongMachine: 'in Laufrichtung der Maschine',
  leastMeans: 'aus der Fläche der Zuschnitte mit ihrem Teil des Abstands und aus denen, die nicht nebeneinander liegen können',
  closed: 'keiner: kürzer geht es nicht',
  open: (mm, share, format) => `${format.length(mm)} (${format.percent(share)}) offen`,
  perThousand: (cutOff, format) => `${format.length(cutOff)} × 1000`,
  perThousandMeans: (ups, format) => `${zuschnitte(1000 * ups, format)}, ohne Einrichten und Fortdruckzuschuss`,
  assumed: ({ gap, bleed, seed }, format) => [
    `Der Abstand von ${format.length(gap)} gilt zwischen den Zuschnitten eines Abschnitts; sie dürfen bis an die Ränder der Rolle und an den Schnitt reichen. Braucht der Schnitt oder ein Längsmesser Platz, geben Sie eine schmalere Rolle an und zählen ihn zum Abschnitt dazu.`,
    ...(bleed > 0 ? [`Der Beschnitt von ${format.length(bleed)} bleibt auf der Rolle und innerhalb des Abschnitts; Messer halten so viel Abstand von seinen Rändern.`] : []),
    `Derselbe Auftrag, Aufwand und Startzahl (${seed}) geben denselben Standbogen.`,
  ],
  caution: 'Dies ist ein Plan. Messer, Abstände und Ränder werden mit der Anleitung der Maschine und dem Stanzformenbauer abgestimmt, bevor eine Form bestellt wird. An Druckmaschinen, Rollenschneidern und Stanzen arbeiten ausgebildete Leute nach den örtlichen Vorschriften.',
};
