/**
 * SI inside, units at the edges: how a file, a page or a sheet writes a quantity, and what one of it is in SI.
 * Temperatures are °C everywhere; kelvin appears only inside a law that needs it (decisions/0001-si-inside.md).
 */
export const units = {
  m: { suffix: 'M', label: 'm', si: 1, decimals: 1 },
  mm: { suffix: 'Mm', label: 'mm', si: 1e-3, decimals: 1 },
  um: { suffix: 'Um', label: 'µm', si: 1e-6, decimals: 0 },
  mm2: { suffix: 'Mm2', label: 'mm²', si: 1e-6, decimals: 0 },
  mm3: { suffix: 'Mm3', label: 'mm³', si: 1e-9, decimals: 0 },
  mm4: { suffix: 'Mm4', label: 'mm⁴', si: 1e-12, decimals: 0 },
  s: { suffix: 'S', label: 's', si: 1, decimals: 1 },
  min: { suffix: 'Min', label: 'min', si: 60, decimals: 1 },
  h: { suffix: 'H', label: 'h', si: 3600, decimals: 2 },
  mPerS: { suffix: 'MPerS', label: 'm/s', si: 1, decimals: 2 },
  rpm: { suffix: 'Rpm', label: '1/min', si: (2 * Math.PI) / 60, decimals: 1 },
  perS: { suffix: 'PerS', label: '1/s', si: 1, decimals: 2 },
  C: { suffix: 'C', label: '°C', si: 1, decimals: 0 },
  K: { suffix: 'K', label: 'K', si: 1, decimals: 0 },
  kg: { suffix: 'Kg', label: 'kg', si: 1, decimals: 0 },
  t: { suffix: 'T', label: 't', si: 1000, decimals: 2 },
  kgPerM: { suffix: 'KgPerM', label: 'kg/m', si: 1, decimals: 2 },
  N: { suffix: 'N', label: 'N', si: 1, decimals: 0 },
  kN: { suffix: 'Kn', label: 'kN', si: 1e3, decimals: 0 },
  kNm: { suffix: 'Knm', label: 'kN·m', si: 1e3, decimals: 0 },
  kW: { suffix: 'Kw', label: 'kW', si: 1e3, decimals: 0 },
  MPa: { suffix: 'Mpa', label: 'MPa', si: 1e6, decimals: 0 },
  GPa: { suffix: 'Gpa', label: 'GPa', si: 1e9, decimals: 0 },
  bar: { suffix: 'Bar', label: 'bar', si: 1e5, decimals: 0 },
  kJ: { suffix: 'Kj', label: 'kJ', si: 1e3, decimals: 0 },
  MJ: { suffix: 'Mj', label: 'MJ', si: 1e6, decimals: 0 },
  kJPerKg: { suffix: 'KjPerKg', label: 'kJ/kg', si: 1e3, decimals: 1 },
  kWhPerT: { suffix: 'KwhPerT', label: 'kWh/t', si: 3600, decimals: 0 },
  GJPerT: { suffix: 'GjPerT', label: 'GJ/t', si: 1e6, decimals: 2 },
  wPerM2K: { suffix: 'WPerM2K', label: 'W/m²K', si: 1, decimals: 0 },
  lPerMin: { suffix: 'LPerMin', label: 'l/min', si: 1e-3 / 60, decimals: 0 },
  MNPerMm: { suffix: 'MnPerMm', label: 'MN/mm', si: 1e9, decimals: 1 },
  deg: { suffix: 'Deg', label: '°', si: Math.PI / 180, decimals: 1 },
  perKm: { suffix: 'PerKm', label: '1/km', si: 1e-3, decimals: 2 },
  percent: { suffix: 'Percent', label: '%', si: 1e-2, decimals: 1 },
  one: { suffix: '', label: '', si: 1, decimals: 3 },
} as const satisfies Record<string, UnitFacts>;

interface UnitFacts {
  /** Ends the key in files: gap in mm is `gapMm`. */
  readonly suffix: string;
  /** As printed after a number. */
  readonly label: string;
  /** How many SI base units one of it is. */
  readonly si: number;
  /** Fixed decimals when printed, so that columns align. */
  readonly decimals: number;
}

export type Unit = keyof typeof units;
export type Suffix<U extends Unit> = (typeof units)[U]['suffix'];

export const toSi = (value: number, unit: Unit): number => value * units[unit].si;

export const fromSi = (value: number, unit: Unit): number => value / units[unit].si;

/** '24.4 mm' with the unit's fixed decimals, a minus sign that is one, and thin groups of thousands. */
export function print(value: number, unit: Unit, decimals: number = units[unit].decimals): string {
  const text = groupThousands(Math.abs(fromSi(value, unit)).toFixed(decimals));
  const sign = value < 0 && /[1-9]/.test(text) ? '−' : '';
  const label = units[unit].label;
  return label ? `${sign}${text} ${label}` : `${sign}${text}`;
}

const groupThousands = (digits: string): string => digits.replace(/\B(?<!\.\d*)(?=(\d{3})+(?!\d))/g, ' ');
