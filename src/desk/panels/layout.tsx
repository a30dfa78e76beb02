import type { ComponentChildren } from 'preact';

interface Props {
  readonly controls: ComponentChildren;
  readonly picture: ComponentChildren;
  /** More is read than set: both sides are about as wide. */
  readonly isReading?: boolean;
}

/** A panel's body: what can be set at one side, what it looks like at the other. */
export function Layout({ controls, picture, isReading = false }: Props) {
  return (
    <div class={isReading ? 'panel-body reading' : 'panel-body'}>
      <div class="controls">{controls}</div>
      <div class="view">{picture}</div>
    </div>
  );
}
