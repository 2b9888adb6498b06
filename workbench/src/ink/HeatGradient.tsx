import { heatColour, heatScale } from './heat-scale.ts';

/** Paints every point of a chart in the colour of the temperature it stands for on the chart's own axis. */
export function HeatGradient({ id, y }: { id: string; y: (celsius: number) => number }) {
  const span = heatScale.high;
  const stops = Array.from({ length: 27 }, (_, i) => 50 * i);
  return (
    <linearGradient id={id} gradientUnits="userSpaceOnUse" x1={0} x2={0} y1={y(0)} y2={y(span)}>
      {stops.map((celsius) => (
        <stop key={celsius} offset={celsius / span} stopColor={heatColour(celsius)} />
      ))}
    </linearGradient>
  );
}
