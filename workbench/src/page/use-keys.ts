import { useEffect } from 'react';
import { useLocation } from 'wouter';
import type { Stop } from '../line/line-model.ts';
import { lineAddress, stationAddress } from './address.ts';

interface Keys {
  readonly stops: readonly Stop[];
  readonly here: string | undefined;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly table: () => void;
  readonly list: () => void;
  readonly compute: () => void;
}

/** Keys of the whole page. Single letters work outside inputs only; everything is listed under '?'. */
export function useKeys(keys: Keys): void {
  const [, go] = useLocation();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const act = actionFor(event, keys, go);
      if (!act) return;
      event.preventDefault();
      act();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  });
}

type Go = (address: string) => void;

function actionFor(event: KeyboardEvent, keys: Keys, go: Go): (() => void) | undefined {
  const typing = event.target instanceof Element && event.target.closest('input, select, dialog[open]');
  if (event.ctrlKey || event.metaKey) {
    if (event.key.toLowerCase() !== 'z') return undefined;
    return event.shiftKey ? keys.redo : keys.undo;
  }
  if (typing || event.altKey) return undefined;
  return pageKey(event.key, keys) ?? travelKey(event.key, keys, go);
}

function pageKey(key: string, { table, list, compute }: Keys): (() => void) | undefined {
  return new Map([
    ['t', table],
    ['?', list],
    ['.', compute],
  ]).get(key);
}

function travelKey(key: string, { stops, here }: Keys, go: Go): (() => void) | undefined {
  if (here === undefined) return key === 'ArrowRight' || key === 'ArrowDown' ? focusLine : undefined;
  if (key === 'Escape') return () => go(lineAddress);
  const at = stops.findIndex(({ code }) => code === here);
  const target = targetOf(key, stops, at);
  return target === undefined ? undefined : () => openAt(stops, target, go);
}

/** Index of the station that a key leads to from the one at `at`. */
function targetOf(key: string, stops: readonly Stop[], at: number): number | undefined {
  switch (key) {
    case 'ArrowLeft':
      return at - 1;
    case 'ArrowRight':
      return at + 1;
    case 'Home':
      return 0;
    case 'End':
      return stops.length - 1;
    case 'n':
      return nextFinding(stops, at, 1);
    case 'N':
      return nextFinding(stops, at, -1);
    default:
      return undefined;
  }
}

function openAt(stops: readonly Stop[], index: number, go: Go): void {
  const stop = stops[Math.min(stops.length - 1, Math.max(0, index))];
  if (stop) go(stationAddress(stop.code));
}

function focusLine(): void {
  document.querySelector<HTMLElement>('.stops nav a[tabindex="0"]')?.focus();
}

/** The next station with a finding, around the end of the line if need be. */
function nextFinding(stops: readonly Stop[], at: number, way: 1 | -1): number {
  for (let k = 1; k <= stops.length; k++) {
    const i = (at + way * k + stops.length) % stops.length;
    if (stops[i].findings.length) return i;
  }
  return at;
}
