import type { Stop } from '../compute/messages.ts';

/** Code of the station at which a setting of the plan can be moved; none for what belongs to the mill. */
export function ownerOf(setting: string, stops: readonly Pick<Stop, 'code' | 'path'>[]): string | undefined {
  if (setting === 'settings.rhythmS') return ownerOf('settings.furnace.rhythmS', stops);
  return stops.find(({ path }) => setting.startsWith(`${path}.`))?.code;
}
