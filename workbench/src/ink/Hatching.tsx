/** Hatching at 45°, 7 px apart; turned the other way for the part that meets. */
export function Hatching({ id, turned = false }: { id: string; turned?: boolean }) {
  return (
    <pattern
      id={id}
      width={7}
      height={7}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turned ? -45 : 45})`}
    >
      <path d="M0 0V7" stroke="var(--hatch)" strokeWidth={1} />
    </pattern>
  );
}
