import type { Outline } from '@bloomrail/engine/section/outline';
import { useId } from 'react';
import { heatColour } from './heat-scale.ts';
import { outlinePath, type Placing } from './outline-path.ts';

interface Props {
  readonly outline: Outline;
  readonly placing: Placing;
  readonly surface: number;
  readonly core: number;
  /** m: depth at which the core is reached; twice area over perimeter serves for any shape. */
  readonly depth: number;
  readonly className?: string;
}

/** Shares of the depth at which a band of one colour begins, from the core outward; more on a larger drawing. */
function bandsFor(pixels: number): number[] {
  const count = Math.min(14, Math.max(5, Math.round(pixels / 7)));
  return Array.from({ length: count }, (_, i) => i / count);
}

/** A section coloured by depth under its surface, between the computed surface and core temperatures. */
export function HotSection({ outline, placing, surface, core, depth, className = 'edge' }: Props) {
  const clip = useId();
  const path = outlinePath(outline, placing);
  const even = Math.abs(core - surface) < 8;
  const bands = even ? [] : bandsFor(depth * placing.scale);
  const step = 1 / bands.length;
  const parabola = (share: number) => core + (surface - core) * (share + step) ** 2;
  return (
    <g>
      <clipPath id={clip}>
        <path d={path} />
      </clipPath>
      <path d={path} fill={heatColour(even ? (surface + core) / 2 : core)} />
      {bands.map((share) => (
        <path
          key={share}
          d={path}
          clipPath={`url(#${clip})`}
          fill="none"
          strokeLinejoin="round"
          stroke={heatColour(parabola(share))}
          strokeWidth={2 * depth * placing.scale * (1 - step / 2 - share)}
        />
      ))}
      <path d={path} className={className} />
    </g>
  );
}
