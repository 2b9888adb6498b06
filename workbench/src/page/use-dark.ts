import { useSyncExternalStore } from 'react';

const query = '(prefers-color-scheme: dark)';

/** Whether the dark theme is on the page, chosen or followed from the system. */
export function useDark(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = matchMedia(query);
      const watch = new MutationObserver(changed);
      list.addEventListener('change', changed);
      watch.observe(document.documentElement, { attributeFilter: ['data-theme'] });
      return () => {
        list.removeEventListener('change', changed);
        watch.disconnect();
      };
    },
    () =>
      (document.documentElement.dataset.theme ?? (matchMedia(query).matches ? 'dark' : 'light')) === 'dark',
  );
}
