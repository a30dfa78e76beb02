import type { MessageTable } from './catalogue.ts';

/** Usage of the commands: options, files, exit code 2. */
export const commandMessages: MessageTable = {
  'file-not-found': '{where}: there is no such file. Check the path.',
  'file-not-readable': '{where}: the file cannot be read ({reason}).',
  'file-too-large': '{where}: the file has {megabytes} MB; at most {limit} MB are read.',
  'file-is-folder': '{where}: this is a folder. Name a file in it.',
  'field-misspelt': '{where}: there is no such field; {meant} seems to be meant. Correct the name.',
  'more-faults': '{where}: {count} more {count|fault|faults}. Correct the first ones and check again.',
  'record-of-other-kind': '{where}: this record holds no field of its kind. Give another file; known fields are {known}.',
  'json-not-valid': '{where}: this is not valid JSON ({reason}).',
  'field-not-valid': '{where}: {reason}',
  'csv-column-unknown': '{where}: the column {field} is not known. Known are {known}.',
  'record-not-chosen': '{where}: which of the {kind} is meant? Write one of {names} behind the file: "{file}#name".',
  'record-not-listed': '{where}: none of the {kind} is named "{name}". Write one of {names} behind the file: "{file}#name".',
  'record-sound': '{where}: sound.',
  'records-sound': '{where}: sound, {count} {kind}.',
  'option-not-valid': '{where} {value}: {expected}.',
  'option-missing': '{where} is missing: {expected}.',
  'option-needs-other': '{where} only says something together with {other}. Add {other} or leave it out.',
  'options-contradict': '{first} and {second} contradict each other: {reason}.',
  'output-names-input': '{where}: this would overwrite an input. Give another name for the output.',
  'output-not-writable': '{where}: cannot write there ({reason}). Give a folder that exists and may be written to.',
};
