import type { HandWords } from './hand-words.ts';

const faultKinds: HandWords['faultKinds'] = {
  gap: 'Messer zu nah beieinander',
  overlap: 'überdeckt einen Nachbarn',
  outside: 'außerhalb des Messerbereichs',
  'keep-out': 'zu nah an einer Fläche, die frei bleiben muss',
  bleed: 'Beschnitt zu knapp',
  rotation: 'Drehung nicht erlaubt',
  outline: 'Umriss und Zeichnung weichen ab',
};

export const germanHand: HandWords = {
  sheet: (size, blanks) => `Bogen ${size} mit ${blanks} Nutzen, Greiferkante unten`,
  blank: ({ station, design, rotation, fromLeft, fromGripper, locked, faults }, format) =>
    [
      station === undefined ? 'Neuer Nutzen' : `Nutzen ${station}`,
      design,
      `Drehung ${rotation}°`,
      `${format.length(fromLeft)} von links`,
      `${format.length(fromGripper)} vom Greifer`,
      ...(locked ? ['fest'] : []),
      ...(faults.length > 0 ? [`fehlerhaft: ${faults.map((kind) => faultKinds[kind]).join(', ')}`] : []),
    ].join(', '),
  commands: {
    undo: { name: 'Rückgängig', does: 'den letzten Schritt zurücknehmen' },
    redo: { name: 'Wiederholen', does: 'Zurückgenommenes wieder tun' },
    'turn-next': { name: 'Drehen', does: 'in die nächste erlaubte Drehung drehen' },
    'turn-back': { name: 'Zurückdrehen', does: 'in die vorige erlaubte Drehung drehen' },
    'turn-quarter': { name: 'Vierteldrehung', does: 'um 90° drehen, auch wo es nicht erlaubt ist' },
    duplicate: { name: 'Verdoppeln', does: 'eine Kopie einen Schritt weiter stellen' },
    remove: { name: 'Löschen', does: 'den Nutzen vom Bogen nehmen' },
    lock: { name: 'Festhalten', does: 'den Nutzen festhalten oder wieder lösen' },
    move: { name: 'Verschieben', does: 'verschieben' },
    'rows-and-columns': { name: 'Reihen × Spalten …', does: 'den ganzen Bogen in Reihen und Spalten auslegen oder die Auswahl so wiederholen' },
    gather: { name: 'Zusammenschieben', does: 'die Auswahl zu einem Block zusammenschieben' },
    'equal-steps': { name: 'Gleiche Schritte', does: 'der Auswahl vom ersten bis zum letzten gleiche Schritte geben, Reihe für Reihe' },
    'align-left': { name: 'Linke Kanten', does: 'linke Kanten auf eine Linie bringen' },
    'align-right': { name: 'Rechte Kanten', does: 'rechte Kanten auf eine Linie bringen' },
    'align-gripper': { name: 'Greiferseiten', does: 'die Seiten zum Greifer hin auf eine Linie bringen' },
    'align-tail': { name: 'Seiten zum Bogenende', does: 'die Seiten zum Bogenende hin auf eine Linie bringen' },
    'align-above': { name: 'Mitten übereinander', does: 'Mitten auf eine senkrechte Linie bringen' },
    'align-beside': { name: 'Mitten nebeneinander', does: 'Mitten auf eine waagerechte Linie bringen' },
    'align-arrows': { name: 'Kanten in Linie', does: 'Kanten auf der Seite des Pfeils auf eine Linie bringen' },
    'solve-rest': { name: 'Rest füllen', does: 'Festgehaltenes behalten und den Rest des Bogens füllen' },
    tidy: { name: 'Aufräumen', does: 'alles zu Greifer und Seitenanlage schieben; Reihen bleiben auf gleicher Höhe, Spalten in Linie' },
    stop: { name: 'Anhalten', does: 'anhalten und das bisher Beste nehmen' },
    measure: { name: 'Messen', does: 'von Punkt zu Punkt messen' },
    keys: { name: 'Tasten', does: 'diese Liste zeigen' },
    'zoom-in': { name: 'Näher', does: 'näher heran' },
    'zoom-out': { name: 'Weiter weg', does: 'weiter weg' },
    'whole-sheet': { name: 'Ganzer Bogen', does: 'den ganzen Bogen zeigen' },
    'whole-window': { name: 'Groß', does: 'das ganze Fenster nehmen oder zurück zur Seite' },
    'zoom-selection': { name: 'Zur Auswahl', does: 'die Auswahl so groß wie möglich zeigen' },
    'select-all': { name: 'Alles auswählen', does: 'alle Nutzen auswählen' },
    'select-none': { name: 'Nichts auswählen', does: 'nichts auswählen' },
    'select-next': { name: 'Nächster Nutzen', does: 'den nächsten Nutzen auswählen' },
    'select-previous': { name: 'Voriger Nutzen', does: 'den vorigen Nutzen auswählen' },
    release: { name: 'Loslassen', does: 'Angefangenes aufgeben, das Füllen anhalten, das Werkzeug weglegen, nichts auswählen' },
    'nudge-plain': { name: 'Verschieben', does: 'um {step} verschieben; ist nichts ausgewählt, von Nutzen zu Nutzen gehen' },
    'nudge-fine': { name: 'Ein wenig verschieben', does: 'um {step} verschieben' },
    'nudge-step': { name: 'Um einen Schritt', does: 'um einen Schritt einer engen Reihe weiterrücken' },
    'nudge-contact': { name: 'Bis zum Anschlag', does: 'schieben, bis die Regeln es nicht weiter erlauben' },
    replace: { name: 'Standbogen eingesetzt', does: 'einen anderen Standbogen einsetzen' },
  },
  groups: { history: 'Rückgängig und wiederholen', edit: 'Nutzen', arrange: 'Anordnen', ask: 'Tun lassen', look: 'Ansehen' },
  toolbar: 'Arbeit am Bogen',
  layersTitle: 'Ebenen',
  alignTitle: 'Ausrichten',
  layers: {
    creases: 'Rillungen und andere Linien',
    openings: 'Öffnungen',
    bleed: 'Beschnitt',
    marks: 'Kontrollstreifen, Marken und Ränder',
    numbers: 'Nummern der Nutzen',
    grid: 'Raster',
    distances: 'Abstände',
    'rule-side': 'Von der Linienseite gesehen (gespiegelt)',
  },
  notices: {
    'all-locked': 'Festgehaltene Nutzen bleiben, wo sie sind. L löst sie.',
    'locked-stays': 'Die festgehaltenen Nutzen sind geblieben.',
    'nothing-selected': 'Zuerst einen Nutzen auswählen.',
    'one-rotation': 'Für diesen Nutzen ist nur diese Drehung erlaubt.',
    'needs-two': 'Zwei oder mehr Nutzen auswählen.',
    'needs-three': 'Drei oder mehr Nutzen auswählen, die nicht festgehalten sind.',
    'needs-three-in-line': 'Für gleiche Schritte braucht es drei oder mehr Nutzen in einer Reihe oder Spalte.',
    'no-equal-steps': 'Mit gleichen Schritten stünden Nutzen zu nah an etwas: Zwischen dem ersten und dem letzten ist zu wenig Platz.',
    'some-rows-stay': 'Reihen, in denen Nutzen mit gleichen Schritten zu nah an etwas stünden, bleiben, wie sie sind.',
    'steps-equal-already': 'Die Schritte sind gleich.',
    'grid-does-not-fit': 'So viele Reihen und Spalten passen nicht auf den Bogen.',
    'places-left-out': 'Wo etwas im Weg steht, wurde kein Nutzen eingesetzt.',
    'no-contact-that-way': 'Er steht am Anschlag: Weiter erlauben es die Regeln in dieser Richtung nicht.',
    'no-free-place-that-way': 'Er steht fehlerhaft, und geradeaus in dieser Richtung ist kein Platz frei.',
    'gathered-already': 'Sie stehen so nah beieinander, wie die Regeln es erlauben.',
    'tidy-already': 'Es ist aufgeräumt: Nichts rückt näher an Greifer oder Seitenanlage, ohne dass Reihen oder Spalten gestört werden.',
    'rest-no-better': 'Nichts Besseres wurde gefunden: Der Bogen bleibt, wie er ist.',
    overtaken: 'Der Bogen wurde inzwischen geändert: Das Gefundene wird nicht eingesetzt.',
    'faulty-stays': 'Fehlerhaft stehende Nutzen bleiben, wo sie sind: zuerst auf einen freien Platz schieben.',
    'too-many-blanks': 'Das wären mehr Nutzen, als ein Bogen hier fassen kann.',
  },
  states: { 'not judged': 'nicht geprüft', sound: 'einwandfrei', faulty: 'fehlerhaft', 'out of date': 'veraltet' },
  working: { 'solve-rest': 'Rest wird gefüllt …', tidy: 'wird aufgeräumt …' },
  progress: (best, limit, time) => [best === undefined ? '' : `bisher ${best} Nutzen`, limit === undefined ? '' : `höchstens ${limit}`, time].filter(Boolean).join(' · '),
  stopping: 'hält an …',
  faultKinds,
  selected: (count, ups) => (count === 0 ? `${ups} Nutzen` : `${count} von ${ups} Nutzen ausgewählt`),
  fault: (kind, byMm, gapMm, format) => {
    const by = format.length(byMm);
    switch (kind) {
      case 'gap':
        return `Messer um ${by} zu nah beieinander (${format.bareLength(gapMm - byMm)} von ${format.length(gapMm)})`;
      case 'overlap':
        return `überdeckt einen Nachbarn, ${by} tief`;
      case 'outside':
        return `${by} außerhalb des Messerbereichs`;
      case 'keep-out':
        return `um ${by} zu nah an einer Fläche, die frei bleiben muss`;
      case 'bleed':
        return `${by} fehlen für den Beschnitt`;
      case 'rotation':
        return faultKinds.rotation;
      case 'outline':
        return `Umriss und Zeichnung weichen um ${by} ab`;
    }
  },
  step: 'Schritt',
  ruleSide: 'LINIENSEITE, GESPIEGELT',
  measured: (along, away, distance, format) => `${format.length(distance)} (${format.bareLength(Math.abs(along))} längs, ${format.bareLength(Math.abs(away))} quer)`,
  moved: (along, away, format) => `verschoben um ${format.bareLength(along)} längs, ${format.bareLength(away)} vom Greifer weg (${format.unit})`,
  grid: {
    title: 'Reihen × Spalten',
    rows: 'Reihen (vom Greifer weg)',
    columns: 'Spalten (längs der Greiferkante)',
    whole: 'Den ganzen Bogen neu; nur Festgehaltenes bleibt',
    most: (rows, columns) => `So passen höchstens ${rows} ${rows === 1 ? 'Reihe' : 'Reihen'} zu ${columns}.`,
    stepAlong: 'Schritt längs',
    stepAway: 'Schritt vom Greifer weg',
    tightest: 'so eng der Abstand es erlaubt',
    done: 'Auslegen',
    leave: 'Abbrechen',
    notANumber: 'Eine ganze Zahl von 1 bis 500 angeben, Schritte als Längen größer als 0.',
  },
  keysTitle: 'Tasten',
  keyNames: {
    Arrow: 'Pfeiltasten', Control: 'Strg', Alt: 'Alt', Shift: 'Umschalt', Escape: 'Esc', Delete: 'Entf', Backspace: 'Rücktaste', PageDown: 'Bild ab', PageUp: 'Bild auf',
  },
  pointerTitle: 'Maus, Stift, Finger',
  gestures: [
    ['Einen Nutzen ziehen', 'verschiebt ihn; er rastet am Nachbarn, an Rändern, in Linien und gleichen Schritten ein'],
    ['Ziehen mit Alt', 'verschiebt frei'],
    ['Ziehen mit Umschalt', 'verschiebt entlang einer Achse'],
    ['Ziehen mit Strg', 'verschiebt eine Kopie'],
    ['Neben den Nutzen ziehen', 'nach rechts: wählt aus, was ganz darin liegt; nach links: alles Berührte'],
    ['Klick mit Umschalt', 'nimmt in die Auswahl auf oder heraus'],
    ['Rad, zwei Finger', 'näher oder weiter weg, um den Zeiger herum'],
    ['Mittlere Taste, Leertaste, Finger neben den Nutzen', 'verschiebt den Bogen'],
  ],
  close: 'Schließen',
};
