import { bytesOf, download, type FileToSave } from './files.ts';

/** All of it as one download: browsers let only some of many pass. */
export async function downloadZip(name: string, files: readonly FileToSave[]): Promise<void> {
  // Its threads are made from text, which the page's policy forbids.
  const { zipSync } = await import('fflate');
  download(`${fileNameOf(name)}.zip`, zipSync(Object.fromEntries(files.map((file) => [file.name, bytesOf(file.content)]))));
}

/** Without what some file systems refuse. */
function fileNameOf(name: string): string {
  // eslint-disable-next-line no-control-regex
  return name.replace(/[\\/:*?"<>|\u0000-\u001f]+/g, '-').replace(/^[\s.]+|[\s.]+$/g, '');
}
