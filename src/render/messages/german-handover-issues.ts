import type { MessageTable } from './catalogue.ts';

/** Remarks on marks, artwork and backs of a handover. */
export const germanHandoverIssues: MessageTable = {
  'artwork-bleed-missing': '{where}: An der Kante {edge} fehlen auf {lengthMm} mm von ({fromX:mm}, {fromY:mm}) bis ({toX:mm}, {toY:mm}) des Zuschnitts {missingMm} mm der {bleedMm} mm Beschnitt. Ziehen Sie den Druck bis dorthin.',
  'artwork-text-near-knife': '{where}: Der Text „{text}“ bei ({x:mm}, {y:mm}) des Zuschnitts steht {mm} mm von einem Messer; {leastMm} mm sind das Mindeste, das Druck und Stanzung halten.',
  'artwork-unread-text-near-knife': '{where}: Ein Text bei ({x:mm}, {y:mm}) des Zuschnitts steht {mm} mm von einem Messer; {leastMm} mm sind das Mindeste, das Druck und Stanzung halten.',
  'artwork-area-near-knife': '{where}: Was bei ({x:mm}, {y:mm}) des Zuschnitts gedruckt ist, endet {mm} mm vor einem Messer. Halten Sie {leastMm} mm Abstand oder ziehen Sie es durch den Beschnitt.',
  'artwork-font-missing': '{where}: Die Schrift {font} ist nicht in der Datei. Der Text bleibt, wie er ist, und ein anderes Programm setzt ihn vielleicht anders. Betten Sie die Schrift ein oder wandeln Sie Texte in Pfade.',
  'artwork-holds-die-line': '{where} enthält die Stanzlinie. Ebenen, die so heißen, sind ausgeschaltet; eine Sonderfarbe dafür lässt die Druckvorstufe weg.',
  'artwork-missing': 'Für {design} gibt es keine Druckvorlage; seine Nutzen bleiben leer.',
  'artwork-not-looked-at': '{where} enthält mehr, als von einer Zeichnung gelesen wird: Beschnitt und Texte sind nur an der Seitengröße geprüft.',
  'mark-without-room-register': 'Passkreuze: Auf der {side} ist an einer der Seiten kein Platz frei von Zuschnitten, Beschnitt und Kontrollstreifen. Machen Sie die Seitenränder 8 mm oder breiter.',
  'mark-without-room-side-lay': 'Marke der Seitenanlage: Auf der {side} sind am Rand der Seitenanlage keine 2 × 8 mm frei.',
  'mark-without-room-centre-gripper': 'Mittenmarke am Greifer: Auf der {side} ist zwischen Farbgrenze und erstem Beschnitt kein Platz.',
  'mark-without-room-centre-tail': 'Mittenmarke am Bogenende: Auf der {side} ist zwischen letztem Beschnitt und Farbgrenze kein Platz.',
  'mark-without-room-print-to-cut': 'Stanzmarken: Kein gerades Messer der {side} hat jenseits seines Beschnitts Platz im Abfall.',
  'mark-without-room-sheet-id': 'Bogenkennung: Auf der {side} ist im Abfall kein Platz für ihre Buchstaben.',
  'second-gripper-narrow': 'Beim Druck der Rückseite wird das Bogenende der Vorderseite gegriffen, aber nur {foundMm} mm davon bleiben frei von Farbe; die Greiferkante hält {wantedMm} mm frei. Nehmen Sie die Farbgrenze am Bogenende mit {wantedMm} mm, den Rand dazu passend.',
  'coating-without-free': '{design} nennt keine Klebe-, Code- oder lackfreie Fläche: Alles wird lackiert. Wird eine Lasche geklebt, so benennen Sie ihre Fläche in der Zeichnung mit Gluing.',
};
