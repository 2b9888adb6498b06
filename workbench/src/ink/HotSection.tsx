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

const steps = 5;

/** A section coloured by depth under its surface, between the computed surface and core temperatures. */
export function HotSection({ outline, placing, surface, core, depth, className = 'edge' }: Props) {
  const clip = useId();
  const path = outlinePath(outline, placing);
  const bands = Math.abs(core - surface) < 8 ? 0 : steps;
  return (
    <g>
      <clipPath id={clip}>
        <path d={path} />
      </clipPath>
      <path d={path} fill={heatColour(bands ? core : (surface + core) / 2)} />
      {Array.from({ length: bands }, (_, i) => (
        <path
          key={i}
          d={path}
          clipPath={`url(#${clip})`}
          fill="none"
          strokeLinejoin="round"
          stroke={heatColour(at(i))}
          strokeWidth={2 * depth * placing.scale * (1 - (i + 0.5) / steps)}
        />
      ))}
      <path d={path} className={className} />
    </g>
  );

  /** Parabola from the core to the surface; band 0 is the deepest. */
  function at(i: number): number {
    return core + (surface - core) * ((i + 1) / steps) ** 2;
  }
}
