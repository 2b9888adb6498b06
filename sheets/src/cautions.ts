/** Said with every computed setting: on paper, on the page and in the terminal. */
export const cautions = [
  'Hot metal, heavy rolls, pinch points, water under pressure, lifted loads and bent rails that spring back can kill.',
  'Keep clear and lock out before work.',
  'A computed setting is no permission: local codes and licensed practice decide.',
] as const;
