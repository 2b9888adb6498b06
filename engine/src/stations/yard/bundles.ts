import type { Wanted } from './cut-pattern.ts';
import type { YardEquipment } from './equipment.ts';
import type { Bundle } from './record.ts';
import { slingingPoints } from './slinging.ts';

/**
 * Bundles of equal rails: as many as the crew ties, fewer where bundle, crane or wagon would carry too much;
 * never less than one, so that a rail which is too heavy alone shows its mass against the limit.
 */
export function bundlesOf(
  { rails, railsPerBundle }: { rails: readonly Wanted[]; railsPerBundle: number },
  { bundleLimit, craneLimit, wagonLimit }: YardEquipment,
  massPerMetre: number,
): Bundle[] {
  return rails
    .filter(({ count }) => count > 0)
    .map(({ length, count }) => {
      const railMass = length * massPerMetre;
      const byMass = Math.floor(Math.min(bundleLimit, craneLimit, wagonLimit) / railMass + 1e-9);
      const perBundle = Math.max(1, Math.min(railsPerBundle, byMass, count));
      const bundleMass = perBundle * railMass;
      const bundles = Math.ceil(count / perBundle);
      const bundlesPerWagon = Math.max(1, Math.floor(wagonLimit / bundleMass + 1e-9));
      return {
        length,
        rails: count,
        railMass,
        perBundle,
        bundles,
        bundleMass,
        slingingPoints: slingingPoints(length),
        bundlesPerWagon,
        wagons: Math.ceil(bundles / bundlesPerWagon),
      };
    });
}
