import { bytesOf, type Files } from './files.ts';

/** Files behind the server that `open` starts. */
export async function servedFiles(): Promise<Files> {
  const listed = (await (await fetch('api/files')).json()) as { folder: string | null; files: readonly { name: string }[] };
  const place = (name: string) => `api/file?name=${encodeURIComponent(name)}`;
  return {
    folder: listed.folder ?? undefined,
    list: async () => listed.files.map(({ name }) => name),
    read: async (name) => {
      const response = await fetch(place(name));
      return response.ok ? new Uint8Array(await response.arrayBuffer()) : undefined;
    },
    save: async (files) => {
      for (const { name, content } of files) {
        if (!(await write(place(name), bytesOf(content)))) return false;
      }
      return true;
    },
  };
}

/** A new file, or over the version that stands there now. */
async function write(place: string, content: Uint8Array): Promise<boolean> {
  const put = (version?: string | null) => fetch(place, { method: 'PUT', body: content as BodyInit, headers: version ? { 'If-Match': version } : {} });
  const response = await put();
  if (response.status !== 412) return response.ok;
  const present = await fetch(place);
  return (await put(present.headers.get('ETag'))).ok;
}
