import aremaTable from '../../../reference/grades/arema.json' with { type: 'json' };
import enTable from '../../../reference/grades/en-13674-1.json' with { type: 'json' };
import { toSi } from '../units/unit.ts';
import type { Composition, Grade } from './grade.ts';

/** A grade as its standard describes it: the ranges behind the mid-range composition, and the acceptance values. */
export interface RailGrade extends Grade {
  /** Mass %, lowest and highest of the liquid analysis. */
  readonly ranges: Readonly<Record<keyof Composition, readonly [low: number, high: number]>>;
  /** Brinell hardness on the running surface; no upper end where the standard names none. */
  readonly hardness: { readonly low: number; readonly high?: number };
  /** Least tensile strength, Pa. */
  readonly tensile: number;
  /** Least 0.2 % proof stress, Pa, where the standard asks for one (AREMA); EN 13674-1 does not. */
  readonly proof?: number;
  /** Least elongation after fracture on five diameters (A5), as a share; AREMA: on 2 inches. */
  readonly elongation: number;
  /** True where the properties come from forced cooling of the head, which this line does not do. */
  readonly heatTreated: boolean;
  /** Deepest allowed decarburised layer on the running surface, m. */
  readonly decarburisationLimit?: number;
  /** Highest allowed lengthwise residual stress at the middle of the foot's underside, Pa. */
  readonly footStressLimit?: number;
  /** Where each group of values comes from, in words: composition, hardness, tensile, proof, elongation, limits. */
  readonly sources: Readonly<Record<string, string>>;
}

/** The grade of that name, or undefined. Names as in the standard: 'R260', 'R350HT', 'AREMA standard'. */
export const gradeNamed = (name: string): RailGrade | undefined =>
  grades.find((grade) => grade.name === name);

interface Row {
  readonly name: string;
  readonly massPercent: Readonly<Record<keyof Composition, readonly number[]>>;
  readonly hbw: readonly number[];
  readonly tensileMpa: number;
  readonly yieldMpa?: number;
  readonly elongationPercent: number;
  readonly heatTreated: boolean;
  readonly sources: Readonly<Record<string, string>>;
}

interface Table {
  readonly standard: string;
  readonly sources: Readonly<Record<string, string>>;
  readonly limits: {
    readonly decarburisation?: { readonly mm: number; readonly source: string };
    readonly footStress?: { readonly mpa: number; readonly source: string };
  };
  readonly grades: readonly Row[];
}

function gradesOf({ standard, sources, limits, grades }: Table): readonly RailGrade[] {
  return grades.map((row) => ({
    name: row.name,
    standard,
    composition: eachElement(row, ([low, high]) => (low + high) / 2),
    ranges: eachElement(row, ([low, high]) => [low, high] as const),
    hardness: { low: row.hbw[0], ...(row.hbw.length > 1 ? { high: row.hbw[1] } : {}) },
    tensile: toSi(row.tensileMpa, 'MPa'),
    ...(row.yieldMpa === undefined ? {} : { proof: toSi(row.yieldMpa, 'MPa') }),
    elongation: toSi(row.elongationPercent, 'percent'),
    heatTreated: row.heatTreated,
    ...(limits.decarburisation ? { decarburisationLimit: toSi(limits.decarburisation.mm, 'mm') } : {}),
    ...(limits.footStress ? { footStressLimit: toSi(limits.footStress.mpa, 'MPa') } : {}),
    sources: inWords(sources, row, limits),
  }));
}

const elements = ['C', 'Si', 'Mn', 'P', 'S', 'Cr', 'V'] as const satisfies readonly (keyof Composition)[];

const eachElement = <T>(row: Row, of: (range: readonly number[]) => T): Record<keyof Composition, T> =>
  Object.fromEntries(elements.map((element) => [element, of(row.massPercent[element])])) as Record<
    keyof Composition,
    T
  >;

const inWords = (sources: Table['sources'], row: Row, limits: Table['limits']): Record<string, string> =>
  Object.fromEntries(
    [
      ...Object.entries(row.sources),
      ...Object.entries(limits).map(([what, limit]) => [what, limit.source] as const),
    ].map(([what, source]) => [what === 'yield' ? 'proof' : what, sources[source]]),
  );

const grades: readonly RailGrade[] = [...gradesOf(enTable), ...gradesOf(aremaTable)];

export const gradeNames: readonly string[] = grades.map((grade) => grade.name);
