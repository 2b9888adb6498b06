import { heatColour } from './heat-scale.ts';

/** Key of the temperature scale in bands of 50 °C. */
export function HeatLegend({ width = 290, every = 200 }: { width?: number; every?: number }) {
  const bands = Array.from({ length: 26 }, (_, i) => 50 * i);
  const x = (celsius: number) => (celsius / 1300) * width;
  return (
    <svg
      width={width + 34}
      height={26}
      role="img"
      aria-label="Temperature scale, 0 to 1300 °C, dark to light"
    >
      {bands.map((low) => (
        <rect key={low} x={x(low)} y={0} width={x(50) + 0.4} height={9} fill={heatColour(low + 25)} />
      ))}
      <rect className="thin" x={0} y={0} width={width} height={9} />
      {bands
        .filter((low) => low % every === 0)
        .map((low) => (
          <text key={low} className="axis mid" x={Math.max(4, x(low))} y={22}>
            {low}
          </text>
        ))}
      <text className="axis" x={width + 8} y={9}>
        °C
      </text>
    </svg>
  );
}
