import type { DrawingWords } from './english-drawing.ts';
import { germanCounted } from './german-counted.ts';

const from: DrawingWords['from'] = { unit: 'aus der Zeichnung', 'assumed 96 per inch': 'angenommen 96 je Zoll', 'assumed millimetres': 'angenommen Millimeter', 'given scale': 'Maßstab angegeben', 'given width': 'Breite angegeben' };

export const germanDrawing: DrawingWords = {
  title: (file, blanks) => `${file}: ${blanks === 1 ? 'ein Zuschnitt' : `${blanks} Zuschnitte`}`,
  blank: (number, yAxis, [x, y]) => `Zuschnitt ${number}, Ecke ${yAxis === 'up' ? 'unten links' : 'oben links'} bei ${x}; ${y} mm`,
  labels: { scale: 'Maßstab', grain: 'Laufrichtung', tolerances: 'Toleranzen', fingerprint: 'Fingerabdruck', size: 'Größe', area: 'Fläche', openings: 'Öffnungen', rules: 'Linien' },
  scale: (mmPerUnit, source, format) => `${format.number(mmPerUnit, 6)} mm je Einheit (${from[source]})`,
  from,
  grain: (axis) => (axis === undefined ? 'nicht gesagt' : `längs ${axis}`),
  tolerances: (joinMm, closeMm, format) => `Enden innerhalb ${format.length(joinMm)} gelten als eins; Lücken bis ${format.length(closeMm)} werden geschlossen und genannt`,
  area: (area, openings) => `${area}${openings > 0 ? ' (Öffnungen nicht abgezogen)' : ''}`,
  severity: { note: 'Hinweis', warning: 'Warnung', error: 'Fehler' },
  at: (place) => `Bei ${place}.`,
  leftOut: 'weggelassen',
  picture: { title: (file) => `${file}, wie verstanden`, description: (blanks, remarks) => `${germanCounted(blanks, 'Zuschnitt', 'Zuschnitte')}, ${germanCounted(remarks, 'Bemerkung', 'Bemerkungen')}` },
};
