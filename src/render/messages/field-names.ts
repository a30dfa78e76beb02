/** Fields of jobs, records and requests by the options of a command that say the same. */
const FIELDS: Readonly<Record<string, string>> = {
  blank: 'blank', scale: 'scale', 'width-is': 'widthIs', page: 'page', 'close-gaps': 'closeGaps', role: 'roles', grain: 'grain', 'sheet-grain': 'sheetGrain',
  gap: 'gap', bleed: 'bleed', 'bleed-meeting': 'bleedMeeting', rotations: 'rotations',
};

/** A sentence about options, said of fields: `--role Creasing=dash:any` is `"roles": ["Creasing=dash:any"]`. */
export function withFieldNames(sentence: string): string {
  return sentence
    .replace(/--role ([A-Z]\w+=\S*[^\s.,;])/g, (_, rule: string) => `"roles": ["${rule}"]`)
    .replace(/--([a-z]+(?:-[a-z]+)*)/g, (option, name: string) => (Object.hasOwn(FIELDS, name) ? `the field "${FIELDS[name]}"` : option));
}
