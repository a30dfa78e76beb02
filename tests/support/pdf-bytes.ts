/** PDFs written by hand: what a test says is what the file holds. */

export const POINTS = 72 / 25.4;

export const latin = (text: string) => Uint8Array.from(text, (character) => character.charCodeAt(0));

export function stream(content: string | Uint8Array, entries = ''): string {
  const text = typeof content === 'string' ? content : String.fromCharCode(...content);
  return `<< /Length ${text.length} ${entries} >>\nstream\n${text}\nendstream`;
}

export interface PdfParts {
  readonly resources?: string;
  /** Entries of the page. */
  readonly page?: string;
  readonly catalog?: string;
  readonly trailer?: string;
  /** Objects from number 10 on. */
  readonly objects?: readonly string[];
}

/** A box in user space, millimetres in. */
export const box = (x: number, y: number, width: number, height: number) => `[${[x, y, x + width, y + height].map((value) => value * POINTS).join(' ')}]`;

/** A page of 300 × 200 mm whose content is in millimetres from its lower left corner. */
export function pdf(content: string, { resources = '', page = `/MediaBox ${box(0, 0, 300, 200)}`, catalog = '', trailer = '', objects = [] }: PdfParts = {}): Uint8Array {
  const all = [
    `1 0 obj << /Type /Catalog /Pages 2 0 R ${catalog} >> endobj`,
    '2 0 obj << /Type /Pages /Count 1 /Kids [3 0 R] >> endobj',
    `3 0 obj << /Type /Page /Parent 2 0 R /Contents 4 0 R /Resources << ${resources} >> ${page} >> endobj`,
    `4 0 obj ${stream(`${POINTS} 0 0 ${POINTS} 0 0 cm\n${content}`)} endobj`,
    ...objects.map((object, i) => `${10 + i} 0 obj ${object} endobj`),
  ];
  return latin(`%PDF-1.7\n${all.join('\n')}\ntrailer << /Root 1 0 R /Size ${10 + objects.length} ${trailer} >>\nstartxref\n0\n%%EOF\n`);
}

/** A spot colour as a colour space; `name` as a PDF writes it, `full` its look in CMYK. */
export const spot = (name: string, full = '0 1 0 0') => `[/Separation /${name} /DeviceCMYK << /FunctionType 2 /Domain [0 1] /C0 [0 0 0 0] /C1 [${full}] /N 1 >>]`;
