import type { ReactNode } from 'react';

interface Props {
  readonly width: number;
  readonly height: number;
  /** One sentence that states the finding, not the kind of chart. */
  readonly label: string;
  readonly children: ReactNode;
}

/** A drawing with handles in it: readers meet its sentence, then each handle. One without handles is a plain image. */
export function Drawing({ width, height, label, children }: Props) {
  return (
    <svg width={width} height={height}>
      <title>{label}</title>
      {children}
    </svg>
  );
}
