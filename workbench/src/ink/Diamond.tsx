import type { Finding } from '@bloomrail/engine/outcome/finding';

/** The mark of a finding: full is outside a limit, half is near one, open is a note. */
export function Diamond({
  level,
  x = 6,
  y = 6,
  size = 5.5,
}: {
  level: Finding['level'];
  x?: number;
  y?: number;
  size?: number;
}) {
  const shape = `M${x} ${y - size}L${x + size} ${y}L${x} ${y + size}L${x - size} ${y}Z`;
  return (
    <g stroke="var(--find)" strokeWidth={1.1} fill="none">
      <path d={shape} fill={level === 'outside' ? 'var(--find)' : 'var(--field)'} />
      {level === 'near' && <path d={`M${x - size} ${y}H${x + size}L${x} ${y + size}Z`} fill="var(--find)" />}
    </g>
  );
}

/** The same mark in running text. */
export function DiamondInText({ level }: { level: Finding['level'] }) {
  return (
    <svg width={12} height={12} aria-hidden="true">
      <Diamond level={level} />
    </svg>
  );
}
