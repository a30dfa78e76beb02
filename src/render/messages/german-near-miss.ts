import type { Format } from '../format.ts';
import type { NearMiss } from '../near-miss-facts.ts';
import type { NearMissWords } from './english-near-miss.ts';
import { changePhrase, triedPhrase, type ChangeWords, type Changed } from './near-miss-phrases.ts';

/** Flaps and dimensions of styles. */
const PARTS: Readonly<Record<string, string>> = {
  glueFlap: 'Klebelasche', tuckFlap: 'Einstecklasche', dustFlap: 'Staublasche', cornerFlap: 'Ecklasche', endFlap: 'Endlasche', length: 'Länge', width: 'Breite', depth: 'Tiefe', height: 'Höhe', side: 'Seite', diameter: 'Durchmesser', top: 'Durchmesser oben', bottom: 'Durchmesser unten',
};

const WORDS: ChangeWords = {
  open: { rotations: 'auch Vierteldrehungen erlaubt', 'common-knife': 'gemeinsames Messer zwischen Nachbarn', 'bar-tail': 'Kontrollstreifen am Bogenende', 'bar-gripper': 'Kontrollstreifen am Greifer', 'bar-centre': 'Kontrollstreifen in der Mitte', 'bar-none': 'kein Kontrollstreifen' },
  measured: {
    gap: ['Abstand', 'kleiner'], gripper: ['Greiferrand', 'kleiner'], tail: ['Rand am Bogenende', 'kleiner'], sides: ['Seitenränder', 'je Seite kleiner'], 'bar-height': ['Kontrollstreifen', 'niedriger'],
    'sheet-width': ['Bogen', 'breiter', true], 'sheet-height': ['Bogen', 'tiefer', true],
    'edge-top': ['Zuschnitt', 'kürzer an der oberen Kante', true], 'edge-bottom': ['Zuschnitt', 'kürzer an der unteren Kante', true], 'edge-left': ['Zuschnitt', 'kürzer an der linken Kante', true], 'edge-right': ['Zuschnitt', 'kürzer an der rechten Kante', true],
  },
  flap: (name) => PARTS[name] ?? name,
  less: 'weniger',
  bleedsCut: (bleed) => `Beschnitt in der Mitte getrennt (je ${bleed})`,
  upTo: (length) => `bis ${length}`,
};

const change = (one: Changed, format: Format) => changePhrase(one, WORDS, format);

export const germanNearMiss: NearMissWords = {
  heading: 'Knapp verfehlt',
  change,
  head: { change: 'eine einzige Änderung', ups: 'Nutzen', board: ({ boardUnit }) => `${boardUnit.name}/1000 gespart`, m2: ({ boardUnit }) => `${boardUnit.name} im Jahr`, kg: 'kg im Jahr', money: (currency) => `${currency} im Jahr` },
  none: ({ ups }) => `Keine einzelne Änderung, die versucht wurde, bringt mehr als ${ups} Nutzen.`,
  best: (facts, format) => {
    const [best] = facts.found;
    if (!best) return germanNearMiss.none(facts);
    const worth = best.saved.moneyPerYear === undefined || facts.yearly === undefined ? '' : `, ${format.number(best.saved.moneyPerYear, 0)} ${facts.currency} im Jahr bei einer Jahresmenge von ${format.number(facts.yearly, 0)}`;
    return `${change(best, format).replace(/^./, (letter) => letter.toUpperCase())}: ${best.ups} Nutzen statt ${facts.ups}, ${format.board(best.saved.m2PerThousand, 2)} Karton weniger je tausend${worth}.`;
  },
  stopped: ({ tried, changes }) => `Beendet, bevor alles versucht war: ${tried} von ${changes} Änderungen.`,
  searched: ({ stepMm }, format) => `Gesucht in Schritten von ${format.length(stepMm)}, mit kurzen Suchen am wahren Umriss; zu jeder Aussage gehört ein geprüfter Standbogen. Eine längere Suche kann finden, dass weniger genügt.`,
  notFound: ({ notFound }, format) => `Versucht und für sich allein vergeblich: ${notFound.map((one) => triedPhrase(one, WORDS, format)).join(', ')}.`,
  counts: ({ counts, yearly, found }, format) => (yearly === undefined || !found.some(({ saved }) => saved.moneyPerYear !== undefined) ? undefined : `Ein Jahr sind ${format.number(yearly, 0)} Stück; das Geld zählt ${counts === 'board' ? 'nur den Karton' : 'Karton und die Stunden von Druckmaschine und Stanze'}, Einrichten und eine neue Stanzform nicht.`),
  caution: 'Engere Abstände und Ränder, gemeinsame Messer und gedrehte Fasern müssen Stanzformenbauer, Anleitung der Maschine und Kunde zulassen.',
  thumbnail: (miss: NearMiss, format) => [`${miss.ups} Nutzen`, change(miss, format)],
  picture: 'Knapp verfehlt: die Standbogen',
};
