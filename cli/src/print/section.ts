import type { SectionReport } from '@bloomrail/engine/section/section-report';
import type { Note } from '@bloomrail/sheets/section-drawing';
import { type Column, table } from './table.ts';

/** Properties, then every dimension with how well it is known, then what others print. */
export function sectionText(report: SectionReport): string {
  const title = [report.profile, report.standard].filter(Boolean).join(', ');
  const properties = table<Note>(
    [
      { head: 'Property', align: 'left', cell: ({ name }) => name },
      { head: 'Value', align: 'right', cell: ({ value }) => value },
    ],
    propertyNotes(report),
  );
  const dimensions = report.dimensions.length > 0 ? [table(dimensionColumns, report.dimensions)] : [];
  return [title, properties, ...dimensions].join('\n\n');
}

/** The figures of a section as a person reads them. */
export const propertyNotes = (report: SectionReport): Note[] => [
  { name: 'Area', value: `${(report.area * 1e4).toFixed(3)} cm²` },
  { name: 'Mass', value: `${report.mass.toFixed(2)} kg/m` },
  { name: 'Axis above the foot', value: `${(report.centroidAboveFoot * 1e3).toFixed(2)} mm` },
  { name: 'Second moment, upright', value: `${(report.inertiaX * 1e8).toFixed(1)} cm⁴` },
  { name: 'Second moment, lateral', value: `${(report.inertiaY * 1e8).toFixed(1)} cm⁴` },
  { name: 'Modulus, head', value: `${(report.modulusHead * 1e6).toFixed(1)} cm³` },
  { name: 'Modulus, foot', value: `${(report.modulusFoot * 1e6).toFixed(1)} cm³` },
  { name: 'Modulus, lateral', value: `${(report.modulusLateral * 1e6).toFixed(2)} cm³` },
  { name: 'Perimeter', value: `${(report.perimeter * 1e3).toFixed(1)} mm` },
  { name: 'Torsion constant', value: `${(report.torsion * 1e8).toFixed(1)} cm⁴` },
];

type Dimension = SectionReport['dimensions'][number];

const dimensionColumns: readonly Column<Dimension>[] = [
  { head: 'Dimension', align: 'left', cell: ({ title }) => title },
  { head: 'Value', align: 'right', cell: ({ values, unit }) => `${unit ? '' : '1 : '}${values.join(' / ')}` },
  { head: '', align: 'left', cell: ({ unit }) => unit },
  { head: 'Status', align: 'left', cell: ({ status }) => status },
  { head: 'Source', align: 'left', cell: ({ source }) => source },
];
