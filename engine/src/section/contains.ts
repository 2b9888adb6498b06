import type { Outline } from './outline.ts';

/**
 * Whether a point lies in the material. The outline is its chord polygon with each circular segment added or taken
 * away, so the answer is the parity of how many of these hold the point. Points on the outline fall to one side.
 */
export function contains({ vertices }: Outline, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = vertices.length - 1; i < vertices.length; j = i++) {
    const [a, b] = [vertices[j], vertices[i]];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const cross = (x - a.x) * dy - (y - a.y) * dx;
    // A point on the chord's line counts as a hair to its right and above, as the crossing rule does.
    const right = cross !== 0 ? cross : dy !== 0 ? dy : -dx;
    if (a.y <= y && b.y > y && right < 0) inside = !inside;
    if (b.y <= y && a.y > y && right > 0) inside = !inside;
    if (right * a.bulge > 0 && insideCircle(x - (a.x + b.x) / 2, y - (a.y + b.y) / 2, dx, dy, a.bulge))
      inside = !inside;
  }
  return inside;
}

/** Whether (px, py), seen from the middle of the chord (dx, dy), lies in the circle of the arc with this bulge. */
function insideCircle(px: number, py: number, dx: number, dy: number, bulge: number): boolean {
  const quarter = (dx * dx + dy * dy) / 4;
  const w = px * dy - py * dx;
  return bulge * bulge * (px * px + py * py - quarter) + (w * bulge * (1 - bulge * bulge)) / 2 < 0;
}
