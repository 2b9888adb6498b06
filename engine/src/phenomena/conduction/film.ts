import type { Skin, SurfaceChannel } from './surface.ts';
import { pointwise } from './surface.ts';

/** Heat through a film of constant coefficient h, W/m²K, to surroundings at `ambient` °C, on chosen outline edges. */
export function film(
  name: string,
  skin: Skin,
  h: number,
  ambient: number | ((time: number) => number),
  onEdge: (outlineEdge: number) => boolean = () => true,
): SurfaceChannel {
  const around = typeof ambient === 'number' ? () => ambient : ambient;
  return pointwise(name, (T, time, end) => {
    const here = onEdge(skin.outlineEdge[end >> 1]) ? h : 0;
    return { flux: here * (around(time) - T), slope: -here };
  });
}
