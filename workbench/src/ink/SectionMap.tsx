import { heatColour, lineOnHeat } from './heat-scale.ts';
import { bands, isolineStep, isolines, type Place, type SectionField } from './section-map.ts';

interface Props {
  readonly field: SectionField;
  readonly place: Place;
  /** Path of the section's edge. */
  readonly edge: string;
  readonly step?: number;
}

/** Temperature over a section: the absolute colours in bands of 10 °C, and isotherms so that small differences show. */
export function SectionMap({ field, place, edge, step = isothermStep(field) }: Props) {
  return (
    <g>
      {[...bands(field, 10, place)].map(([low, path]) => (
        <path key={low} d={path} fill={heatColour(low + 5)} stroke={heatColour(low + 5)} strokeWidth={0.6} />
      ))}
      {[...isolines(field, step, place)].map(([level, path]) => (
        <path
          key={level}
          d={path}
          fill="none"
          stroke={lineOnHeat(level)}
          strokeWidth={Math.round(level / step) % 5 === 0 ? 1.1 : 0.6}
          opacity={0.75}
        />
      ))}
      <path className="edge" d={edge} />
    </g>
  );
}

/** Step of the isotherms of one section, for its caption. */
export function isothermStep({ values }: SectionField): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < values.length; i++) {
    low = Math.min(low, values[i]);
    high = Math.max(high, values[i]);
  }
  return isolineStep(low, high);
}
