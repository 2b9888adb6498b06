import { useSyncExternalStore } from 'react';

const query = '(min-width: 1200px)';

/** Whether the page is wide enough for the line to run across; below 1200 px it runs downward. */
export function useWide(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    () => matchMedia(query).matches,
  );
}
