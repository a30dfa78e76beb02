import type { DrawingWords } from './english-drawing.ts';
import { frenchCounted } from './french-counted.ts';

const from: DrawingWords['from'] = { unit: 'd’après le tracé', 'assumed 96 per inch': 'supposé 96 par pouce', 'assumed millimetres': 'millimètres supposés', 'given scale': 'échelle donnée', 'given width': 'largeur donnée' };

export const frenchDrawing: DrawingWords = {
  title: (file, blanks) => `${file} : ${blanks === 1 ? 'un flan' : frenchCounted(blanks, 'flan')}`,
  blank: (number, yAxis, [x, y]) => `Flan ${number}, coin ${yAxis === 'up' ? 'inférieur' : 'supérieur'} gauche à ${x} ; ${y} mm`,
  labels: { scale: 'échelle', grain: 'fibres', tolerances: 'tolérances', fingerprint: 'empreinte', size: 'taille', area: 'surface', openings: 'ouvertures', rules: 'filets' },
  scale: (mmPerUnit, source, format) => `${format.number(mmPerUnit, 6)} mm par unité (${from[source]})`,
  from,
  grain: (axis) => (axis === undefined ? 'sens non précisé' : `sens ${axis}`),
  tolerances: (joinMm, closeMm, format) => `les bouts à moins de ${format.length(joinMm)} n’en font qu’un ; les vides jusqu’à ${format.length(closeMm)} sont fermés et signalés`,
  area: (area, openings) => `${area}${openings > 0 ? ' (ouvertures non déduites)' : ''}`,
  severity: { note: 'note', warning: 'alerte', error: 'erreur' },
  at: (place) => `À ${place}.`,
  leftOut: 'laissé de côté',
  picture: { title: (file) => `${file}, tel que compris`, description: (blanks, remarks) => `${frenchCounted(blanks, 'flan')}, ${frenchCounted(remarks, 'remarque')}` },
};
