/** Files dropped anywhere on the page. Returns how to end it. */
export function listenToDrops(take: (name: string, bytes: Uint8Array) => void): () => void {
  const onDragOver = (event: DragEvent) => event.preventDefault();
  const onDrop = async (event: DragEvent) => {
    event.preventDefault();
    for (const file of event.dataTransfer?.files ?? []) take(file.name, new Uint8Array(await file.arrayBuffer()));
  };
  const listener = (event: DragEvent) => void onDrop(event);
  addEventListener('dragover', onDragOver);
  addEventListener('drop', listener);
  return () => {
    removeEventListener('dragover', onDragOver);
    removeEventListener('drop', listener);
  };
}
