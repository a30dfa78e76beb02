import type { MessageTable } from './catalogue.ts';

/** Serving the desk. */
export const openMessages: MessageTable = {
  'desk-at': 'The desk is open at {url} on this machine only. Ctrl-C ends it.',
  'port-taken': '{where} {port}: the port is in use or not allowed. Leave the option out and a free one is taken.',
  'folder-opens-alone': '{where}: a folder is opened alone. Give one folder, or single files.',
  'desk-opens-not': '{where}: the desk opens {endings} files. Leave it out.',
  'desk-names-twice': '{where}: two files are called {name}. Rename one of them.',
};
