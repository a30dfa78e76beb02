/** Where files come from and go to: the folder behind the server, or one that the person grants. */
export interface Files {
  /** Name of the folder that can be written to, where there is one. */
  readonly folder: string | undefined;
  /** What the desk was opened with. */
  list(): Promise<readonly string[]>;
  read(name: string): Promise<Uint8Array | undefined>;
  /**
   * Into the folder, or into one that the person grants; absent where the browser knows no folders. Where files stand there already
   * that are not as this page last wrote them, `mayReplace` is asked before anything is written.
   */
  readonly save: ((files: readonly FileToSave[], mayReplace: (names: readonly string[]) => Promise<boolean>) => Promise<Saved>) | undefined;
}

export interface FileToSave {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** `failed`: not all of them; another program came in between, say. */
export type Saved = 'saved' | 'called off' | 'failed';

export function download(name: string, content: string | Uint8Array): void {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type: 'application/octet-stream' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken hold of the content by then.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? new TextEncoder().encode(content) : content;
}

/** A job as a file of its own. */
export function downloadJob(name: string, content: string): void {
  download(`${name || 'job'}.blankwright.json`, content);
}
