import { useEffect } from 'react';
import { useSearch } from 'wouter';

/** An address may name a setting of its station, '/RF?setting=settings.rhythmS'; the page then takes hold of it. */
export function useNamedSetting(): void {
  const setting = new URLSearchParams(useSearch()).get('setting');
  useEffect(() => {
    if (setting) takeHoldOf(setting);
  }, [setting]);
}

/** A path may name a whole list, whose first value is then held. */
export function takeHoldOf(path: string): void {
  const name = CSS.escape(path);
  document.querySelector<HTMLElement>(`[data-path="${name}"], [data-path^="${name}."]`)?.focus();
}
