import type { Desk } from './desk.ts';
import { wordsIn } from './words/words.ts';

/** What a file holds, or will as soon as it has come; nothing where it cannot be had. */
export type FileContent = Uint8Array | Promise<ArrayBuffer | Uint8Array | undefined>;

/** The bytes as soon as they are there; undefined, and said, where the file cannot be had: a folder, say, or a file that was moved. */
export async function fetched(desk: Pick<Desk, 'notice' | 'locale'>, name: string, content: FileContent): Promise<Uint8Array | undefined> {
  const bytes = await Promise.resolve(content).catch(() => undefined);
  if (!bytes) desk.notice.value = wordsIn(desk.locale.value).say('file-not-there', { name });
  return bytes instanceof ArrayBuffer ? new Uint8Array(bytes) : bytes;
}
