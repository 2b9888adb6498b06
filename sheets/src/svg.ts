import type { Outline, Vertex } from '@bloomrail/engine/section/outline';
import type { Drawing, Item, Spot, Stroke } from './drawing.ts';

/** A drawing as an SVG file, true to scale when printed at 100 %; arcs stay arcs. */
export function svgOf({ title, description, width, height, items }: Drawing): string {
  const flip = (y: number) => height - y;
  const body = items.map((item) => svgItem(item, flip)).join('\n');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" font-family="B612, DejaVu Sans, sans-serif">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(description)}</desc>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    body,
    '</svg>\n',
  ].join('\n');
}

type Flip = (y: number) => number;

function svgItem(item: Item, flip: Flip): string {
  switch (item.kind) {
    case 'outline':
      return `<path d="${pathOf(item.outline, flip)}" fill="${fills[item.fill ?? 'none']}" ${pen(item.stroke)}/>`;
    case 'line':
      return `<path d="M${spot(item.from, flip)}L${spot(item.to, flip)}" fill="none" ${pen(item.stroke)}/>`;
    case 'arrow':
      return `<path d="${arrowOf(item.at, item.towards, flip)}" fill="#000"/>`;
    case 'bar':
      return `<rect x="${mm(item.at.x)}" y="${mm(flip(item.at.y + item.height))}" width="${mm(item.width)}" height="${mm(item.height)}" fill="#000"/>`;
    case 'text':
      return textOf(item, flip);
  }
}

const fills = { steel: '#DDE4E2', ink: '#000', none: 'none' } as const;

const pens: Record<Stroke, string> = {
  outline: 'stroke="#000" stroke-width="0.5" stroke-linejoin="round"',
  thin: 'stroke="#000" stroke-width="0.25"',
  centre: 'stroke="#000" stroke-width="0.25" stroke-dasharray="9 1.5 1.5 1.5"',
  dashed: 'stroke="#000" stroke-width="0.25" stroke-dasharray="3 1.5"',
  limit: 'stroke="#000" stroke-width="0.7"',
};

const pen = (stroke: Stroke): string => pens[stroke];

/** Outline in paper metres (model metres times scale): bulges become circular arcs. */
export function pathOf({ vertices }: Outline, flip: Flip): string {
  const steps = vertices.map((from, i) => edge(from, vertices[(i + 1) % vertices.length], flip));
  return `M${spot(onPaper(vertices[0]), flip)}${steps.join('')}Z`;
}

const onPaper = ({ x, y }: Vertex): Spot => ({ x: x * 1e3, y: y * 1e3 });

function edge(from: Vertex, to: Vertex, flip: Flip): string {
  const end = spot(onPaper(to), flip);
  if (Math.abs(from.bulge) < 1e-9) return `L${end}`;
  const chord = Math.hypot(to.x - from.x, to.y - from.y) * 1e3;
  const radius = (chord * (1 + from.bulge ** 2)) / (4 * Math.abs(from.bulge));
  const large = Math.abs(from.bulge) > 1 ? 1 : 0;
  // The page's y runs down, so an arc that turns left on paper sweeps the other way in SVG.
  return `A${mm(radius)} ${mm(radius)} 0 ${large} ${from.bulge > 0 ? 0 : 1} ${end}`;
}

function arrowOf(at: Spot, towards: Spot, flip: Flip): string {
  const [dx, dy] = [towards.x - at.x, towards.y - at.y];
  const length = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / length, dy / length];
  const side = (sign: number): Spot => ({
    x: at.x + ARROW_LENGTH * ux - sign * ARROW_HALF * uy,
    y: at.y + ARROW_LENGTH * uy + sign * ARROW_HALF * ux,
  });
  return `M${spot(at, flip)}L${spot(side(1), flip)}L${spot(side(-1), flip)}Z`;
}

const ARROW_LENGTH = 3;
/** 15° to each side of the line. */
const ARROW_HALF = ARROW_LENGTH * Math.tan(Math.PI / 12);

function textOf(item: Extract<Item, { kind: 'text' }>, flip: Flip): string {
  const [x, y] = [mm(item.at.x), mm(flip(item.at.y))];
  const turn = item.turned ? ` transform="rotate(-90 ${x} ${y})"` : '';
  const weight = item.bold ? ' font-weight="700"' : '';
  return `<text x="${x}" y="${y}" font-size="${mm(item.size / CAP_HEIGHT)}" text-anchor="${item.anchor}"${weight}${turn}>${escaped(item.text)}</text>`;
}

/** Height of capitals over font size. */
const CAP_HEIGHT = 0.73;

const spot = ({ x, y }: Spot, flip: Flip): string => `${mm(x)} ${mm(flip(y))}`;

const mm = (value: number): string => String(Number(value.toFixed(4)));

const escaped = (text: string): string =>
  text.replace(
    /[&<>"]/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign,
  );
