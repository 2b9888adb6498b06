import { fail, ok, type Result } from '../../outcome/result.ts';
import type { Vertex } from '../outline.ts';
import type { RailDimensions } from './dimensions.ts';

/**
 * The crown from the axis to the side: arcs tangent to one another, each centred on the radius through the joint
 * before it; the last one runs on until it has the side's slope. Vertices from the top outwards, clockwise.
 */
export function crownArcs({ height, crown, sideSlope }: RailDimensions): Result<Vertex[]> {
  const vertices: Vertex[] = [];
  const side = Math.atan(sideSlope);
  // The normal leans by `angle` from upright; every arc starts with the lean that the one before ended with.
  let [x, y, angle] = [0, height, 0];
  for (let i = 0; i < crown.length; i++) {
    const { radius, endsAt } = crown[i];
    const last = i === crown.length - 1;
    const [centreX, centreY] = [x - radius * Math.sin(angle), y - radius * Math.cos(angle)];
    const end = last ? side : Math.asin(((endsAt ?? Number.NaN) - centreX) / radius);
    if (!(end > angle && end <= side)) return cannotEnd(i, radius, endsAt);
    vertices.push({ x, y, bulge: -Math.tan((end - angle) / 4) });
    [x, y, angle] = [centreX + radius * Math.sin(end), centreY + radius * Math.cos(end), end];
  }
  return ok([...vertices, { x, y, bulge: 0 }]);
}

const cannotEnd = (i: number, radius: number, endsAt: number | undefined) =>
  fail({
    model: 'profile',
    reason:
      endsAt === undefined
        ? `crown arc ${i + 1} (R ${mm(radius)}) has no half width at which it ends, or starts steeper than the side`
        : `crown arc ${i + 1} (R ${mm(radius)}) cannot end at half width ${mm(endsAt)}: it starts farther out, or is steeper than the side there`,
  });

/** For sentences about a drawing: three decimals at most. */
export const mm = (metres: number): string => `${Number((metres * 1e3).toFixed(3))} mm`;
