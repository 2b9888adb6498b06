import type { Item, Spot } from './drawing.ts';

/**
 * A dimension between two points, its line `offset` mm to the left of the way from the first to the second
 * (negative: to the right), as lines, arrowheads and text.
 */
export function dimension(from: Spot, to: Spot, offset: number, text: string): Item[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const normal = { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
  const along = (spot: Spot, by: number): Spot => ({ x: spot.x + by * normal.x, y: spot.y + by * normal.y });
  const [a, b] = [along(from, offset), along(to, offset)];
  const beyond = offset + Math.sign(offset) * 2;
  const upright = Math.abs(normal.x) > 0.5;
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  return [
    { kind: 'line', from: along(from, Math.sign(offset)), to: along(from, beyond), stroke: 'thin' },
    { kind: 'line', from: along(to, Math.sign(offset)), to: along(to, beyond), stroke: 'thin' },
    { kind: 'line', from: a, to: b, stroke: 'thin' },
    { kind: 'arrow', at: a, towards: b },
    { kind: 'arrow', at: b, towards: a },
    {
      kind: 'text',
      at: upright ? { x: middle.x - 1.2, y: middle.y } : { x: middle.x, y: middle.y + 1.2 },
      text,
      size: 3.5,
      anchor: 'middle',
      turned: upright,
    },
  ];
}
