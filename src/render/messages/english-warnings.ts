/** What the desk says so that nobody is misled and nothing is lost. */
export const englishWarnings = {
  'missing-production': 'Not among the files: {files}. They wait until what stands above is settled.',
  'missing-quote': 'Not among the files: {files}. The panel Money lacks what a quote needs.',
  'missing-customer-quote': 'Not among the files: {files}. A price is still open in the panel Money.',
  'save-those-there': 'Save the {count} files that are there',
  'save-those-there-into': 'Save the {count} files that are there into “{folder}”',
  'files-saved-without': '{count} files saved. Not among them: {files}.',
  'files-of-earlier': 'From earlier there still lie in the folder: {files}. They do not belong to this layout.',
  'files-called-off': 'Nothing was saved.',
  'files-standing': 'In the folder there stand already, not as this desk last wrote them: {files}.',
  'replace-files': 'Replace them',
  'leave-files': 'Save nothing',
  'issue-handover-unknown-rules': 'What {lines} lines of {design} are ({metres} m on the sheet) is not known, and a die must not be made from a guess. Say it in the panel Drawing; the layouts are then found anew.',
} as const;
