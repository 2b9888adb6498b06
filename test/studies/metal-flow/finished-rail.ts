import type { Bar } from '@bloomrail/engine/bar/bar';
import { contains } from '@bloomrail/engine/section/contains';
import { chordsAt, widthAt } from '@bloomrail/engine/section/crossings';
import { edgesOf, nearestOn, pointAt } from '@bloomrail/engine/section/edges';
import { meanOver } from '@bloomrail/engine/section/mesh';
import type { Outline } from '@bloomrail/engine/section/outline';
import { density } from '@bloomrail/engine/steel/expansion';

/** One gauge of the finished rail: how far it is off, mm, and class Y of EN 13674-1 (a track manual's table; crown, fishing: from memory). */
export interface Gauge {
  readonly name: string;
  readonly least: number;
  readonly most: number;
  readonly low: number;
  readonly high: number;
}

/** A bar behind the finisher, upright and shrunk to 20 °C. */
export function coldRail({ outline, mesh, middle, grade }: Bar): Outline {
  const hot = meanOver(mesh, middle.temperature);
  const factor = Math.cbrt(density(20, grade) / density(hot, grade));
  return { vertices: outline.vertices.map(({ x, y }) => ({ x: -y / factor, y: x / factor, bulge: 0 })) };
}

/** Gauges of a rolled rail against the nominal one, both upright, m. */
export function gauges(rail: Outline, nominal: Outline): Gauge[] {
  const ys = rail.vertices.map(({ y }) => y);
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
  const height = top - bottom;
  const foot = rail.vertices.filter(({ y }) => y < bottom + 0.03).map(({ x }) => Math.abs(x));
  const thick = (outline: Outline, x: number) => {
    const [low, high] = chordsAt(outline, 'x', x)[0];
    return high - low;
  };
  const web = Array.from({ length: 25 }, (_, i) => widthAt(rail, 0.06 + 0.002 * i));
  const one = (name: string, value: number, low: number, high: number): Gauge => ({
    ...{ name, least: 1000 * value, most: 1000 * value, low, high },
  });
  return [
    one('height', height - 0.172, -1.1, 0.6),
    one('foot width', 2 * Math.max(...foot) - 0.15, -1, 1.5),
    one('head width, 14 mm down', widthAt(rail, top - 0.014) - 0.072, -0.5, 0.6),
    one('web thickness', Math.min(...web) - 0.0165, -0.5, 1),
    one('toe thickness, 5 mm inside', thick(rail, 0.07) - thick(nominal, 0.07), -0.5, 0.75),
    along('crown', rail, nominal, { x: [-1, 26], y: [165, 180] }, -0.3, 0.6),
    along('fishing surface, head', rail, nominal, { x: [18, 33], y: [115, 140] }, -0.6, 0.6),
    along('fishing surface, foot', rail, nominal, { x: [20, 60], y: [12, 50] }, -0.6, 0.6),
  ];
}

interface Window {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

/** Metal beyond the nominal line (positive) or missing, along a part of it. */
function along(
  name: string,
  rail: Outline,
  nominal: Outline,
  { x, y }: Window,
  low: number,
  high: number,
): Gauge {
  const rolled = edgesOf(rail);
  const off: number[] = [];
  for (const edge of edgesOf(nominal)) {
    for (let share = 0; share < 1; share += 0.1) {
      const point = pointAt(edge, share);
      const isIn =
        1e3 * point.x > x[0] && 1e3 * point.x < x[1] && 1e3 * point.y > y[0] && 1e3 * point.y < y[1];
      if (!isIn) continue;
      const { distance } = nearestOn(rolled, point.x, point.y);
      off.push(1000 * distance * (contains(rail, point.x, point.y) ? 1 : -1));
    }
  }
  return { name, least: Math.min(...off), most: Math.max(...off), low, high };
}
