/** Said with every computed setting: on paper, on the page and in the terminal. */
export const cautions = [
  'Hot metal, heavy rolls, pinch points, water under pressure, lifted loads and bent rails that spring back can kill.',
  'A computed setting is no permission: local codes and licensed practice decide.',
] as const;
