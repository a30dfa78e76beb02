/** Where files come from and go to: the folder behind the server, a folder the person grants, or downloads. */
export interface Files {
  /** Name of the folder that can be written to, where there is one. */
  readonly folder: string | undefined;
  /** What the desk was opened with. */
  list(): Promise<readonly string[]>;
  read(name: string): Promise<Uint8Array | undefined>;
  /**
   * Into the folder, or by download. Where files stand in the folder already that are not as this page last wrote them,
   * `mayReplace` is asked before anything is written.
   */
  save(files: readonly FileToSave[], mayReplace: (names: readonly string[]) => Promise<boolean>): Promise<Saved>;
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
