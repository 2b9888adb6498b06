import { fail, ok, type Result } from '../../outcome/result.ts';
import { type Corner, filleted, filletThatDoesNotFit } from '../filleted.ts';
import type { Outline, Vertex } from '../outline.ts';
import { mm } from './crown.ts';
import type { CraneDimensions } from './dimensions.ts';
import { mirroredAboutAxis } from './halves.ts';

/**
 * The outline of a crane rail of DIN 536 form A: crown arc, upright sides, sloping head underside, upright web and a
 * foot with two slopes, every corner rounded tangent. Upright, symmetric about x = 0, underside at y = 0. Areas come
 * out 0.2 to 0.5 % above the tabulated ones: which small radius belongs to which corner is in doubt.
 */
export function craneOutline(dimensions: CraneDimensions): Result<Outline> {
  const crown = crownAndCorner(dimensions);
  if (!crown.ok) return crown;
  const corners = cornersBelow(dimensions, crown.value[2]);
  const misfit = filletThatDoesNotFit(corners, false);
  if (misfit !== undefined) {
    const { x, y, radius } = corners[misfit];
    return fail({
      model: 'profile',
      reason: `the rounding R ${mm(radius)} at half width ${mm(x)}, height ${mm(y)} does not fit between its neighbours`,
    });
  }
  return ok(mirroredAboutAxis([...crown.value.slice(0, 2), ...filleted(corners, false)]));
}

/** The crown from the axis, the upper corner, and the point where that meets the side; clockwise. */
function crownAndCorner({
  height,
  headWidth,
  crownRadius,
  headCornerRadius,
}: CraneDimensions): Result<Vertex[]> {
  const centreX = headWidth / 2 - headCornerRadius;
  const reach = crownRadius - headCornerRadius;
  if (!(centreX >= 0 && reach > centreX)) {
    return fail({
      model: 'profile',
      reason: `the upper corner R ${mm(headCornerRadius)} does not fit under the crown R ${mm(crownRadius)}`,
    });
  }
  const lean = Math.asin(centreX / reach);
  const centreY = height - crownRadius + reach * Math.cos(lean);
  return ok([
    { x: 0, y: height, bulge: -Math.tan(lean / 4) },
    {
      x: centreX + headCornerRadius * Math.sin(lean),
      y: centreY + headCornerRadius * Math.cos(lean),
      bulge: -Math.tan((Math.PI / 2 - lean) / 4),
    },
    { x: headWidth / 2, y: centreY, bulge: 0 },
  ]);
}

/** From the head's side down to the axis, before rounding. */
function cornersBelow(d: CraneDimensions, from: Vertex): Corner[] {
  const [web, toe] = [d.webThickness / 2, d.footWidth / 2];
  return [
    { x: from.x, y: from.y, radius: 0 },
    { x: d.headWidth / 2, y: d.height - d.headSideHeight, radius: d.headLowerCornerRadius },
    { x: web, y: d.height - d.headDepthAtWeb, radius: d.headFilletRadius },
    { x: web, y: d.footThicknessAtWeb, radius: d.footFilletRadius },
    { x: d.stepWidth / 2, y: d.footThicknessAtStep, radius: 0 },
    { x: toe, y: d.toeThickness, radius: d.toeRadius },
    { x: toe, y: 0, radius: 0 },
    { x: 0, y: 0, radius: 0 },
  ];
}
