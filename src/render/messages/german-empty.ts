import type { englishEmpty } from './english-empty.ts';

/** Was das Pult sagt, wo noch nichts ist: der eine Schritt, der es bringt. */
export const germanEmpty: Readonly<Record<keyof typeof englishEmpty, string>> = {
  'empty-desk': 'Wählen Sie eine Zeichnung oder geben Sie die Maße einer Schachtel ein: Standbogen und Kosten folgen von selbst.',
  'empty-drawing': 'Zuerst kommt eine Zeichnung: Wählen Sie eine oder geben Sie die Maße einer Schachtel ein.',
  'empty-unreadable': 'Die Zeichnung lässt sich nicht verwenden: Feld 1 sagt, warum.',
  'empty-fields': 'Ein Maß oder eine Grenze lässt sich nicht verwenden: Berichtigen Sie die markierte Angabe in Feld 2 oder 3.',
  'empty-search': 'Es gibt keinen Standbogen: Warum, steht unter „Gefundene Standbogen“.',
  'empty-waiting': 'Der erste Standbogen ist gleich da.',
  'empty-versions': 'Fügen Sie eine Sorte hinzu und geben Sie die Menge an, dann verteilen Sie die Nutzen.',
  'to-drawing': 'Mit einer Zeichnung beginnen',
  'to-sheet': 'Zum Bogen',
  'to-layouts': 'Zur Suche',
  'search-known': '{ups} Nutzen, höchstens {limit} sind möglich.',
};
