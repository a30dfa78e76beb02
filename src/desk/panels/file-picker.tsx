import { useId } from 'preact/hooks';
import type { FileContent } from '../fetched.ts';

interface Props {
  readonly accept: string;
  readonly label: string;
  readonly hint: string;
  /** What is done first here. */
  readonly isFirst?: boolean;
  readonly onFile: (name: string, content: FileContent) => void;
}

/** A file by choice; the page itself takes what is dropped anywhere. */
export function FilePicker({ accept, label, hint, isFirst = false, onFile }: Props) {
  const id = useId();
  const take = (file: File | undefined) => file && onFile(file.name, file.arrayBuffer());
  return (
    <div class="drop">
      <label for={id} class={isFirst ? 'file-label primary' : 'file-label'}>{label}</label>
      <input id={id} type="file" accept={accept} onChange={(event) => { take(event.currentTarget.files?.[0]); event.currentTarget.value = ''; }} />
      <p class="hint">{hint}</p>
    </div>
  );
}
