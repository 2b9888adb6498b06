import { faceOf } from '../../phenomena/conduction/face.ts';
import { pointwise, type Skin, type SurfaceChannel } from '../../phenomena/conduction/surface.ts';
import { gapShare } from '../../phenomena/radiation/furnace-exchange.ts';
import { blackEmission, blackEmissionSlope } from '../../phenomena/radiation/grey.ts';
import type { FaceShares, ZoneEquipment } from './equipment.ts';

/**
 * Heat of one zone on the skin: radiation by the zone's exchange factor and convection, each cut down by the share of
 * its face; the sides also by the gap to the neighbours, which are as hot as the bloom itself.
 *
 * gap, height   m, between blooms and of the side faces.
 */
export function zoneHeat(
  skin: Skin,
  zone: ZoneEquipment,
  gas: number,
  shares: FaceShares,
  gap: number,
  height: number,
): SurfaceChannel {
  const side = gapShare(gap, height, zone.exchange);
  const share = Float64Array.from({ length: skin.edges }, (_, e) => shares[faceOf(skin, e)]);
  const seen = share.map((each, e) => each * zone.exchange * (isSide(skin, e) ? side : 1));
  const source = blackEmission(gas);
  return pointwise('furnace', (T, _, end) => {
    const e = end >> 1;
    const h = share[e] * zone.convection;
    return {
      flux: seen[e] * (source - blackEmission(T)) + h * (gas - T),
      slope: -seen[e] * blackEmissionSlope(T) - h,
    };
  });
}

const isSide = (skin: Skin, edge: number): boolean => {
  const face = faceOf(skin, edge);
  return face === 'left' || face === 'right';
};
