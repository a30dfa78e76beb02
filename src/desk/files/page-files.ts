import { bytesOf, type Files } from './files.ts';

interface FolderHandle {
  getFileHandle(name: string, options: { create: boolean }): Promise<{ createWritable(): Promise<{ write(content: Uint8Array): Promise<void>; close(): Promise<void> }> }>;
}
type PickFolder = (options: { mode: 'readwrite' }) => Promise<FolderHandle>;

/** Files of a page that no server stands behind: a folder that the person grants, where the browser can. */
export function pageFiles(): Files {
  const pick = (globalThis as { showDirectoryPicker?: PickFolder }).showDirectoryPicker;
  return {
    folder: undefined,
    list: async () => [],
    read: async () => undefined,
    save: pick && (async (files, mayReplace) => {
      let folder: FolderHandle;
      try {
        folder = await pick.call(globalThis, { mode: 'readwrite' });
      } catch {
        return 'called off';
      }
      const standing: string[] = [];
      for (const { name } of files) if (await stands(folder, name)) standing.push(name);
      if (standing.length > 0 && !(await mayReplace(standing))) return 'called off';
      try {
        for (const { name, content } of files) {
          const file = await (await folder.getFileHandle(name, { create: true })).createWritable();
          await file.write(bytesOf(content));
          await file.close();
        }
      } catch {
        // The grant was taken back, or the disk is full.
        return 'failed';
      }
      return 'saved';
    }),
  };
}

async function stands(folder: FolderHandle, name: string): Promise<boolean> {
  try {
    await folder.getFileHandle(name, { create: false });
    return true;
  } catch {
    return false;
  }
}
