import type { FileContent } from '../fetched.ts';

/** Files dropped anywhere on the page. Returns how to end it. */
export function listenToDrops(take: (name: string, content: FileContent) => void): () => void {
  const onDragOver = (event: DragEvent) => event.preventDefault();
  const onDrop = (event: DragEvent) => {
    event.preventDefault();
    for (const file of event.dataTransfer?.files ?? []) take(file.name, file.arrayBuffer());
  };
  addEventListener('dragover', onDragOver);
  addEventListener('drop', onDrop);
  return () => {
    removeEventListener('dragover', onDragOver);
    removeEventListener('drop', onDrop);
  };
}
