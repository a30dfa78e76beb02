import type { MessageTable } from './catalogue.ts';

/** Serving the desk. */
export const openMessages: MessageTable = {
  'desk-at': 'The desk is open at {url} on this machine only. Ctrl-C ends it.',
  'body-too-large': '{where}: more than {megabytes} MB are not read. Send a smaller drawing or layout.',
  'too-much-asked': 'Too much is being asked at once ({count} questions are worked on at a time). Ask again later.',
  'question-too-long': 'No answer within {seconds} s. Ask for a lower effort or fewer seconds.',
  'no-files-here': '{where}: files cannot be named over HTTP ({file}). Put the content in.',
  'answer-not-there': '{where}: the library has no layout of this name. Run the batch again.',
  'port-taken': '{where} {port}: the port is in use or not allowed. Leave the option out and a free one is taken.',
  'folder-opens-alone': '{where}: a folder is opened alone. Give one folder, or single files.',
  'desk-opens-not': '{where}: the desk opens {endings} files. Leave it out.',
  'desk-names-twice': '{where}: two files are called {name}. Rename one of them.',
};
