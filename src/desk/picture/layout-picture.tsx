import { useDesk } from '../desk-context.ts';
import type { KeptLayout } from '../job/job.ts';
import { upsOf } from '../job/layouts.ts';
import { useAnswer } from '../panels/use-answer.ts';
import { useWords } from '../words/words.ts';
import { Picture } from './picture.tsx';

interface Props {
  readonly layout: KeptLayout;
  /** Unique on the page. */
  readonly name: string;
  /** Without marks and figures, as it stands beside others. */
  readonly isSmall?: boolean;
}

/** A layout to look at only. */
export function LayoutPicture({ layout: { file }, layout, name, isSmall = false }: Props) {
  const { desk } = useDesk();
  const { say, format, locale } = useWords();
  const picture = useAnswer(() => desk.engine.ask('picture', { file, grain: undefined, small: isSmall }), [file, locale, format.unit]);
  if (picture.kind !== 'answer') return <p class="empty">{say('drawing-picture')}</p>;
  return <Picture still scene={picture.answer} name={name} label={say('picture-of-layout', { ups: upsOf(layout), size: format.size(file.sheet.width, file.sheet.height) })} />;
}
