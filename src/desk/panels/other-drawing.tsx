import { useDesk } from '../desk-context.ts';
import { layOutItsOwn, putAside } from '../kin.ts';
import { chosenBlank } from '../searching.ts';
import { useWords } from '../words/words.ts';

/** Says plainly that the chosen layout is of another drawing than the one on the desk, and offers what to do. */
export function OtherDrawing() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const chosen = desk.chosen.value;
  const kind = chosen && desk.kin.value.known.get(chosen.id);
  const blank = chosenBlank(desk);
  const { value: reading } = desk.reading;
  if (!chosen || !blank || reading.kind !== 'answer' || kind === undefined || kind === 'same') return null;
  const { designs } = chosen.file;
  const side = (axis: 0 | 1) => Math.max(...designs[0].outline.map((point) => point[axis]));
  const facts = {
    name: designs.map(({ id }) => id).join(', '),
    size: format.size(side(0), side(1)),
    deskName: reading.answer.name,
    deskSize: format.size(blank.box.maxX - blank.box.minX, blank.box.maxY - blank.box.minY),
  };
  return (
    <div class="conflict" role="alert">
      <p>{say(`layout-of-${kind}`, facts)}</p>
      <button type="button" onClick={() => void layOutItsOwn(desk, chosen)}>{say('lay-out-its-own')}</button>
      <button type="button" onClick={() => putAside(desk, chosen)}>{say('put-aside')}</button>
    </div>
  );
}
