/** Elements of a drawing by which places are named. */
const ELEMENTS: Readonly<Record<string, string>> = { path: 'Pfad', line: 'Linie', rect: 'Rechteck', circle: 'Kreis', ellipse: 'Ellipse', polygon: 'Vieleck', polyline: 'Linienzug', use: 'Wiederholung', text: 'Text', arc: 'Bogen', spline: 'Spline', lwpolyline: 'Linienzug' };

/** What a field should hold, as schemas say it. */
const WANTED: Readonly<Record<string, string>> = {
  'a number': 'eine Zahl', 'a finite number': 'eine endliche Zahl', 'a whole number': 'eine ganze Zahl', text: 'Text', 'a string': 'Text', 'a list': 'eine Liste', 'an array': 'eine Liste', 'an object': 'ein Objekt mit benannten Feldern',
  'an object with named fields': 'ein Objekt mit benannten Feldern', 'true or false': 'wahr oder falsch', 'a boolean': 'wahr oder falsch', nothing: 'nichts', 'a length in mm from 0 up': 'eine Länge in mm ab 0', 'a size': 'ein Format', 'a currency of three letters': 'eine Währung mit drei Buchstaben',
  'quarter turns': 'Vierteldrehungen', 'the whole file': 'die ganze Datei', 'a share from 0 to 1': 'ein Anteil von 0 bis 1', 'an amount from 0 up': 'ein Betrag ab 0', 'x or y': 'x oder y', 'a rate and its value': 'ein Satz und sein Wert',
  'drawn elements': 'gezeichnete Elemente', curves: 'Kurven', 'characters of style sheets': 'Zeichen in Stilregeln', 'style rules': 'Stilregeln', 'straight pieces between crossings': 'gerade Stücke zwischen Kreuzungen', 'pairs of neighbouring lines': 'Paare benachbarter Linien', elements: 'Elemente', 'levels of elements': 'Ebenen von Elementen', 'characters of path data': 'Zeichen in Pfaddaten', records: 'Datensätze', bytes: 'Bytes', 'bytes of unpacked content': 'Bytes entpackten Inhalts', operations: 'Anweisungen',
};

const RANGED: readonly (readonly [RegExp, string])[] = [
  [/^a thickness from (\S+) to (\S+) mm$/, 'eine Dicke von $1 bis $2 mm'],
  [/^a grammage from (\S+) to (\S+) g\/m²$/, 'ein Flächengewicht von $1 bis $2 g/m²'],
  [/^a price of a tonne from (\S+) to (\S+)$/, 'ein Preis je Tonne von $1 bis $2'],
  [/^a whole quantity from (\S+) to (\S+)$/, 'eine ganze Auflage von $1 bis $2'],
  [/^a size with sides from (\S+) to (\S+) mm$/, 'ein Format mit Seiten von $1 bis $2 mm'],
  [/^whole copies from (\S+) to (\S+)$/, 'ganze Stücke von $1 bis $2'],
  [/^one of (.+)$/, 'eines von $1'],
  [/^(.+) or none$/, '$1 oder none'],
  [/^a number not (under|over) (\S+)$/, 'eine Zahl, nicht $1 $2'],
];

/** The rest of a reason: what it names by way of example stays as it is written. */
const REASONS: readonly (readonly [RegExp, (...parts: string[]) => string])[] = [
  [/^is missing; (.+) is wanted$/, (wanted) => `fehlt; gesucht ist ${named(wanted)}`],
  [/^(.+) is wanted, without decimals.*$/, (wanted) => `gesucht ist ${named(wanted)}, ohne Nachkommastellen und nicht größer, als sich zählen lässt`],
  [/^(.+?) (?:is|are) wanted, not (.+)$/, (wanted, given) => `gesucht ist ${named(wanted)}, nicht ${named(given)}`],
  [/^(.+?) (?:is|are) wanted, such as (.+)$/, (wanted, example) => `gesucht ist ${named(wanted)}, etwa ${example.replaceAll(' or ', ' oder ').replace(', or of 100 lb, such as', ', oder für 100 lb, etwa').replace('; basic sizes are', '; Grundformate sind')}`],
  [/^(.+?) (?:is|are) wanted(?:: (.+))?$/, (wanted, list) => `gesucht ist ${named(wanted)}${list === undefined ? '' : `: ${list}`}`],
  [/^must be (above|at least|below|at most) (\S+)$/, (how, limit) => `muss ${{ above: 'über', 'at least': 'mindestens', below: 'unter', 'at most': 'höchstens' }[how]} ${limit} sein`],
  [/^at (least|most) (\S+) entr(?:y is|ies are|ies)(?: wanted| allowed)?$/, (how, count) => `${how === 'least' ? 'mindestens' : 'höchstens'} ${count} ${count === '1' ? 'Eintrag' : 'Einträge'}`],
  [/^(.+) (?:is|are) not known here; look for a misspelling, or leave it out$/, (fields) => `${fields} ist hier nicht bekannt; prüfen Sie die Schreibweise, oder lassen Sie es weg`],
  [/^a square has no longer side: x or y is wanted$/, () => 'ein Quadrat hat keine längere Seite: gesucht ist x oder y'],
  [/^ The page would be (.+) at 72 units an inch \((.+)\)\.$/, (page, option) => ` Die Seite wäre ${page} bei 72 Einheiten je Zoll (${option}).`],
  [/^([\d, ]+) and (\d+)$/, (first, last) => `${first} und ${last}`],
  [/^([\d, ]+) and (\d+) more$/, (first, more) => `${first} und ${more} weitere`],
  [/^line (\d+)(?: of the file)?$/, (line) => `Zeile ${line}`],
];

function named(wanted: string): string {
  const known = WANTED[wanted];
  if (known !== undefined) return known;
  const ranged = RANGED.find(([pattern]) => pattern.test(wanted));
  return ranged ? wanted.replace(ranged[0], ranged[1]).replace('nicht under', 'nicht unter').replace('nicht over', 'nicht über') : wanted;
}

/** Places in a drawing and reasons of schemas, which come as text; anything else stays as it is. */
export function germanPhrase(text: string): string {
  for (const [pattern, words] of REASONS) {
    const found = pattern.exec(text);
    if (found) return words(...(found.slice(1) as string[]));
  }
  return (WANTED[text] ?? text)
    .replace(/\b([a-z]+)(?= \d+ \(line|#)/g, (element) => ELEMENTS[element] ?? element)
    .replace(/\(line (\d+)\)/g, '(Zeile $1)')
    .replace(/ in layer "([^"]*)"/g, ' in der Ebene „$1“')
    .replace(/ of colour "([^"]*)"/g, ' in der Farbe „$1“')
    .replace(/^"([^"]*)", character (\d+)$/, '„$1“, Zeichen $2')
    .replace(/(\d)\.(\d+ mm\))/g, '$1,$2');
}
