import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Scene } from '../../render/scene.ts';
import { useWords } from '../words/words.ts';
import { listenToPicture } from './picture-pointers.ts';
import { sceneNodes } from './scene-nodes.ts';
import { around, moved, viewBoxText, whole, zoomed, type ViewBox } from './view-box.ts';

interface Props {
  readonly scene: Scene;
  /** What is seen, for people who do not see it. */
  readonly label: string;
  /** Unique on the page. */
  readonly name: string;
  /** Look at this place (the scene's own axes); a new object looks anew. */
  readonly focus?: { readonly x: number; readonly y: number; readonly mm: number } | undefined;
  /** A picture to look at only: no keys, no dragging. */
  readonly still?: boolean;
}

const ZOOM_STEP = 1.25;
/** Part of the picture that an arrow key moves it by. */
const MOVE_STEP = 0.08;

/** A scene that can be zoomed and moved by wheel, pointer, keys and buttons. */
export function Picture({ scene, label, name, focus, still = false }: Props) {
  const { say } = useWords();
  const svg = useRef<SVGSVGElement>(null);
  const [view, setView] = useState<ViewBox>(() => whole(scene.box));
  const shape = viewBoxText(whole(scene.box));
  useEffect(() => setView(whole(scene.box)), [shape]);
  useEffect(() => {
    if (focus) setView(around({ x: focus.x, y: -focus.y }, focus.mm, whole(scene.box)));
  }, [focus]);
  useLayoutEffect(() => svg.current?.replaceChildren(...sceneNodes(scene, `${name}-`)), [scene, name]);
  useEffect(() => {
    const element = svg.current;
    return element && !still ? listenToPicture(element, ZOOM_STEP, setView) : undefined;
  }, [still]);
  if (still) return <svg ref={svg} class="picture" role="img" aria-label={label} viewBox={viewBoxText(view)} />;
  const middle = { x: view.x + view.width / 2, y: view.y + view.height / 2 };
  const nearer = (factor: number) => setView(zoomed(view, factor, middle));
  const onKeyDown = (event: KeyboardEvent) => {
    const next = viewAfterKey(event.key, view, () => whole(scene.box));
    if (!next) return;
    event.preventDefault();
    setView(next);
  };
  return (
    <div class="picture-frame">
      <div class="picture-tools" role="group" aria-label={say('view')}>
        <button type="button" onClick={() => nearer(ZOOM_STEP)} aria-label={say('nearer')}>+</button>
        <button type="button" onClick={() => nearer(1 / ZOOM_STEP)} aria-label={say('farther')}>−</button>
        <button type="button" onClick={() => setView(whole(scene.box))}>{say('whole-picture')}</button>
      </div>
      <svg ref={svg} class={view.width < whole(scene.box).width ? 'picture is-near' : 'picture'} role="img" aria-label={label} viewBox={viewBoxText(view)} tabIndex={0} onKeyDown={onKeyDown} />
    </div>
  );
}

function viewAfterKey(key: string, view: ViewBox, all: () => ViewBox): ViewBox | undefined {
  const middle = { x: view.x + view.width / 2, y: view.y + view.height / 2 };
  switch (key) {
    case '+': case '=': return zoomed(view, ZOOM_STEP, middle);
    case '-': return zoomed(view, 1 / ZOOM_STEP, middle);
    case '0': return all();
    case 'ArrowLeft': return moved(view, -view.width * MOVE_STEP, 0);
    case 'ArrowRight': return moved(view, view.width * MOVE_STEP, 0);
    case 'ArrowUp': return moved(view, 0, -view.height * MOVE_STEP);
    case 'ArrowDown': return moved(view, 0, view.height * MOVE_STEP);
    default: return undefined;
  }
}
