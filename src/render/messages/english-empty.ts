/** What the desk says where there is nothing yet: the one step that brings it. */
export const englishEmpty = {
  'empty-desk': 'Choose a drawing, or type the dimensions of a carton: layouts and what they cost follow by themselves.',
  'empty-drawing': 'A drawing comes first: choose one, or type the dimensions of a carton.',
  'empty-unreadable': 'The drawing cannot be used: panel 1 says why.',
  'empty-fields': 'A size or a limit cannot be used: mend the field that is marked in panel 2 or 3.',
  'empty-search': 'There is no layout: the panel Layouts found says why.',
  'empty-waiting': 'The first layout is there in a moment.',
  'empty-versions': 'Add a version and type how many are wanted, then share out the stations.',
  'to-drawing': 'Begin with a drawing',
  'to-sheet': 'Look at the sheet',
  'to-layouts': 'Look at the search',
  'search-known': '{ups} ups, at most {limit} can fit.',
} as const;
