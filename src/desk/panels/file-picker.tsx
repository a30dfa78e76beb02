import { useId } from 'preact/hooks';

interface Props {
  readonly accept: string;
  readonly label: string;
  readonly hint: string;
  /** What is done first here. */
  readonly isFirst?: boolean;
  readonly onFile: (name: string, bytes: Uint8Array) => void;
}

/** A file by choice; the page itself takes what is dropped anywhere. */
export function FilePicker({ accept, label, hint, isFirst = false, onFile }: Props) {
  const id = useId();
  const take = async (file: File | undefined) => {
    if (file) onFile(file.name, new Uint8Array(await file.arrayBuffer()));
  };
  return (
    <div class="drop">
      <label for={id} class={isFirst ? 'file-label primary' : 'file-label'}>{label}</label>
      <input id={id} type="file" accept={accept} onChange={(event) => { void take(event.currentTarget.files?.[0]); event.currentTarget.value = ''; }} />
      <p class="hint">{hint}</p>
    </div>
  );
}
