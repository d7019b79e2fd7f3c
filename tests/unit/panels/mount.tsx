import { act, type ReactNode } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach } from 'vitest';
import { type View, ViewProvider } from '../../../src/state/view.tsx';

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

const roots: Root[] = [];

/** Mounts panels on a view, in a document of their own. */
export const mount = (view: View, children: ReactNode): HTMLElement => {
  const host = document.createElement('div');
  document.body.append(host);
  const root = createRoot(host);
  roots.push(root);
  act(() => root.render(<ViewProvider value={view}>{children}</ViewProvider>));
  return host;
};

afterEach(() => {
  act(() => {
    for (const root of roots.splice(0)) root.unmount();
  });
  document.body.replaceChildren();
});

export const press = (element: Element, key: string): void =>
  act(() => {
    element.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
  });

export const click = (element: Element): void =>
  act(() => {
    element.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }));
  });

/** Writes into a control as a person would: the value, then the event React listens for. */
export const write = (control: HTMLInputElement, value: string): void =>
  act(() => {
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(control, value);
    control.dispatchEvent(new Event('input', { bubbles: true }));
  });

export const only = <T extends Element = HTMLElement>(host: ParentNode, selector: string): T => {
  const found = host.querySelectorAll<T>(selector);
  if (found.length !== 1) throw new Error(`${found.length} elements match ${selector}`);
  return found[0];
};
