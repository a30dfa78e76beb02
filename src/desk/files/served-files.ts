import { bytesOf, type Files } from './files.ts';
import { pageFiles } from './page-files.ts';

/** Files behind the server that `open` starts. Without a folder it writes none: they are saved as by any page. */
export async function servedFiles(): Promise<Files> {
  const listed = async () => (await (await fetch('api/files')).json()) as { folder: string | null; files: readonly { name: string }[] };
  const { folder } = await listed();
  const place = (name: string) => `api/file?name=${encodeURIComponent(name)}`;
  /** Versions of the files as this page last wrote them. */
  const own = new Map<string, string>();
  return {
    folder: folder ?? undefined,
    list: async () => (await listed()).files.map(({ name }) => name),
    read: async (name) => {
      const response = await fetch(place(name));
      return response.ok ? new Uint8Array(await response.arrayBuffer()) : undefined;
    },
    save: folder === null ? pageFiles().save : async (files, mayReplace) => {
      const standing = new Map<string, string>();
      for (const { name } of files) {
        const version = (await fetch(place(name), { method: 'HEAD' })).headers.get('ETag');
        if (version !== null) standing.set(name, version);
      }
      const strange = [...standing].filter(([name, version]) => own.get(name) !== version).map(([name]) => name);
      if (strange.length > 0 && !(await mayReplace(strange))) return 'called off';
      for (const { name, content } of files) {
        const version = standing.get(name);
        const response = await fetch(place(name), { method: 'PUT', body: bytesOf(content) as BodyInit, headers: version === undefined ? {} : { 'If-Match': version } });
        if (!response.ok) return 'failed';
        own.set(name, response.headers.get('ETag') ?? '');
      }
      return 'saved';
    },
  };
}
