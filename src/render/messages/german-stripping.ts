import { LEAST_FRAME_MM, LEAST_GRID_MM } from '../../press/stripping.ts';
import { islandsOf, strippingHindrances, type StrippingWords } from './english-stripping.ts';
import { germanStrippingChoice } from './german-stripping-choice.ts';

const count = (number: number, one: string, many: string) => `${number === 0 ? 'keine' : number} ${number === 1 ? one : many}`;

export const germanStripping: StrippingWords = {
  title: 'Ausbrechen',
  answer: (stripping, format) => `Lose Inseln: ${islandsOf(stripping) || 'keine'}. Stege schmaler als ${format.length(stripping.leastWidth)}: ${stripping.slivers.length || 'keine'}.`,
  modes: 'Wie ausgebrochen werden kann',
  verdicts: (stripping, format) => {
    const { slivers, islands, narrowFrame, blanksInCell, narrowGrid } = strippingHindrances(stripping);
    const strips = `${count(slivers, 'Steg', 'Stege')} unter ${format.length(stripping.leastWidth)}`;
    const tools = [...(slivers > 0 ? [`${strips} können reißen`] : []), ...(narrowFrame.length > 0 ? [`weniger als ${LEAST_FRAME_MM} mm Rahmen: ${narrowFrame.map((edge) => germanStripping.edges[edge]).join(' und ')}`] : [])];
    const blanking = [...tools, ...(blanksInCell > 1 ? [`kein gerader Weg trennt alle Nutzen: bis zu ${blanksInCell} stehen in einem Feld des Gitters`] : []), ...(narrowGrid > 0 ? [`${count(narrowGrid, 'Weg', 'Wege')} schmaler als ${LEAST_GRID_MM} mm`] : [])];
    return [
      `Von Hand: möglich${slivers > 0 ? `; ${strips} können hängen bleiben` : ''}${islands > 0 ? `; ${count(islands, 'Insel', 'Inseln')} herauszudrücken` : ''}.`,
      `Mit Ausbrechwerkzeug: ${tools.length === 0 ? 'nichts steht im Weg' : tools.join('; ')}${islands > 0 ? `; Stifte für ${count(islands, 'Insel', 'Inseln')}` : ''}.`,
      `Mit Nutzentrennung: ${blanking.length === 0 ? 'nichts steht im Weg' : blanking.join('; ')}.`,
    ];
  },
  frame: 'Rahmen, der den Bogen hält',
  edges: { gripper: 'Greiferkante', tail: 'Bogenende', left: 'linke Seite', right: 'rechte Seite' },
  pieces: 'Abfallstücke',
  piece: 'Stück',
  island: (number) => `Insel ${number}`,
  web: (number) => `Gitter ${number}, hängt am Rand`,
  place: 'Ort, mm von der linken unteren Ecke',
  area: 'Fläche',
  width: 'kleinste Breite',
  length: 'Länge',
  atLeast: (length) => `${length} oder mehr`,
  under: (length) => `unter ${length}`,
  slivers: (limit) => `Stege schmaler als ${limit}`,
  corridors: 'Gerade Wege und langer Abfall',
  grid: ({ corridors, blanksInCell }) => [`Gerade Wege: ${corridors.x.length} vom Greifer weg, ${corridors.y.length} an ihm entlang; ${blanksInCell === 1 ? 'jeder Nutzen steht in einem eigenen Feld' : `bis zu ${blanksInCell} Nutzen stehen in einem Feld`}.`],
  scrap: 'gerader Abfall',
  scrapAt: ({ where, from }, format) => {
    if (where === 'corridor x') return `Weg bei ${format.length(from)} von links`;
    return where === 'corridor y' ? `Weg bei ${format.length(from)} von der Greiferkante` : germanStripping.edges[where];
  },
  chopping: 'Trennmesser',
  more: (number) => `${number} weitere sind nicht aufgeführt.`,
  slots: (number) => `${number === 1 ? 'Einer der Stege ist ein Schlitz des Nutzens selbst und' : `${number} der Stege sind Schlitze der Nutzen selbst und`} in jeder Anordnung da.`,
  choice: germanStrippingChoice,
  marked: { strip: (limit) => `Steg schmaler als ${limit}`, island: 'Insel, nummeriert', way: 'gerader Weg' },
  islands: 'Inseln',
  ways: 'gerade Wege vom Greifer weg + an ihm entlang',
};
