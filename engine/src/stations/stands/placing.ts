import type { Bar } from '../../bar/bar.ts';
import type { DrawnSquares } from '../../phenomena/metal-flow/drawn-squares/squares.ts';
import { outlineThrough } from '../../section/flatten.ts';
import { meanOver, type TriMesh } from '../../section/mesh.ts';
import type { Outline } from '../../section/outline.ts';
import { sectionProperties } from '../../section/properties.ts';
import { moved, movedMesh, scaled, scaledMesh, turned, turnedMesh } from '../../section/transform.ts';
import { density } from '../../steel/expansion.ts';
import type { PassSettings } from './settings.ts';

/** The bar as it lies in front of the groove. */
export interface Placed {
  readonly outline: Outline;
  readonly mesh: TriMesh;
  /** Squares drawn on it, where there are any. */
  readonly squares?: DrawnSquares;
  /** m, m². */
  readonly length: number;
  readonly area: number;
  /** kg/m³ that size and mass were brought together with. */
  readonly density: number;
}

/** The bar turned on itself, led in front of the groove, and shrunk to the size that its mass has at its temperature. */
export function placed(bar: Bar, { turn, guide }: PassSettings): Placed {
  const angle = (turn * Math.PI) / 180;
  const { area, bounds } = sectionProperties(bar.outline);
  const [cx, cy] = [(bounds.left + bounds.right) / 2, (bounds.bottom + bounds.top) / 2];
  const x = guide ?? cx;
  const hot = meanOver(bar.mesh, bar.middle.temperature);
  const factor = sizeFactor(bar, area, hot);
  const led = (outline: Outline) => moved(scaled(turned(moved(outline, -cx, -cy), angle), factor), x, 0);
  return {
    outline: led(bar.outline),
    ...(bar.squares ? { squares: redrawn(bar.squares, led) } : {}),
    mesh: movedMesh(scaledMesh(turnedMesh(movedMesh(bar.mesh, -cx, -cy), angle), factor), x, 0),
    length: bar.length * factor,
    area: area * factor * factor,
    density: density(hot, bar.grade),
  };
}

const redrawn = (squares: DrawnSquares, led: (outline: Outline) => Outline): DrawnSquares => ({
  ...squares,
  points: led(outlineThrough(squares.points)).vertices.flatMap(({ x, y }) => [x, y]),
});

/**
 * Linear factor between the size the bar is drawn in and what its mass asks for at T, °C. The last percent of cooling
 * since the furnace; a bar whose size and mass disagree by more keeps its size.
 */
function sizeFactor({ mass, length, grade }: Bar, area: number, T: number): number {
  const factor = Math.cbrt(mass / (density(T, grade) * area * length));
  return Math.abs(factor - 1) < 0.02 ? factor : 1;
}
