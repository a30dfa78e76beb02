import { useId, useState } from 'preact/hooks';

interface Props {
  readonly accept: string;
  readonly label: string;
  readonly hint: string;
  readonly onFile: (name: string, bytes: Uint8Array) => void;
}

/** A file by choice or by dropping it. */
export function FilePicker({ accept, label, hint, onFile }: Props) {
  const id = useId();
  const [over, setOver] = useState(false);
  const take = async (file: File | undefined) => {
    if (file) onFile(file.name, new Uint8Array(await file.arrayBuffer()));
  };
  const onDrop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    void take(event.dataTransfer?.files[0]);
  };
  return (
    <div class={over ? 'drop over' : 'drop'} onDragOver={(event) => { event.preventDefault(); setOver(true); }} onDragLeave={() => setOver(false)} onDrop={onDrop}>
      <label for={id} class="file-label">{label}</label>
      <input id={id} type="file" accept={accept} onChange={(event) => { void take(event.currentTarget.files?.[0]); event.currentTarget.value = ''; }} />
      <p class="hint">{hint}</p>
    </div>
  );
}
