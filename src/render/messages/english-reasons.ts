import type { ReasonWords } from './foreign-reasons.ts';

export const englishReasons: ReasonWords = {
  'element-open': 'the element <{1}> is not closed; the end of the file may be missing',
  'closes-nothing': 'an element is closed that is not the one open',
  'no-element': 'there is no element in it',
  'text-outside': 'text stands before or after the drawing',
  'two-drawings': 'two drawings follow one another in one file',
  'attribute-twice': 'an element has the attribute “{1}” twice',
  'attribute-form': 'an attribute is not written as name="value"',
  'entity-form': 'an & is not followed by the name of a character',
  'comment-form': 'a comment is not written as <!-- … -->',
  'bad-character': 'a character stands where none may',
  'declaration-form': 'the head of the file is not written as XML wants it',
  'ends-too-soon': 'the file ends in the middle',

  'pdf-no-pages': 'it has no page, or its end is missing',
  'pdf-packing': 'its content is packed by {1}, which is not read here',
  'pdf-stream': 'what is packed in it is damaged',
  'pdf-objects': 'its objects are damaged or not where they should be',
  'pdf-endless': 'it holds a run of digits or blanks without end',

  'quotes-open': 'a quotation mark is opened and not closed',
  'quotes-within': 'after a closing quotation mark the cell goes on',
  'table-empty': 'there is nothing in it',
  'column-twice': 'the column {1} is there twice',
  'cells-too-many': '{1} cells, but {2} columns',

  'cannot-be-opened': 'it cannot be opened there',
  'read-only': 'it may only be read',
  'no-rights': 'the right to it is missing',
  'disk-error': 'the disk reads or writes with faults',
  'content-damaged': 'its content does not hang together',
  'no-database': 'it is no library any more',
  'no-such-file': 'it is not there',
  'is-a-folder': 'it is a folder',
  other: '“{1}”',
};
