import { useEffect } from 'react';
import { useLocation } from 'wouter';
import type { Stop } from '../line/line-model.ts';
import { lineAddress, stationAddress } from './address.ts';
import { lettersOn } from './letters.ts';
import { nextFinding } from './next-finding.ts';

interface Keys {
  readonly stops: readonly Stop[];
  readonly here: string | undefined;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly compute: () => void;
  readonly showBefore: (before: boolean) => void;
}

/** Keys of the whole page. Single letters work outside inputs only; everything is listed under '?'. */
export function useKeys(keys: Keys): void {
  const [, go] = useLocation();
  useEffect(() => {
    const onDown = (event: KeyboardEvent) => {
      const act = actionFor(event, keys, go);
      if (!act) return;
      event.preventDefault();
      act();
    };
    const release = () => keys.showBefore(false);
    const onUp = ({ key }: KeyboardEvent) => key === 'b' && release();
    addEventListener('keydown', onDown);
    addEventListener('keyup', onUp);
    addEventListener('blur', release);
    return () => {
      removeEventListener('keydown', onDown);
      removeEventListener('keyup', onUp);
      removeEventListener('blur', release);
    };
  });
}

type Act = (() => void) | undefined;
type Go = (address: string) => void;

function actionFor(event: KeyboardEvent, keys: Keys, go: Go): Act {
  const typing = event.target instanceof Element && event.target.closest('input, select, dialog[open]');
  if (event.ctrlKey || event.metaKey) {
    if (event.key.toLowerCase() !== 'z') return undefined;
    return event.shiftKey ? keys.redo : keys.undo;
  }
  if (typing || event.altKey) return undefined;
  if (event.key.length === 1) return lettersOn() ? letterKey(event.key, keys, go) : undefined;
  return keys.here === undefined ? lineKey(event) : stationKey(event.key, keys, go);
}

function letterKey(key: string, { stops, here, compute, showBefore }: Keys, go: Go): Act {
  const at = stops.findIndex(({ code }) => code === here);
  switch (key) {
    case '.':
      return compute;
    case 'b':
      return () => showBefore(true);
    case 'p':
      return () => print();
    case 'n':
      return () => openAt(stops, nextFinding(stops, at, 1), go);
    case 'N':
      return () => openAt(stops, nextFinding(stops, at, -1), go);
    default:
      return controlKey(key);
  }
}

/** Every other letter leads to the block, or presses the button, that carries it as its shortcut. */
function controlKey(key: string): Act {
  const control = document.querySelector<HTMLElement>(`[aria-keyshortcuts~="${CSS.escape(key)}"]`);
  if (!control) return undefined;
  if (control instanceof HTMLButtonElement) return () => control.click();
  return () => (control.querySelector<HTMLElement>('input, select') ?? control).focus();
}

function stationKey(key: string, { stops, here }: Keys, go: Go): Act {
  if (key === 'Escape') return () => go(lineAddress);
  const at = stops.findIndex(({ code }) => code === here);
  const target = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: stops.length - 1 }[key];
  return target === undefined ? undefined : () => openAt(stops, target, go);
}

function openAt(stops: readonly Stop[], index: number, go: Go): void {
  const stop = stops[Math.min(stops.length - 1, Math.max(0, index))];
  if (stop) go(stationAddress(stop.code));
}

/** On the line, keys that reach the page itself go to the stations, which then move the focus among themselves. */
function lineKey({ key, target }: KeyboardEvent): Act {
  const links = [...document.querySelectorAll<HTMLElement>('.stops nav a')];
  const entry = links.find(({ tabIndex }) => tabIndex === 0);
  const found = { ArrowLeft: entry, ArrowRight: entry, Home: links[0], End: links[links.length - 1] }[key];
  if (found) return () => found.focus();
  return key === 'Enter' && target === document.body && entry ? () => entry.click() : undefined;
}
