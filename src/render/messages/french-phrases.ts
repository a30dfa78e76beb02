/** Elements of a drawing by which places are named. */
const ELEMENTS: Readonly<Record<string, string>> = { path: 'tracé', line: 'ligne', circle: 'cercle', polygon: 'polygone', polyline: 'polyligne', use: 'répétition', text: 'texte', lwpolyline: 'polyligne' };

/** Places in a drawing, which come as text; anything else stays as it is. */
export function frenchPhrase(text: string): string {
  return text
    .replace(/^line (\d+)(?: of the file)?$/, 'ligne $1')
    .replace(/^([\d, ]+) and (\d+)$/, '$1 et $2')
    .replace(/^([\d, ]+) and (\d+) more$/, '$1 et $2 autres')
    .replace(/\b([a-z]+)(?= \d+ \(line|#)/g, (element) => ELEMENTS[element] ?? element)
    .replace(/\(line (\d+)\)/g, '(ligne $1)')
    .replace(/ in layer "([^"]*)"/g, ' du calque « $1 »')
    .replace(/ of colour "([^"]*)"/g, ' de la couleur « $1 »')
    .replace(/^"([^"]*)", character (\d+)$/, '« $1 », caractère $2')
    .replace(/(\d)\.(\d+ mm\))/g, '$1,$2');
}
