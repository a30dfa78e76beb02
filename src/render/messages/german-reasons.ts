import type { ReasonWords } from './foreign-reasons.ts';

export const germanReasons: ReasonWords = {
  'element-open': 'das Element <{1}> ist nicht geschlossen; vielleicht fehlt das Ende der Datei',
  'closes-nothing': 'ein anderes Element wird geschlossen als das offene',
  'no-element': 'es steht kein Element darin',
  'text-outside': 'vor oder nach der Zeichnung steht Text',
  'two-drawings': 'zwei Zeichnungen stehen hintereinander in einer Datei',
  'attribute-twice': 'ein Element hat das Attribut „{1}“ zweimal',
  'attribute-form': 'ein Attribut ist nicht als name="wert" geschrieben',
  'entity-form': 'auf ein & folgt nicht der Name eines Zeichens',
  'comment-form': 'ein Kommentar ist nicht als <!-- … --> geschrieben',
  'bad-character': 'ein Zeichen steht, wo keines stehen darf',
  'declaration-form': 'der Kopf der Datei ist nicht geschrieben, wie XML es verlangt',
  'ends-too-soon': 'die Datei hört mittendrin auf',

  'pdf-no-pages': 'es hat keine Seite, oder sein Ende fehlt',
  'pdf-packing': 'sein Inhalt ist mit {1} gepackt, was hier nicht gelesen wird',
  'pdf-stream': 'was darin gepackt ist, ist beschädigt',
  'pdf-objects': 'seine Objekte sind beschädigt oder nicht an ihrem Ort',
  'pdf-endless': 'es enthält eine Folge von Ziffern oder Leerzeichen ohne Ende',

  'quotes-open': 'ein Anführungszeichen ist geöffnet und nicht geschlossen',
  'quotes-within': 'nach dem schließenden Anführungszeichen geht die Zelle weiter',
  'table-empty': 'es steht nichts darin',
  'column-twice': 'die Spalte {1} gibt es zweimal',
  'cells-too-many': '{1} Zellen, aber {2} Spalten',

  'cannot-be-opened': 'sie lässt sich dort nicht öffnen',
  'read-only': 'sie darf nur gelesen werden',
  'no-rights': 'das Recht dazu fehlt',
  'disk-error': 'die Festplatte liest oder schreibt fehlerhaft',
  'content-damaged': 'ihr Inhalt hängt nicht zusammen',
  'no-database': 'sie ist keine Bibliothek mehr',
  'no-such-file': 'sie ist nicht da',
  'is-a-folder': 'es ist ein Ordner',
  other: '„{1}“',
};
