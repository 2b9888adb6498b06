/**
 * A closed curve of exact lines and arcs in the section plane, m, counter-clockwise, material on the left.
 * Vertex i carries the bulge of the edge that runs from it to vertex i + 1: tan(θ/4), θ the arc's angle,
 * positive when the arc turns left; 0 is a straight line. Mirroring, moving and writing DXF keep arcs exact.
 *
 *            bulge > 0 (turns left)
 *        1 ────────╮            x to the right, y up;
 *        │         │            in a pass: x along the roll axes, y across the gap;
 *        0 ────────╯            a finished rail: x across, y up from the foot's underside.
 */
export interface Outline {
  readonly vertices: readonly Vertex[];
}

/** An open chain of the same edges: half of a groove, a roll's profile. The last bulge is unused. */
export interface Path {
  readonly vertices: readonly Vertex[];
}

export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}
