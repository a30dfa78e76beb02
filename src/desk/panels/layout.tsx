import type { ComponentChildren } from 'preact';

/** A panel's body: what can be set at one side, what it looks like at the other. */
export function Layout({ controls, picture }: { readonly controls: ComponentChildren; readonly picture: ComponentChildren }) {
  return (
    <div class="panel-body">
      <div class="controls">{controls}</div>
      <div class="view">{picture}</div>
    </div>
  );
}
