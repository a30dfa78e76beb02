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
  'groups-over-forms': '{where}: the designs fall into {groups} groups that may not share a form, more than the {forms} forms allowed. Allow {groups} forms or more, or make board, grain, coating, food class and delivery alike.',
  'gang-limits-not-met': '{where}: no plan with {forms} forms was found that makes enough of every design and keeps the greatest overs. Allow more forms or more overs, or a larger --effort.',
  'sheet-or-layout-missing': '{where}: the sheet is missing. Give "sheet", such as "1020x720", or "layout" with a layout file.',
  'sheet-contradicts-layout': '{where}: "sheet" says {sheet} mm, the layout lies on {layout} mm. Leave "sheet" out, or give the layout made for it.',
  'layout-of-form-faulty': '{where}: the layout is faulty ({faults} faults), so it is not printed. `judge` lists them; mend the layout first.',
  'ink-twice': '{where}: the ink {ink} is named twice. Name each ink once, or give a second hit of it a name of its own.',
  'inks-over-units': '{where}: {inks} inks are more than the {units} units of {press}. Print it in two passes, as two forms, or on another press.',
  'press-without-coater': '{where}: {press} has no coater for the coating {coating}. Leave the coating out, or take another press.',
  'caliper-over-classes': '{where}: the board is {caliper} mm thick; the thickest class of the changeover table ends at {most} mm. Leave "upTo" of the last class out, or add a class.',
  'caliper-open': '{where}: the thickness of some forms is not known ({forms}), so no change of thickness is counted with them. Give "caliper" or a board record that has it.',
};
