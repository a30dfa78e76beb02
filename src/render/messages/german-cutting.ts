import type { CuttingWords } from './english-cutting.ts';
import { germanCounted } from './german-counted.ts';

/** Eine Lage ist, was auf einmal unter dem Messer liegt. */
export const germanCutting: CuttingWords = {
  answer: (ups, size, { exact, dieCut }, used) => {
    const known = exact ? 'kein Muster gerader Schnitte bringt mehr' : 'ob ein anderes Muster gerader Schnitte mehr bringt, ist nicht bewiesen';
    const compared = dieCut.ups > ups ? `gestanzt sind es ${dieCut.ups}` : 'auch gestanzt wurden nicht mehr gefunden';
    return `${ups} Nutzen auf ${size} mit geraden Schnitten; ${known}; ${compared}; ${used}.`;
  },
  headings: { list: 'Schnittliste', time: 'Schneidezeit', picture: 'Die Schnitte' },
  pattern: { label: 'gerade Schnitte', exact: 'bewiesen das Beste', open: 'das Beste, was gefunden wurde', meaning: 'jede Teilung des Bogens durch Schnitte von Kante zu Kante, auf die es ankommen kann, wurde abgewogen' },
  dieCut: { label: 'gestanzt', value: ({ ups, limit }) => (ups === limit ? `${ups} Nutzen, mehr sind nicht möglich` : `${ups} Nutzen gefunden, höchstens ${limit}`) },
  step: (number) => `Schnitt ${number}`,
  places: ({ places }, format) => `${places.map((mm) => format.bareLength(mm)).join('; ')} ${format.unit}`,
  pile: ({ axis, piles, turned, width, height }, format) =>
    `${turned ? 'eine Vierteldrehung, ' : ''}${piles === 1 ? 'Stapel' : `${piles} gleiche Stapel, je`} ${format.size(width, height)}, gemessen von der ${axis === 'x' ? 'Seitenanlage' : 'Greiferkante'}`,
  labels: { machine: 'Schneidemaschine', strokes: 'Schnitte je Lage', turns: 'gedrehte Stapel je Lage', lift: 'eine Lage', minutes: 'Minuten je Lage', perThousand: 'Minuten je 1000 Bogen', perLabels: 'Minuten je 1000 Etiketten', setUp: 'Einrichten' },
  lift: ({ liftHeight, caliper, time }, format) =>
    time.sheetsPerLift === undefined ? `${format.length(liftHeight)}; wie viele Bogen, ist offen, denn die Dicke fehlt (--board)` : `${format.number(time.sheetsPerLift, 0)} Bogen, ${format.length(liftHeight)} bei ${format.number(caliper!, 3)} mm`,
  minutes: (value, format, decimals = 1) => `${format.number(value, decimals)} min`,
  alikeNote: 'Gleiche Stapel liegen nebeneinander unter dem Messer, soweit seine Breite reicht.',
  picture: (strokes, ups) => `${germanCounted(strokes, 'Schnitt', 'Schnitte')} für ${ups} Etiketten; die Nummern sind die der Schnittliste`,
  caution:
    'Dies ist ein Plan. Schneidemaschinen sind gefährlich: nur ausgebildete Leute arbeiten daran, mit Schutzeinrichtungen und Zweihandbedienung in Ordnung, nach der Anleitung der Maschine und den örtlichen Vorschriften. Die Schnittmaße werden an einem ersten Bogen geprüft, bevor eine Lage geschnitten wird. Bei Lebensmittelpackungen wählt die verantwortliche Person Farben, Lacke und Karton nach dem geltenden Recht.',
};
