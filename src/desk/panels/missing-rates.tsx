import type { QuoteAnswer } from '../engine/protocol.ts';
import { useWords } from '../words/words.ts';

/** What nobody gave; each leads to its field. */
export function MissingRates({ missing }: Pick<QuoteAnswer, 'missing'>) {
  const { say } = useWords();
  const goTo = (figure: string) => {
    const field = document.querySelector<HTMLElement>(`[data-rate="${CSS.escape(figure)}"]`);
    field?.scrollIntoView({ block: 'center' });
    field?.focus();
  };
  return (
    <div class="warning">
      <p>{say('missing-rates')}</p>
      <p class="buttons">{missing.map(({ figure, text }) => <button key={figure} type="button" class="small" onClick={() => goTo(figure)}>{text}</button>)}</p>
    </div>
  );
}
