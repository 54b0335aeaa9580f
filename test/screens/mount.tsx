/** A screen in a made-up document, with actions that only remember. */
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { vi } from 'vitest';
import type { AppActions, AppModel } from '../../src/app/model.ts';
import { App } from '../../src/screens/App.tsx';
import { fetchDecided } from '../../src/screens/decided/Lazy.tsx';
import { fetchPractice } from '../../src/screens/practice/Lazy.tsx';

(globalThis as { IS_REACT_ACT_ENVIRONMENT?: boolean }).IS_REACT_ACT_ENVIRONMENT = true;

// Fetched before anything is mounted: a page that closes while they are on their way would leave them behind.
await Promise.all([fetchDecided(), fetchPractice()]);

export function rememberingActions() {
  return {
    press: vi.fn(),
    key: vi.fn(),
    type: vi.fn(),
    openCase: vi.fn(),
    newCase: vi.fn(),
    openVisit: vi.fn(),
    go: vi.fn(),
    setEar: vi.fn(),
    setSpeech: vi.fn(),
    setSpeechMayLeave: vi.fn(),
    talk: vi.fn(),
    setPreferences: vi.fn(),
    fetchOnDevice: vi.fn(),
    trySpeech: vi.fn(),
    armSound: vi.fn(),
    silence: vi.fn(),
    openKeypad: vi.fn(),
    correct: vi.fn(),
    note: vi.fn(),
    answerFlag: vi.fn(),
    saveFile: vi.fn(),
    savePaper: vi.fn(),
    takeOver: vi.fn(),
    takeUpdate: vi.fn(),
    askOwn: vi.fn(),
    askFiles: vi.fn(),
    askLock: vi.fn(),
    print: vi.fn(),
  } satisfies AppActions;
}

export interface Mounted {
  readonly actions: ReturnType<typeof rememberingActions>;
  readonly page: HTMLElement;
  show(model: AppModel): void;
  button(name: string): HTMLButtonElement;
  click(name: string): void;
  write(field: string, text: string): void;
  /** True when the browser's own meaning of the key was taken away. */
  press(key: string, more?: KeyboardEventInit): boolean;
  close(): void;
}

/** What a screen reader would call it: what is hidden from one does not count. */
function nameOf(element: Element): string {
  const copy = element.cloneNode(true) as Element;
  for (const hidden of copy.querySelectorAll('[aria-hidden="true"]')) hidden.remove();
  return (element.getAttribute('aria-label') ?? copy.textContent ?? '').replace(/\s+/g, ' ').trim();
}

function setText(field: HTMLInputElement | HTMLTextAreaElement, text: string): void {
  const prototype = field instanceof HTMLTextAreaElement ? HTMLTextAreaElement.prototype : HTMLInputElement.prototype;
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(field, text);
  field.dispatchEvent(new Event('input', { bubbles: true }));
}

export function mount(model: AppModel): Mounted {
  const actions = rememberingActions();
  const page = document.createElement('div');
  document.body.append(page);
  const root: Root = createRoot(page);
  const show = (next: AppModel) => act(() => root.render(<App model={next} actions={actions} />));
  const button = (name: string): HTMLButtonElement => {
    const all = [...page.querySelectorAll('button')];
    const found = all.find((one) => nameOf(one) === name) ?? all.find((one) => nameOf(one).startsWith(name));
    if (found === undefined) throw new Error(`no target named ${name}`);
    return found;
  };
  show(model);
  return {
    actions,
    page,
    show,
    button,
    click: (name) => {
      const target = button(name);
      act(() => {
        target.dispatchEvent(new MouseEvent('mousedown', { bubbles: true, cancelable: true }));
        target.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail: 1 }));
      });
    },
    write: (label, text) => {
      const field = [...page.querySelectorAll('label')]
        .find((one) => nameOf(one).startsWith(label))
        ?.querySelector<HTMLInputElement | HTMLTextAreaElement>('input, textarea');
      if (field === null || field === undefined) throw new Error(`no field named ${label}`);
      act(() => setText(field, text));
    },
    press: (key, more = {}) => {
      const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...more });
      act(() => {
        (document.activeElement ?? document.body).dispatchEvent(event);
      });
      return event.defaultPrevented;
    },
    close: () => {
      act(() => root.unmount());
      page.remove();
    },
  };
}
