import { filleted } from './filleted.ts';
import type { Outline } from './outline.ts';

/** A bloom's section, centred on the origin, m; the corner radius is at most half of the smaller side. */
export function rectangle(width: number, height: number, cornerRadius: number): Outline {
  const [x, y, radius] = [width / 2, height / 2, Math.min(cornerRadius, width / 2, height / 2)];
  const corners = [
    { x: -x, y: -y, radius },
    { x, y: -y, radius },
    { x, y, radius },
    { x: -x, y, radius },
  ];
  return { vertices: withoutRepeats(filleted(corners, true)) };
}

/** A full circle as two half circles; radius in m. */
export const circle = (radius: number): Outline => ({
  vertices: [
    { x: radius, y: 0, bulge: 1 },
    { x: -radius, y: 0, bulge: 1 },
  ],
});

/** Where two fillets meet, the line between them has no length: only the second of its ends stays. */
const withoutRepeats = (vertices: Outline['vertices']): Outline['vertices'] =>
  vertices.filter(({ x, y, bulge }, i) => {
    const next = vertices[(i + 1) % vertices.length];
    return bulge !== 0 || Math.hypot(next.x - x, next.y - y) > 1e-12;
  });
