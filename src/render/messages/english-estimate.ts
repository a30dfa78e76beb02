import type { MessageTable } from './catalogue.ts';

/** Quotes, gang runs, days, guillotine. */
export const estimateMessages: MessageTable = {
  'grade-unknown': '{where}: the grade {grade} is not known. Known are {known}.',
  'grammage-missing': '{where}: the grammage is missing. Give "grammage" in g/m², or a board record that has it.',
  'ups-or-layout-missing': '{where}: ups and sheet are missing. Give "ups" and "sheet", or "layout" with a layout file.',
  'layout-holds-nothing': '{where}: the layout holds no blank. Give a layout with blanks on it.',
  'ups-contradict-layout': '{where}: "ups" says {ups}, the layout holds {layout}. Leave "ups" out, or give the layout that holds {ups}.',
  'stage-unknown': '{where}: the stage {stage} is not known. Known are {known}.',
  'waste-table-silent': '{where}: the waste table "{table}" says nothing about {stage}. Add its set-up and running waste, or leave the stage out.',
  'colours-over-units': '{where}: {colours} colours are more than the {units} units of {press}. Take another press, or quote the passes apart.',
  'field-left-aside': '{where}: the field "{field}" is not known and was left aside. Check its spelling.',
  'no-stages-given': '{where}: no stages after printing are named, so none is counted. Name them in "stages", such as "die-cutting" and "gluing".',
  'layout-of-quote-faulty': 'the layout has {faults} faults: judge it before money is put on it.',
  'customer-page-without-price': '{where}: there is no price to show the customer; missing: {missing}. Give the rates and a margin, or leave --customer out.',
  'versions-over-stations': '{where}: {versions} versions are more than {forms} forms of {stations} stations hold. Allow {needed} forms or more, or leave versions out.',
  'id-twice': '{where}: the id {id} is given twice. Give every version and design its own.',
};
