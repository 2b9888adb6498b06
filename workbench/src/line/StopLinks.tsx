import type { KeyboardEvent } from 'react';
import { Link } from 'wouter';
import { stationAddress } from '../page/address.ts';
import type { Stop } from './line-model.ts';
import { stopInWords } from './line-words.ts';

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Links over a picture of the line: one stop for the tabulator, arrows move inside, Enter opens. */
export function StopLinks({
  stops,
  boxes,
  here,
  from = here,
}: {
  stops: readonly Stop[];
  boxes: readonly Box[];
  here?: string | undefined;
  /** Where the keys begin: the station here, or the one that was open last. */
  from?: string | undefined;
}) {
  const entry = Math.max(
    0,
    stops.findIndex(({ code }) => code === from),
  );
  return (
    <nav aria-label="Stations in travel order" onKeyDown={moveFocus}>
      {stops.map((stop, i) => (
        <Link
          key={stop.code}
          href={stationAddress(stop.code)}
          style={boxes[i]}
          tabIndex={i === entry ? 0 : -1}
          aria-current={stop.code === here ? 'page' : undefined}
          aria-label={stopInWords(stop)}
          title={stop.title}
        />
      ))}
    </nav>
  );
}

const steps: Record<string, (at: number, last: number) => number> = {
  ArrowLeft: (at) => at - 1,
  ArrowUp: (at) => at - 1,
  ArrowRight: (at) => at + 1,
  ArrowDown: (at) => at + 1,
  Home: () => 0,
  End: (_, last) => last,
};

function moveFocus(event: KeyboardEvent<HTMLElement>): void {
  const links = [...event.currentTarget.querySelectorAll('a')];
  const at = links.indexOf(document.activeElement as HTMLAnchorElement);
  const step = steps[event.key];
  if (at < 0 || !step || event.altKey || event.ctrlKey || event.metaKey) return;
  links[step(at, links.length - 1)]?.focus();
  event.preventDefault();
  event.stopPropagation();
}
