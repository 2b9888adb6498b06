import { fail, ok, type Result } from '../../outcome/result.ts';
import { type Corner, filleted, filletThatDoesNotFit } from '../filleted.ts';
import type { Outline, Vertex } from '../outline.ts';
import { crownArcs, mm } from './crown.ts';
import type { RailDimensions } from './dimensions.ts';
import { mirroredAboutAxis } from './halves.ts';
import { webFillets } from './web-fillets.ts';

/**
 * The outline of a flat-bottom rail from its dimensions: a chain of lines and arcs, tangent at every joint, in closed
 * form (drawing in this room's README). Upright, symmetric about x = 0, underside at y = 0. Fails where a joint cannot
 * be made tangent, and names it.
 */
export function railOutline(dimensions: RailDimensions): Result<Outline> {
  const crown = crownArcs(dimensions);
  if (!crown.ok) return crown;
  const head = webFillets(headJoint(dimensions));
  if (!head.ok) return head;
  const foot = webFillets(footJoint(dimensions));
  if (!foot.ok) return foot;
  if (dimensions.upperWebTouchesAt < dimensions.lowerWebTouchesAt) {
    return impossible('the upper web arc is upright below the lower one');
  }
  const side = roundedSide(dimensions, crown.value[crown.value.length - 1], head.value[0]);
  if (!side.ok) return side;
  const upwards = foot.value.map(({ x, y, bulge }) => ({ x, y: -y, bulge })).reverse();
  const lower = upwards.map(({ x, y }, i) => ({
    x,
    y,
    bulge: foot.value[foot.value.length - 2 - i]?.bulge ?? 0,
  }));
  const toe = roundedToe(dimensions, upwards[upwards.length - 1]);
  if (!toe.ok) return toe;
  const half = [...crown.value.slice(0, -1), ...side.value, ...head.value, ...lower, ...toe.value];
  return ok(mirroredAboutAxis(withoutRepeats(half)));
}

const impossible = (reason: string) => fail({ model: 'profile', reason });

const headJoint = (d: RailDimensions) => ({
  part: 'head' as const,
  onAxis: d.height - d.headDepth,
  slope: d.headFishingSlope,
  radii: d.headFilletRadii,
  meetsAt: d.headFilletMeetsWebAt,
  halfWeb: d.webThickness / 2,
  webRadius: d.upperWebRadius,
  touchesAt: d.upperWebTouchesAt,
});

/** The foot seen in a level mirror: heights change their sign. */
const footJoint = (d: RailDimensions) => ({
  part: 'foot' as const,
  onAxis: -d.footDepth,
  slope: d.footFishingSlope,
  radii: d.footFilletRadii,
  meetsAt: d.footFilletMeetsWebAt === undefined ? undefined : -d.footFilletMeetsWebAt,
  halfWeb: d.webThickness / 2,
  webRadius: d.lowerWebRadius,
  touchesAt: -d.lowerWebTouchesAt,
});

/** From the end of the crown down the side, around the lower corner, and in along the fishing line. */
function roundedSide(d: RailDimensions, from: Vertex, to: Vertex): Result<Vertex[]> {
  const { sideSlope: k, headFishingSlope: m } = d;
  const onAxis = d.height - d.headDepth;
  // Side x = from.x + (from.y − y) / k meets fishing line y = onAxis + x / m.
  const x = (from.x + (from.y - onAxis) / k) / (1 + 1 / (k * m));
  const corner = { x, y: onAxis + x / m, radius: d.headCornerRadius };
  return rounded('the lower corner of the head', [sharp(from), corner, sharp(to)]);
}

/** From the foot fishing line outwards, around the toe, in along the underside to the axis. */
function roundedToe(d: RailDimensions, from: Vertex): Result<Vertex[]> {
  const x = d.footWidth / 2;
  const outer = outerSlope(d);
  if (!outer.ok) return outer;
  const y = outer.value?.thickness ?? d.footDepth - x / d.footFishingSlope;
  if (!(y > 0)) return impossible(`the foot runs out before its edge: ${mm(y)} thick there`);
  return rounded('the foot', [
    sharp(from),
    ...(outer.value ? [outer.value.corner] : []),
    { x, y, radius: d.toeUpperRadius },
    { x, y: 0, radius: d.toeLowerRadius },
    { x: 0, y: 0, radius: 0 },
  ]);
}

/** Where the fishing line y = F − x / m meets the outer slope y = t + (x_toe − x) / k; nothing without an outer slope. */
function outerSlope(d: RailDimensions): Result<{ thickness: number; corner: Corner } | undefined> {
  const { toeSlope: k, toeSlopeRadius: radius, toeThickness: thickness, footFishingSlope: m } = d;
  if (k === undefined && radius === undefined && thickness === undefined) return ok(undefined);
  if (k === undefined || radius === undefined || thickness === undefined) {
    return impossible('the outer slope of the foot needs all three: slope, arc and toe thickness');
  }
  const x = (d.footDepth - thickness - d.footWidth / 2 / k) / (1 / m - 1 / k);
  return ok({ thickness, corner: { x, y: d.footDepth - x / m, radius } });
}

const sharp = ({ x, y }: Vertex): Corner => ({ x, y, radius: 0 });

function rounded(part: string, corners: readonly Corner[]): Result<Vertex[]> {
  const misfit = filletThatDoesNotFit(corners, false);
  if (misfit === undefined) return ok(filleted(corners, false));
  const { radius } = corners[misfit];
  return impossible(`the rounding R ${mm(radius)} of ${part} does not fit between its neighbours`);
}

/** The parts of the chain share their end points; one of each is enough. */
const withoutRepeats = (half: readonly Vertex[]): Vertex[] =>
  half.filter(({ x, y, bulge }, i) => {
    const next = half[i + 1];
    return next === undefined || bulge !== 0 || Math.hypot(next.x - x, next.y - y) > 1e-12;
  });
