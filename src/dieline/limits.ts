import { COORDINATE_LIMIT } from '../geometry/point.ts';
import { toMillimetres } from '../base/units.ts';

/** What a drawing may ask of this reader. Beyond them it is refused, so that no file can hold a machine up. */
export const READING_LIMITS = {
  /** Bytes of the file. A drawing of 100 000 segments has about 10 million. */
  fileBytes: 32 * 1024 * 1024,
  /** Levels of nested elements; the XML reader's work grows with their square. */
  xmlDepth: 256,
  /** Elements in the file. */
  elements: 300_000,
  /** Characters of one path's data. */
  pathCharacters: 8_000_000,
  /** Characters of all style sheets together. */
  styleCharacters: 1_000_000,
  /** Style rules, one a selector. */
  styleRules: 10_000,
  /** Characters of one internal entity's text, and how many entities. Their text may hold no markup and no entity. */
  entityCharacters: 256,
  entities: 64,
  /** Bytes of a PDF's content after unpacking: of a page, of a form, and of its lists of objects together. */
  pdfContentBytes: 64 * 1024 * 1024,
  /** Operators run, those of forms as often as they are drawn. */
  pdfOperations: 10_000_000,
  /** Records of a DXF file: entities, vertices, table entries. */
  records: 1_000_000,
  /** Levels of `use` within `use`, of blocks within blocks, of forms within forms, and elements drawn after all of them are followed. */
  useDepth: 16,
  drawnElements: 300_000,
  /** Curves after all `use` are followed. */
  curves: 500_000,
  /** Straight pieces after flattening and splitting where lines meet. */
  pieces: 800_000,
  /** Largest coordinate, mm; lines beyond it are left out with a warning. */
  coordinateMm: toMillimetres(COORDINATE_LIMIT),
} as const;
