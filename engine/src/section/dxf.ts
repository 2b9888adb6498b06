import { type Failure, ok, type Result } from '../outcome/result.ts';
import { chained } from './dxf/chain.ts';
import { entitiesOf } from './dxf/entities.ts';
import { segmentsOf } from './dxf/segments.ts';
import { edgesOf } from './edges.ts';
import type { Outline } from './outline.ts';
import { sectionProperties } from './properties.ts';
import { selfCrossing } from './self-crossing.ts';
import { scaled } from './transform.ts';

/** Everything that stands in the way of reading a drawing, one sentence each. */
export interface DrawingFailure extends Failure {
  readonly problems: readonly string[];
}

export interface DrawingWishes {
  /** Ends closer than this are joined, m. */
  readonly tolerance?: number;
  /** Length of one drawing unit, m; the drawing's own $INSUNITS unless given, millimetres when it has none. */
  readonly unit?: number;
}

/**
 * An outline from the text of an ASCII DXF drawing: closed LWPOLYLINE with bulges, or LINE and ARC entities whose
 * ends meet within the tolerance, in any order and direction. Comes back counter-clockwise. Notes and dimensions are
 * passed over; curves of other kinds, gaps, forks, a second outline and crossings are all listed, not only the first.
 */
export function fromDxf(
  text: string,
  { tolerance = 1e-5, unit }: DrawingWishes = {},
): Result<Outline, DrawingFailure> {
  const drawing = entitiesOf(text);
  const metres = unit ?? drawing.unit;
  const { segments, problems: strange } = segmentsOf(drawing.entities);
  const { vertices, problems: open } = chained(segments, tolerance / metres);
  const problems = [...drawing.problems, ...strange, ...open];
  if (problems.length > 0) return unreadable(problems);
  const outline = counterClockwise(scaled({ vertices }, metres));
  const crossing = selfCrossing(outline);
  if (!crossing) return ok(outline);
  const [x, y] = [crossing.x / metres, crossing.y / metres];
  return unreadable([`the outline crosses itself at x ${x.toFixed(3)}, y ${y.toFixed(3)}`]);
}

const unreadable = (problems: string[]): Result<Outline, DrawingFailure> => ({
  ok: false,
  failure: { model: 'drawing', reason: problems.join('; '), problems },
});

function counterClockwise(outline: Outline): Outline {
  if (sectionProperties(outline).area >= 0) return outline;
  const { vertices } = outline;
  const n = vertices.length;
  return {
    vertices: edgesOf(outline).map((_, i) => {
      const { x, y } = vertices[(n - i) % n];
      return { x, y, bulge: 0 - vertices[n - 1 - i].bulge };
    }),
  };
}
