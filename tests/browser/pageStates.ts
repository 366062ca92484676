// Every state of the page that somebody can come to. Those of a folder of people are come to one after the other.

export const STATES = [
  'empty',
  'guide for a person',
  'guide for an educator',
  'reading',
  'reading a huge file',
  'asking',
  'asking for meanings',
  'refused',
  'nothing to read',
  'whose files',
  'papers',
  'visit',
  'day opened large',
  'something went wrong',
] as const;

export const FOLDER_STATES = [
  'folder found',
  'folder being read',
  'folder stopped',
  'folder done',
  'worklist to sort and find',
  'worklist by group',
  'someone of a folder opened',
] as const;
