import type { ChainLink, SolvedSlice } from './link.ts';

/** Changes of a contact's slip, along and across, and of its way into the roll with every unknown of the link. */
interface ContactChange {
  readonly along: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly into: Float64Array;
}

/**
 * Adds pressures and frictions. Pressure does no net work: what it takes along the bar it gives across it, so its part along
 * the bar is a load on the warping and no part of the potential.
 */
export function addContacts(slice: SolvedSlice, link: ChainLink): void {
  const { layout } = link;
  const row = () => new Float64Array(layout.size);
  const change: ContactChange = { along: row(), x: row(), y: row(), into: row() };
  for (let c = 0; c < slice.touching.count; c++) {
    changeOf(slice, link, c, change);
    addContact(slice, link, c, change);
  }
}

function changeOf(
  { touching: { node, nx, ny }, warping: { modes } }: SolvedSlice,
  { layout, shapes }: ChainLink,
  c: number,
  { along, x, y, into }: ContactChange,
): void {
  const n = shapes.length / layout.shapes;
  for (let a = 0; a < layout.shapes; a++) {
    const [vx, vy] = [shapes[a * n + 2 * node[c]], shapes[a * n + 2 * node[c] + 1]];
    x[layout.own + a] = vx;
    y[layout.own + a] = vy;
    into[layout.own + a] = nx[c] * vx + ny[c] * vy;
  }
  for (let l = 0; l < layout.modes; l++) {
    const half = modes[l][node[c]] / 2;
    along[layout.entering + l] = half;
    along[layout.leaving + l] = half;
  }
}

function addContact(
  { touching, task: { stiffness } }: SolvedSlice,
  { layout, slope, curvature }: ChainLink,
  c: number,
  { along, x, y, into }: ContactChange,
): void {
  const { size, entering } = layout;
  const { nx, ny, vx, vy } = touching;
  const slipSize = touching.slipSize[c];
  const pressure = touching.pressure[c];
  const [s, sx, sy] = [
    touching.slip[c] / slipSize,
    touching.slipX[c] / slipSize,
    touching.slipY[c] / slipSize,
  ];
  const per = touching.friction[c] / slipSize;
  const taken = (pressure * (nx[c] * vx[c] + ny[c] * vy[c])) / touching.speed[c];
  for (let i = entering; i < size; i++) {
    const mine = s * along[i] + sx * x[i] + sy * y[i];
    slope[i] += touching.friction[c] * mine + pressure * into[i] - taken * along[i];
    for (let j = entering; j <= i; j++) {
      const theirs = s * along[j] + sx * x[j] + sy * y[j];
      curvature[i * size + j] +=
        per * (along[i] * along[j] + x[i] * x[j] + y[i] * y[j] - mine * theirs) +
        stiffness * into[i] * into[j];
    }
  }
}
