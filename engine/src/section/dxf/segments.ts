import type { Point } from '../edges.ts';
import type { Entity } from './entities.ts';

/** One line or arc of a drawing, in drawing units; bulge as in an outline. */
export interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  /** Where it stands in the file. */
  readonly line: number;
}

/** Notes that are no part of an outline. */
const passedOver = new Set([
  'TEXT',
  'MTEXT',
  'DIMENSION',
  'POINT',
  'LEADER',
  'MULTILEADER',
  'VIEWPORT',
  'HATCH',
  'TOLERANCE',
  'SEQEND',
]);

type Read = { segments: Segment[]; problems: string[] };

/** Lines and arcs of the entities; whatever else draws a curve is named. */
export function segmentsOf(entities: readonly Entity[]): Read {
  const reads = entities.map((entity) => read(entity));
  return {
    segments: reads.flatMap(({ segments }) => segments),
    problems: reads.flatMap(({ problems }) => problems),
  };
}

function read(entity: Entity): Read {
  if (passedOver.has(entity.kind)) return { segments: [], problems: [] };
  if (entity.kind === 'LINE') return readLine(entity);
  if (entity.kind === 'ARC') return readArc(entity);
  if (entity.kind === 'LWPOLYLINE') return readPolyline(entity);
  return {
    segments: [],
    problems: [`${where(entity)} is of a kind that is not read: use LWPOLYLINE, LINE and ARC`],
  };
}

const where = ({ kind, line }: Entity): string => `${kind} at line ${line}`;

const number = ({ pairs }: Entity, code: number): number =>
  Number(pairs.find((pair) => pair.code === code)?.value ?? Number.NaN);

const incomplete = (entity: Entity): Read => ({
  segments: [],
  problems: [`${where(entity)} lacks a number`],
});

function readLine(entity: Entity): Read {
  const [x, y, toX, toY] = [10, 20, 11, 21].map((code) => number(entity, code));
  if (![x, y, toX, toY].every(Number.isFinite)) return incomplete(entity);
  return {
    segments: [{ from: { x, y }, to: { x: toX, y: toY }, bulge: 0, line: entity.line }],
    problems: [],
  };
}

/** Arcs run counter-clockwise from the start angle to the end angle, in degrees. */
function readArc(entity: Entity): Read {
  const [x, y, radius, start, end] = [10, 20, 40, 50, 51].map((code) => number(entity, code));
  if (![x, y, radius, start, end].every(Number.isFinite) || radius <= 0) return incomplete(entity);
  const sweep = (((end - start) % 360) + 360) % 360;
  const at = (degrees: number): Point => {
    const angle = (degrees * Math.PI) / 180;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  };
  const bulge = Math.tan((sweep * Math.PI) / 720);
  // An extrusion pointing away from the viewer shows the arc mirrored in the y axis.
  const flipped = number(entity, 230) === -1;
  const place = (point: Point): Point => (flipped ? { x: -point.x, y: point.y } : point);
  const segment = { from: place(at(start)), to: place(at(start + sweep)), bulge: flipped ? -bulge : bulge };
  return { segments: [{ ...segment, line: entity.line }], problems: [] };
}

function readPolyline(entity: Entity): Read {
  const corners: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of entity.pairs) {
    if (code === 10) corners.push({ x: Number(value), y: Number.NaN, bulge: 0 });
    const corner = corners[corners.length - 1];
    if (corner && code === 20) corner.y = Number(value);
    if (corner && code === 42) corner.bulge = Number(value);
  }
  if (corners.length < 2 || corners.some(({ x, y, bulge }) => !Number.isFinite(x + y + bulge)))
    return incomplete(entity);
  const closed = (number(entity, 70) & 1) === 1;
  const flipped = number(entity, 230) === -1;
  const place = ({ x, y }: Point): Point => ({ x: flipped ? -x : x, y });
  const segments = corners.slice(0, closed ? undefined : -1).map((corner, i) => ({
    from: place(corner),
    to: place(corners[(i + 1) % corners.length]),
    bulge: flipped ? -corner.bulge : corner.bulge,
    line: entity.line,
  }));
  return { segments, problems: [] };
}
